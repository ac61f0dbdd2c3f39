import { badInput, between } from '../working/inputs';
import { oneStep } from '../working/one-step';
import { show, showTerm } from '../working/show';
import type { Source, Worked } from '../working/working';

/** How far printed, rounded fractions may miss 1 (three of 0.333). */
const SUM_TOLERANCE = 0.005;

export interface FractionMeanWords {
  says: string;
  part: string;
  sources: readonly Source[];
  cautions: readonly string[];
}

/**
 * Σ fraction × value over fractions that sum to 1. A sum off by printed rounding is divided out.
 *
 * @throws Problem `invalid-input` for no parts, a fraction out of 0 to 1, or a sum that misses 1
 */
export function fractionMean(
  parts: readonly { fraction: number; value: number }[],
  words: FractionMeanWords,
): Worked {
  if (parts.length === 0) throw badInput(`There is no ${words.part}.`, `Enter at least one ${words.part}.`);
  for (const part of parts) between(part.fraction, 0, 1, `Fraction of one ${words.part}`);
  const sum = parts.reduce((total, part) => total + part.fraction, 0);
  if (Math.abs(sum - 1) > SUM_TOLERANCE)
    throw badInput(
      `The fractions sum to ${show(sum)}, not to 1.`,
      'Enter fractions between 0 and 1 of the whole mix (30 % is 0.3).',
    );
  const off = Math.abs(sum - 1) > 1e-9;
  const terms = parts.map((part) => `${show(part.fraction)} × ${showTerm(part.value)}`).join(' + ');
  const step = {
    says: words.says,
    shows: off ? `(${terms}) / ${show(sum)}` : terms,
    result: parts.reduce((total, part) => total + part.fraction * part.value, 0) / sum,
    unit: '',
  };
  return oneStep(step, words.sources, words.cautions);
}
