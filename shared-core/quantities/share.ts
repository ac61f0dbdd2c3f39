import { z } from 'zod';

/** The whole of a formula: 100 % is one million parts. */
export const WHOLE_PPM = 1_000_000;

/** A share of a whole, an integer in parts per million (1 % = 10,000). */
export const sharePpm = z
  .int('A share must be a number of per cent with at most four decimals.')
  .min(0, 'A share cannot be negative.')
  .max(WHOLE_PPM, 'A share cannot be more than 100 %.');

/** Per cent to ppm, rounded half away from zero to the nearest part per million. */
export function ppmFromPercent(percent: number): number {
  const scaled = percent * 10_000;
  // toPrecision removes the binary noise of products such as 1.005 × 10,000 before rounding.
  return Math.sign(scaled) * Math.round(Number(Math.abs(scaled).toPrecision(15)));
}

/** Whether a share in per cent has more decimals than are kept, beyond the noise of binary numbers. */
export const isFiner = (percent: number): boolean =>
  Math.abs(percent * 10_000 - ppmFromPercent(percent)) > 1e-6;

/** One part per million: nothing that is there is kept as less. */
const LEAST_PERCENT = 0.0001;

/**
 * Why a share cannot be kept, where it is so small that it would be kept as none; null for every other.
 * @param percent the share in per cent
 * @param written as it stands where it comes from
 */
export function lostShare(percent: number, written: string): string | null {
  if (percent <= 0 || percent >= LEAST_PERCENT || ppmFromPercent(percent) > 0) return null;
  return `“${written}” is less than can be kept: shares are kept to 0.0001 %, and it would become 0. Write 0.0001 % or more, or 0.`;
}

/** Ppm to per cent, for showing and for computing with published formulas. */
export function percentFromPpm(ppm: number): number {
  return ppm / 10_000;
}
