import { z } from 'zod';
import type { ProductType } from '../../formulas/formula';
import { id } from '../../record/id';
import { lineText } from '../../quantities/text';

export const BENCH_TYPES = ['o/w', 'w/o', 'cationic o/w'] as const;
export type BenchType = (typeof BENCH_TYPES)[number];

/** A raw material at its level, % of the formula. */
export const benchLine = z.object({
  materialId: id,
  percent: z
    .number('Enter a number of per cent.')
    .min(0, 'A level cannot be negative.')
    .max(100, 'A level cannot be more than 100 %.'),
});
export type BenchLine = z.infer<typeof benchLine>;

/** What stands on the bench, plain: all that a hand-out needs to be worked out anew from the library. */
export const benchState = z.object({
  /** What it is for, such as the formula the oil phase was taken from. */
  title: lineText(200),
  /** The formula that the oil phase was taken from. */
  formulaId: id.nullable(),
  emulsionType: z.enum(BENCH_TYPES, 'Choose a type of emulsion.'),
  oils: z.array(benchLine).max(60, 'An oil phase can hold 60 lines at most.'),
  emulsifiers: z.array(benchLine).max(10, 'Ten emulsifiers at most.'),
  /** The other lines of the formula, which charges must get on with. */
  rest: z.array(benchLine).max(200),
  /** Set by hand; null takes the required HLB of the oil phase. */
  targetHlb: z
    .number('The target HLB must be a number.')
    .min(0, 'HLB runs from 0 to 40.')
    .max(40, 'HLB runs from 0 to 40.')
    .nullable(),
});
export type BenchState = z.infer<typeof benchState>;

/** The kind of required HLB that a type of emulsion goes by: a cationic o/w emulsion is an o/w emulsion. */
export function demandType(type: BenchType): 'o/w' | 'w/o' {
  return type === 'w/o' ? 'w/o' : 'o/w';
}

/** The bench's type for a formula's product type; null where it makes no emulsion. */
export function benchTypeOf(product: ProductType): BenchType | null {
  if (product === 'o/w emulsion') return 'o/w';
  if (product === 'w/o emulsion') return 'w/o';
  return product === 'cationic o/w emulsion' ? 'cationic o/w' : null;
}
