import { joined } from '../locale/words';
import { isConverted, ofNoneAllowed, type Judged } from './judged';
import { passes } from './share-of-limit';
import type { Limit } from './limit';

/** A share in per cent as it is read: at most five significant digits, or as many as asked, without trailing zeros. */
export function percentWords(percent: number, digits = 5): string {
  const rounded = Number(percent.toPrecision(digits));
  const text = String(rounded);
  // A trace is read in digits too, never as a power of ten.
  return `${text.includes('e-') ? rounded.toFixed(20).replace(/0+$/, '') : text}\u00a0%`;
}

/** What a limit allows, in words: "at most 0.5 % as Benzoic Acid". */
export function allowanceWords({ rule, percent, minPercent, expressedAs, counting }: Limit): string {
  const as = expressedAs === '' ? '' : ` as ${expressedAs}`;
  const together =
    counting === 'together'
      ? ', together'
      : counting === 'each by itself'
        ? ''
        : ', by the sum of their shares';
  switch (rule) {
    case 'prohibited':
      return 'not allowed';
    case 'notice':
      return 'no share is set';
    case 'range of the active':
      return `${percentWords(minPercent ?? 0)} to ${percentWords(percent ?? 100)}${as}`;
    default:
      return `${rule} ${percentWords(percent ?? 0)}${as}${together}`;
  }
}

/** For which products a limit is: "leave-on, only face; not spray". */
export function productsWords({ use, kinds, exceptKinds, hands, purpose }: Limit): string {
  return [
    use ?? 'leave-on and rinse-off',
    kinds.length > 0 ? `only ${joined(kinds)}` : '',
    exceptKinds.length > 0 ? `not ${joined(exceptKinds)}` : '',
    hands ?? '',
    purpose === null
      ? ''
      : `as ${purpose === 'other than preservative' ? 'anything but a preservative' : purpose}`,
  ]
    .filter((part) => part !== '')
    .join('; ');
}

/** What is counted: the group, or the one substance. */
export function subjectWords({ limit, counted }: Judged): string {
  const [one] = counted;
  return limit.counting === 'each by itself' && one ? one.substance.name : limit.subject;
}

/** What a formula holds of it, as the limit counts: "0.466 % as Benzoic Acid", "105.5 % of the limits together". */
export function totalWords({ limit, counted, total, most }: Judged): string {
  const none = ofNoneAllowed(counted);
  if (none.length > 0)
    return none
      .map(
        ({ substance, amount }) =>
          `${percentWords(amount.high)} ${substance.name}, of which nothing is allowed`,
      )
      .join('; ');
  // What passes a limit by little is not to read as the limit itself.
  const close =
    most !== null &&
    passes(total.high, most, { converted: isConverted(counted) }) &&
    percentWords(total.high) === percentWords(most);
  const range =
    total.low === total.high
      ? percentWords(total.high, close ? 8 : 5)
      : `${percentWords(total.low)} to ${percentWords(total.high)}`;
  if (limit.counting === 'by shares of their limits' && most === 100)
    return `${range} of the limit, their shares summed`;
  return limit.expressedAs === '' ? range : `${range} as ${limit.expressedAs}`;
}
