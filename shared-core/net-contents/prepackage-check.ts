import { sample } from '../statistics/sample';
import { badInput, nonNegative, positive } from '../working/inputs';
import type { Source, Worked } from '../working/working';
import { lowestMean } from './mean-criterion';
import { prepackageLimits } from './tolerable-error';

export const PLANS_SOURCE: Source = {
  text: 'UK SI 2006/659, Schedule 2, and Council Directive 76/211/EEC, Annex II: plans of the check',
  basis: 'memory',
};

/** A plan of sampling: how many packs, and how many of them may fall below T1. */
interface Plan {
  size: number;
  accept: number;
  reject: number;
  /** Both samples together; null where there is one only. */
  second: { size: number; accept: number } | null;
  /** The first so many decide on the mean. */
  meanOf: number;
}

const plan = (size: number, accept: number, reject: number, second: Plan['second'], meanOf = size): Plan => ({
  size,
  accept,
  reject,
  second,
  meanOf,
});

/** A batch that is weighed whole: by the packers' rule at most 2.5 % of it below T1. */
function wholeBatch(batchSize: number): Plan {
  const accept = Math.floor(batchSize * 0.025);
  return plan(batchSize, accept, accept + 1, null);
}

/** @throws Problem `invalid-input` where the check has no plan */
export function planFor(batchSize: number, destructive: boolean): Plan {
  if (!Number.isInteger(batchSize) || batchSize < 2)
    throw badInput(
      'A batch has a whole number of packs, two at least.',
      'Enter the batch size.',
      'batchSize',
    );
  if (destructive && batchSize < 100)
    throw badInput(
      'For fewer than 100 packs there is no plan that opens them.',
      'Weigh every pack without opening it.',
      'destructive',
    );
  if (destructive) return plan(20, 1, 2, null);
  if (batchSize < 100) return wholeBatch(batchSize);
  if (batchSize <= 500) return plan(30, 1, 3, { size: 60, accept: 4 });
  if (batchSize <= 3200) return plan(50, 2, 5, { size: 100, accept: 6 });
  return plan(80, 3, 7, { size: 160, accept: 8 }, 50);
}

export interface PrepackageCheck {
  verdict: 'accepted' | 'rejected' | 'second sample';
  why: string[];
  belowT1: number;
  belowT2: number;
  mean: Worked;
  lowestMean: Worked;
  t1: Worked;
  t2: Worked;
}

function byCount(of: Plan, entered: number, below: number): PrepackageCheck['verdict'] {
  if (of.second && entered === of.second.size) return below <= of.second.accept ? 'accepted' : 'rejected';
  if (below <= of.accept) return 'accepted';
  return below >= of.reject || !of.second ? 'rejected' : 'second sample';
}

/**
 * The reference check of a batch of packs: few below T1, none below T2, and a mean that reaches the label.
 *
 * @param nominal g or mL
 * @param contents of the packs drawn, in order: the first sample, or both together
 * @throws Problem `invalid-input` for another number of packs than the plan asks for
 */
export function checkPrepackages(
  nominal: number,
  batchSize: number,
  destructive: boolean,
  contents: readonly number[],
  unit: string,
): PrepackageCheck {
  positive(nominal, 'Nominal contents');
  const of = planFor(batchSize, destructive);
  if (contents.length !== of.size && contents.length !== of.second?.size)
    throw badInput(
      `This check takes ${of.size} packs${of.second ? `, or ${of.second.size} with the second sample` : ''}; ${contents.length} are entered.`,
      'Enter the contents of each pack drawn.',
      'rows',
      { missing: contents.length < of.size },
    );
  contents.forEach((one, index) => nonNegative(one, `Contents of pack ${index + 1}`));
  const { t1, t2 } = prepackageLimits(nominal, unit);
  const { mean, standardDeviation } = sample(contents.slice(0, of.meanOf), 'Pack', unit);
  const whole = batchSize < 100;
  const lowest = lowestMean(nominal, whole ? 0 : standardDeviation.value, of.meanOf, unit);
  // Room for binary noise: a pack of exactly 5.1 is not below 5.7 − 0.6.
  const below = (limit: Worked): number => contents.filter((one) => one < limit.value - 1e-9).length;
  const [belowT1, belowT2] = [below(t1), below(t2)];
  const meanHolds = mean.value >= lowest.value - 1e-9;
  const counted = byCount(of, contents.length, belowT1);
  const verdict = belowT2 > 0 || !meanHolds ? 'rejected' : counted;
  const why = [
    `${belowT1} of ${contents.length} below T1: ${counted}${counted === 'second sample' && of.second ? `, ${of.second.size} packs in all` : ''}.`,
    belowT2 === 0 ? 'None below T2.' : `${belowT2} below T2: none may be.`,
    meanHolds ? 'The mean reaches what is asked.' : 'The mean is too low.',
  ];
  return { verdict, why, belowT1, belowT2, mean, lowestMean: lowest, t1, t2 };
}
