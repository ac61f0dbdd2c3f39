import { z } from 'zod';
import { HAZARDS } from '../materials/vocabulary';
import { USUAL_SHARE_KEYS } from '../neutralisation/usual-shares';
import { lineText } from '../quantities/text';
import { amount } from './amount';

export const ACID_KNOWN_BY = ['acid value', 'molar mass'] as const;

/** How far to neutralise: a stated share of the acid groups, or as far as a pH asks for by the pKas. */
export const NEUTRALISE_TO = ['share', 'pH'] as const;

const hazards = z.array(z.enum(HAZARDS)).default([]);

export const neutraliseRequest = z.object({
  of: z.literal('neutralise'),
  acidName: lineText(300),
  /** INCI names of what was picked; they say how it is handled. */
  acidInci: lineText(2000).default(''),
  acidHazards: hazards,
  /** The acid as weighed, % of the formula. */
  acidPercent: amount,
  /** Mass % of acid in what is weighed, where molar mass counts. */
  acidActivePercent: amount,
  acidKnownBy: z.enum(ACID_KNOWN_BY),
  acidValue: amount,
  acidMolarMass: amount,
  acidEquivalents: amount,
  baseName: lineText(300),
  baseInci: lineText(2000).default(''),
  baseHazards: hazards,
  baseMolarMass: amount,
  baseEquivalents: amount,
  /** Mass % of base in what is weighed. */
  basePercent: amount,
  /** The supplier's range of that, where `basePercent` is its middle. */
  basePercentLow: amount.default(null),
  basePercentHigh: amount.default(null),
  neutraliseTo: z.enum(NEUTRALISE_TO).default('share'),
  /** Share of the acid groups to neutralise, %. */
  neutralisedPercent: amount,
  /** The kind of product whose usual share was taken. */
  usualShare: z.enum(USUAL_SHARE_KEYS).nullable().default(null),
  /** The pH to reach, with the acid's pKas in rising order and that of an amine's conjugate acid. */
  pH: amount.default(null),
  acidPKas: z.array(amount).max(3, 'Three pKas at most.').default([null]),
  basePKa: amount.default(null),
  /** The water that acid and base are dissolved in, % of the formula; it enters a pH only. */
  waterPercent: amount.default(100),
  /** Mass of the batch, g; null where only % of the formula is asked for. */
  batchGrams: amount,
});
export type NeutraliseRequest = z.infer<typeof neutraliseRequest>;

/** Strength of acid, base and share are asked for: nothing is taken for pure or whole in silence. */
export const BLANK_NEUTRALISE: NeutraliseRequest = {
  of: 'neutralise',
  acidName: '',
  acidInci: '',
  acidHazards: [],
  acidPercent: null,
  acidActivePercent: null,
  acidKnownBy: 'acid value',
  acidValue: null,
  acidMolarMass: null,
  acidEquivalents: 1,
  baseName: '',
  baseInci: '',
  baseHazards: [],
  baseMolarMass: null,
  baseEquivalents: 1,
  basePercent: null,
  basePercentLow: null,
  basePercentHigh: null,
  neutraliseTo: 'share',
  neutralisedPercent: null,
  usualShare: null,
  pH: null,
  acidPKas: [null],
  basePKa: null,
  waterPercent: 100,
  batchGrams: null,
};
