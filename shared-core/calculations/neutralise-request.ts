import { z } from 'zod';
import { lineText } from '../quantities/text';
import { amount } from './amount';

export const ACID_KNOWN_BY = ['acid value', 'molar mass'] as const;

export const neutraliseRequest = z.object({
  of: z.literal('neutralise'),
  acidName: lineText(300),
  /** The acid as weighed, % of the formula. */
  acidPercent: amount,
  /** Mass % of acid in what is weighed, where molar mass counts. */
  acidActivePercent: amount,
  acidKnownBy: z.enum(ACID_KNOWN_BY),
  acidValue: amount,
  acidMolarMass: amount,
  acidEquivalents: amount,
  baseName: lineText(300),
  baseMolarMass: amount,
  baseEquivalents: amount,
  /** Mass % of base in what is weighed. */
  basePercent: amount,
  caustic: z.boolean(),
  /** Share of the acid groups to neutralise, %. */
  neutralisedPercent: amount,
  /** Mass of the batch, g; null where only % of the formula is asked for. */
  batchGrams: amount,
});
export type NeutraliseRequest = z.infer<typeof neutraliseRequest>;

export const BLANK_NEUTRALISE: NeutraliseRequest = {
  of: 'neutralise',
  acidName: '',
  acidPercent: null,
  acidActivePercent: 100,
  acidKnownBy: 'acid value',
  acidValue: null,
  acidMolarMass: null,
  acidEquivalents: 1,
  baseName: '',
  baseMolarMass: null,
  baseEquivalents: 1,
  basePercent: 100,
  caustic: false,
  neutralisedPercent: 100,
  batchGrams: null,
};
