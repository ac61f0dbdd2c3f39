import { z } from 'zod';
import { id } from '../record/id';
import { lineText } from '../quantities/text';

const percent = (what: string, most = 100) =>
  z
    .number(`${what} must be a number.`)
    .min(0, `${what} cannot be negative.`)
    .max(most, `${what} is ${most} at most.`);

/** What is asked of a formula that is to stay as near to the present one as can be. Null asks nothing. */
export const reformulateWish = z.object({
  /** Raw materials per kg, in minor units of the library's currency. */
  costAtMost: z
    .number('Write the cost as a number.')
    .positive('A cost is above zero.')
    .max(1e12)
    .nullable()
    .default(null),
  /** Natural origin content by ISO 16128, at the lower end of what is known, %. */
  originAtLeast: percent('The natural origin').nullable().default(null),
  originWithWater: z.boolean().default(true),
  /** INCI names that no material may hold. */
  withoutSubstances: z.array(lineText(200)).max(50).default([]),
  withoutSuppliers: z.array(lineText(200)).max(50).default([]),
  /** Lines that stay exactly as they are. */
  locked: z.array(id).max(400).default([]),
  /** How far offered and required HLB may each move from the required HLB of now. */
  hlbWithin: percent('The HLB band', 20).nullable().default(1),
  /** How far base less acid may move, mmol in 100 g. */
  phWithin: percent('The acid and base band', 1000).nullable().default(0.2),
  keepRanges: z.boolean().default(true),
  keepLaw: z.boolean().default(true),
  /** How far the total of each group (emulsifiers, oils, preservatives…) may move, % of it. */
  groupsWithin: percent('The groups’ room').default(25),
  alternatives: z.int().min(0).max(10).default(5),
});
export type ReformulateWish = z.infer<typeof reformulateWish>;
