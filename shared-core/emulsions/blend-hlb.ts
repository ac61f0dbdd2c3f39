import { badInput, nonNegative } from '../working/inputs';
import { worked } from '../working/one-step';
import { show, showTerm } from '../working/show';
import type { Source, Worked } from '../working/working';
import { emulsifierHlb } from './hlb-scale';
import { GRIFFIN_1949 } from './sources';

/** A part of a blend: any one unit of mass, zero allowed. */
export interface WeightedPart {
  mass: number;
  value: number;
}

export interface MeanWords {
  /** What the mean is, for the step: "mass-weighted mean of the oils' required HLB". */
  says: string;
  /** What one part is called in messages: "oil". */
  part: string;
  unit: string;
  sources: readonly Source[];
  cautions?: readonly string[];
}

/**
 * The mass-weighted mean of a property.
 *
 * @throws Problem `invalid-input` for no parts, a negative mass, a value that is no number, or no mass at all
 */
export function weightedMean(parts: readonly WeightedPart[], words: MeanWords): Worked {
  if (parts.length === 0)
    throw badInput(`There is no ${words.part} to take a mean of.`, `Enter at least one ${words.part}.`);
  for (const part of parts) nonNegative(part.mass, `Mass of ${article(words.part)}`);
  const total = parts.reduce((sum, part) => sum + part.mass, 0);
  if (total <= 0)
    throw badInput(
      `All masses are zero, so there is no mean.`,
      `Give at least one ${words.part} a mass above zero.`,
    );
  const sum = parts.reduce((acc, part) => acc + part.mass * part.value, 0);
  const terms = parts.map((part) => `${show(part.mass)} × ${showTerm(part.value)}`).join(' + ');
  const step = {
    says: words.says,
    shows: `(${terms}) / ${show(total)}`,
    result: sum / total,
    unit: words.unit,
  };
  return worked([step], words.sources, words.cautions);
}

/**
 * HLB of a blend of non-ionic emulsifiers: the mass-weighted mean of their HLBs.
 *
 * @param emulsifiers masses in any one unit (≥ 0, not all zero) and HLBs
 * @throws Problem `invalid-input`
 * Source: Griffin 1949.
 */
export function blendHlb(emulsifiers: readonly { mass: number; hlb: number }[]): Worked {
  const parts = emulsifiers.map(({ mass, hlb }) => ({
    mass,
    value: emulsifierHlb(hlb, 'HLB of an emulsifier'),
  }));
  return weightedMean(parts, {
    says: 'HLB of the blend: mass-weighted mean of the emulsifiers’ HLBs',
    part: 'emulsifier',
    unit: '',
    sources: [GRIFFIN_1949],
    cautions: ['The mean holds for non-ionic emulsifiers; ionics, polymers and particles need trials.'],
  });
}

function article(word: string): string {
  return /^[aeiou]/.test(word) ? `an ${word}` : `a ${word}`;
}
