import { badInput, nonNegative, positive } from '../working/inputs';

/**
 * Rounds shares of a total to whole multiples of `step` so that they still add up to the total.
 *
 * The largest-remainder rule (Hamilton's method of apportionment): every share is rounded down, and the
 * steps left over go to the largest remainders, earlier shares first among equals.
 *
 * @param shares weights, ≥ 0, not all zero; any one unit
 * @param total what the result adds up to, a multiple of `step` (else the nearest multiple is used)
 * @param step the smallest unit shown, > 0, in the unit of `total`
 * @throws Problem `invalid-input` for a share or total that is negative or infinite, or a step too fine to count by
 */
export function largestRemainder(shares: readonly number[], total: number, step: number): number[] {
  for (const share of shares) nonNegative(share, 'Share');
  nonNegative(total, 'Total');
  positive(step, 'Step');
  const weight = shares.reduce((sum, share) => sum + share, 0);
  if (weight <= 0) return shares.map(() => 0);
  const steps = Math.round(total / step);
  if (!Number.isSafeInteger(steps) || !Number.isFinite(weight))
    throw badInput(
      'These shares cannot be counted in steps this fine.',
      'Enter a coarser step, such as the balance’s readability.',
      'Step',
    );
  const exact = shares.map((share) => (share / weight) * steps);
  const whole = exact.map(Math.floor);
  let left = steps - whole.reduce((sum, count) => sum + count, 0);
  const byRemainder = exact
    .map((value, index) => ({ index, remainder: value - Math.floor(value) }))
    .sort((a, b) => b.remainder - a.remainder || a.index - b.index);
  for (const { index } of byRemainder) {
    if (left <= 0) break;
    if ((shares[index] ?? 0) === 0) continue;
    whole[index] = (whole[index] ?? 0) + 1;
    left -= 1;
  }
  return whole.map((count) => count * step);
}
