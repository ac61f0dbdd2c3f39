import { z } from 'zod';
import { acceptedFinding } from './accepted-finding';
import { productClaim, productReport, productStatements } from './product-file';
import { market } from '../products/market';
import { USES, type Use } from '../products/use';
import { id } from '../record/id';
import { material } from '../materials/material';
import { sharePpm } from '../quantities/share';
import { lineText, longText, nameText } from '../quantities/text';

/** What a formula makes: an emulsion by type, or something without one. */
export const PRODUCT_TYPES = [
  'o/w emulsion',
  'w/o emulsion',
  'cationic o/w emulsion',
  'gel',
  'cleanser',
  'anhydrous',
  'solution',
] as const;
export { USES, type Use };
export type ProductType = (typeof PRODUCT_TYPES)[number];

const temperatureC = z
  .number('Write the temperature as a number.')
  .min(-20, 'A step below −20 °C is not workable.')
  .max(200, 'A step above 200 °C is not workable.')
  .nullable();

/** A line: one material at a share of the whole. The one line marked q.s. takes what is left to 100 %. */
export const formulaLine = z.object({
  id,
  materialId: id,
  /** As entered; ignored on the q.s. line, whose share is computed. */
  ppm: sharePpm,
  toHundred: z.boolean(),
  note: lineText(300),
});
export type FormulaLine = z.infer<typeof formulaLine>;

/** A phase: lines that are weighed and heated together. Its letter comes from its position (A, B, C…). */
export const formulaPhase = z.object({
  id,
  title: lineText(80),
  temperatureC,
  lines: z.array(formulaLine).max(100, 'A phase can hold 100 lines at most.'),
});
export type FormulaPhase = z.infer<typeof formulaPhase>;

/** A step of the procedure, referring to phases by id. */
export const procedureStep = z.object({
  id,
  phaseIds: z.array(id).max(26),
  instruction: longText(2000),
  temperatureC,
  speedRpm: z
    .number('Write the speed as a number.')
    .min(0, 'A speed cannot be negative.')
    .max(50_000, 'Faster than any mixer.')
    .nullable(),
  minutes: z
    .number('Write the minutes as a number.')
    .min(0, 'A time cannot be negative.')
    .max(100_000, 'That is more than two months: write it in the instruction.')
    .nullable(),
  lookFor: lineText(300),
  caution: lineText(300),
});
export type ProcedureStep = z.infer<typeof procedureStep>;

const reading = z.number('Write this as a number.').min(0, 'Cannot be negative.').nullable();
const ph = z
  .number('Write the pH as a number.')
  .min(0, 'pH runs from 0 to 14.')
  .max(14, 'pH runs from 0 to 14.')
  .nullable();

/** What the finished product is measured against. Viscosity in mPa·s, density in g/mL. */
export const targetSpecification = z.object({
  appearance: lineText(300),
  odour: lineText(300),
  colour: lineText(300),
  phLow: ph,
  phHigh: ph,
  viscosityLow: reading,
  viscosityHigh: reading,
  viscosityMethod: lineText(300),
  densityLow: reading,
  densityHigh: reading,
  microbiology: lineText(500),
});
export type TargetSpecification = z.infer<typeof targetSpecification>;

/** What a target gives as a range: its ends and what it is called. */
export const TARGET_RANGES = [
  { low: 'phLow', high: 'phHigh', title: 'pH' },
  { low: 'viscosityLow', high: 'viscosityHigh', title: 'Viscosity' },
  { low: 'densityLow', high: 'densityHigh', title: 'Density' },
] as const satisfies { low: keyof TargetSpecification; high: keyof TargetSpecification; title: string }[];

const enteredTarget = targetSpecification.superRefine((target, context) => {
  for (const { low, high, title } of TARGET_RANGES)
    if ((target[low] ?? -Infinity) > (target[high] ?? Infinity))
      context.addIssue({
        code: 'custom',
        path: [low],
        message: `${title}: the lower end of the target is above the upper end.`,
      });
});

/** All that a library holds of a formula; what it took in before a rule was made stays readable. */
export const formulaContent = z
  .object({
    code: lineText(40),
    name: lineText(200),
    productType: z.enum(PRODUCT_TYPES),
    use: z.enum(USES),
    purpose: lineText(500),
    market,
    phases: z.array(formulaPhase).max(26, 'A formula can hold 26 phases at most (A to Z).'),
    steps: z.array(procedureStep).max(200, 'A procedure can hold 200 steps at most.'),
    target: targetSpecification,
    /** Findings of the checks that the maker lets stand, each with the reason. */
    accepted: z.array(acceptedFinding).max(200),
    /** What the product's file holds beyond the formula. */
    claims: z.array(productClaim).max(60, 'A product can hold 60 claims at most.'),
    reports: z.array(productReport).max(60, 'A product can hold 60 reports at most.'),
    statements: productStatements,
    notes: longText(),
  })
  .refine((f) => f.phases.flatMap((phase) => phase.lines).filter((line) => line.toHundred).length <= 1, {
    message: 'Only one line can be q.s. to 100 %. Give the other one a fixed share first.',
    path: ['phases'],
  });
export type FormulaContent = z.infer<typeof formulaContent>;

const distinct = (parts: { id: string }[]): boolean =>
  new Set(parts.map((part) => part.id)).size === parts.length;

/** A formula as a maker can enter it. */
export const enteredFormula = formulaContent
  .safeExtend({ name: nameText('the formula’s name'), target: enteredTarget })
  .refine((f) => distinct(f.phases), { message: 'Two phases have the same identifier.', path: ['phases'] })
  .refine((f) => distinct(f.phases.flatMap((phase) => phase.lines)), {
    message: 'Two lines have the same identifier.',
    path: ['phases'],
  })
  .refine((f) => distinct(f.steps), { message: 'Two steps have the same identifier.', path: ['steps'] });

/** A formula's working draft. It may be incomplete; recording a version is what demands a whole. */
export const formula = formulaContent.safeExtend({
  id,
  archived: z.boolean(),
  revision: z.int().min(1),
  createdAt: z.iso.datetime(),
  updatedAt: z.iso.datetime(),
});
export type Formula = z.infer<typeof formula>;

/** A recorded version: the formula and every material's values as they were at that moment. Never changed. */
export const formulaVersion = z.object({
  id,
  formulaId: id,
  number: z.int().min(1),
  recordedAt: z.iso.datetime(),
  recordedBy: lineText(120),
  reason: lineText(500),
  content: formulaContent,
  materials: z.record(id, material),
});
export type FormulaVersion = z.infer<typeof formulaVersion>;

/** The letter of the phase at an index: A, B, C… */
export function phaseLetter(index: number): string {
  return String.fromCharCode(65 + index);
}

export function blankTarget(): TargetSpecification {
  return {
    appearance: '',
    odour: '',
    colour: '',
    phLow: null,
    phHigh: null,
    viscosityLow: null,
    viscosityHigh: null,
    viscosityMethod: '',
    densityLow: null,
    densityHigh: null,
    microbiology: '',
  };
}
