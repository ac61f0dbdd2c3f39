import { badInput, between, nonNegative, positive } from '../working/inputs';
import { worked } from '../working/one-step';
import { show } from '../working/show';
import { studentQuantile } from '../statistics/student-t';
import type { Source, Worked } from '../working/working';
import { CHECK_THE_LAW } from './tolerable-error';

const ANNEX_II: Source = {
  text: 'Council Directive 76/211/EEC, Annex II, 2.3.3 (as UK SI 2006/659, Schedule 2, 4.2 to 4.6): k = t(n − 1) / √n',
  basis: 'read',
};

/**
 * Factor of the standard deviation that the mean of a sample may fall below the label: t / √n.
 *
 * @param confidence one-sided, as a fraction; the Directive takes 0.995
 * @throws Problem `invalid-input`
 */
export function meanFactor(sampleSize: number, confidence: number, source: Source = ANNEX_II): Worked {
  between(sampleSize, 2, 100_000, 'Sample size');
  if (!Number.isInteger(sampleSize))
    throw badInput(
      `A sample of ${show(sampleSize)} packs is none.`,
      'Enter a whole number of packs.',
      'Sample size',
    );
  const t = studentQuantile(confidence, sampleSize - 1);
  return worked(
    [
      {
        says: `Student’s t at ${show(confidence)} with ${sampleSize - 1} degrees of freedom`,
        shows: `t(${show(confidence)}; ${sampleSize - 1})`,
        result: t,
        unit: '',
      },
      {
        says: 'factor: t / √n',
        shows: `${show(t)} / √${sampleSize}`,
        result: t / Math.sqrt(sampleSize),
        unit: '',
      },
    ],
    [source],
  );
}

/** The lowest mean that a sample may have: nominal − factor × standard deviation, in the nominal's unit. */
export function lowestMean(
  nominal: number,
  standardDeviation: number,
  sampleSize: number,
  unit: string,
  confidence = 0.995,
): Worked {
  positive(nominal, 'Nominal contents');
  nonNegative(standardDeviation, 'Standard deviation');
  const factor = meanFactor(sampleSize, confidence);
  const step = {
    says: 'lowest mean that is accepted: contents − factor × standard deviation',
    shows: `${show(nominal)} − ${show(factor.value)} × ${show(standardDeviation)}`,
    result: nominal - factor.value * standardDeviation,
    unit,
  };
  return worked([...factor.steps, step], factor.sources, [CHECK_THE_LAW]);
}
