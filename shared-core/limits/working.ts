import { IUPAC_WEIGHTS } from '../structure/atomic-weights';
import { percentFromPpm } from '../quantities/share';
import { show } from '../working/show';
import type { Worked, WorkingStep } from '../working/working';
import { factorInSum, isConverted, ofNoneAllowed, shareOfMost, type Counted, type Judged } from './judged';
import { CONVERTED_TO_WITHIN } from './share-of-limit';

function sumStep({ substance, parts, amount }: Counted): WorkingStep {
  return {
    says: `${substance.name}: summed over the lines that bring it, at the upper end of suppliers’ ranges`,
    shows: parts
      .map(({ material, high }) => `${show(percentFromPpm(high))} (${material.tradeName})`)
      .join(' + '),
    result: amount.high,
    unit: '% of the product',
  };
}

function countedStep({ substance, amount, factor, ownPercent }: Counted, as: string): WorkingStep[] {
  if (factor.shows === '' && ownPercent === null) return [];
  const counted = amount.high * factor.value;
  const asWhat = as === '' ? substance.name : as;
  const converted =
    factor.shows === ''
      ? []
      : [
          {
            says: `${substance.name}, counted as ${asWhat} by molar mass`,
            shows: `${show(amount.high)} × ${factor.shows}`,
            result: counted,
            unit: `% as ${asWhat}`,
          },
        ];
  if (ownPercent === null || ownPercent === 0) return converted;
  return [
    ...converted,
    {
      says: `${substance.name}: its share of its own limit`,
      shows: `100 × ${show(counted)} / ${show(ownPercent)}`,
      result: (100 * counted) / ownPercent,
      unit: '% of its limit',
    },
  ];
}

/** Whether a converted total differs from the limit, but by less than molar masses are known. */
function isAtLimit({ counted, total, most }: Judged): boolean {
  if (most === null || !isConverted(counted)) return false;
  const apart = Math.abs(total.high - most);
  return apart > most * 1e-9 && apart <= most * CONVERTED_TO_WITHIN;
}

/** How a limit was held against a formula, step by step with the numbers put in. */
export function workingOfLimit(judged: Judged): Worked {
  const { limit, counted, total, most, cautions } = judged;
  const steps = counted.flatMap((one) => [sumStep(one), ...countedStep(one, limit.expressedAs)]);
  const byShares = counted.some(({ ownPercent }) => ownPercent !== null);
  if (counted.length > 1 && ofNoneAllowed(counted).length === 0)
    steps.push({
      says: byShares ? 'the shares summed' : 'summed, as the limit counts them together',
      shows: counted.map((one) => show(one.amount.high * factorInSum(one))).join(' + '),
      result: total.high,
      unit: byShares ? '% of the limits' : '%',
    });
  const share = shareOfMost(judged);
  if (share !== null && !byShares && most !== null)
    steps.push({
      says: 'share of the limit',
      shows: `100 × ${show(total.high)} / ${show(most)}`,
      result: share,
      unit: '% of the limit',
    });
  const exactness = isAtLimit(judged)
    ? [
        'It is the limit as exactly as molar masses are known: to one part in a hundred thousand, since atomic weights vary in nature.',
      ]
    : [];
  return {
    value: total.high,
    unit: '%',
    steps,
    sources: [
      { text: limit.source, basis: 'user' },
      ...(counted.some(({ factor }) => factor.shows !== '') ? [IUPAC_WEIGHTS] : []),
    ],
    cautions: [...cautions, ...exactness],
  };
}
