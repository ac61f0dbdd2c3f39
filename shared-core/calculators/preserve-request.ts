import { z } from 'zod';
import { id } from '../record/id';
import { lineText } from '../quantities/text';
import { amount } from './amount';

export const DOSED_AS = ['acid', 'sodium salt', 'potassium salt', 'other salt'] as const;

export const preserveRequest = z.object({
  of: z.literal('preserve'),
  /** An acid of our list, by INCI name; empty where the pKa is typed or comes from a material. */
  acid: lineText(200),
  materialId: id.nullable(),
  pKa: amount,
  pH: amount,
  /** As weighed, % of the formula. */
  dosePercent: amount,
  dosedAs: z.enum(DOSED_AS),
  /** g/mol, for a salt whose molar mass the list does not give. */
  saltMolarMass: amount,
  acidMolarMass: amount,
});
export type PreserveRequest = z.infer<typeof preserveRequest>;

export const BLANK_PRESERVE: PreserveRequest = {
  of: 'preserve',
  acid: 'Benzoic Acid',
  materialId: null,
  pKa: null,
  pH: 5,
  dosePercent: null,
  dosedAs: 'acid',
  saltMolarMass: null,
  acidMolarMass: null,
};
