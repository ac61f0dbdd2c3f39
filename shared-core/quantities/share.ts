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

/** Ppm to per cent, for showing and for computing with published formulas. */
export function percentFromPpm(ppm: number): number {
  return ppm / 10_000;
}
