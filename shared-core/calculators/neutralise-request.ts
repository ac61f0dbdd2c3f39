import { z } from 'zod';
import { lineText } from '../quantities/text';
import { amount } from './amount';

export const ACID_KNOWN_BY = ['acid value', 'molar mass'] as const;

/** How far to neutralise: a stated share of the acid groups, or as far as a pH asks for by the pKas. */
export const NEUTRALISE_TO = ['share', 'pH'] as const;

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
  neutraliseTo: z.enum(NEUTRALISE_TO).default('share'),
  /** Share of the acid groups to neutralise, %. */
  neutralisedPercent: amount,
  /** The pH to reach, with the acid's pKas in rising order and that of an amine's conjugate acid. */
  pH: amount.default(null),
  acidPKas: z.array(amount).max(3, 'Three pKas at most.').default([null]),
  basePKa: amount.default(null),
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
  neutraliseTo: 'share',
  neutralisedPercent: 100,
  pH: null,
  acidPKas: [null],
  basePKa: null,
  batchGrams: null,
};
