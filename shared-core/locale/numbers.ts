import { percentFromPpm } from '../quantities/share';
import type { Settings } from '../settings/settings';

export type Region = Settings['languageRegion'];

const formats = new Map<string, Intl.NumberFormat>();

// Making an Intl format costs far more than using it, and a list asks for thousands.
function numberFormat(region: Region, options: Intl.NumberFormatOptions): Intl.NumberFormat {
  const key = region + JSON.stringify(options);
  const known = formats.get(key);
  if (known) return known;
  const made = new Intl.NumberFormat(region, options);
  formats.set(key, made);
  return made;
}

/** Fewest and most decimals shown. */
export interface Decimals {
  min: number;
  max: number;
}

/**
 * A number as the region writes it.
 * @param digits the exact count of decimals, or the fewest and most; 0 to 3 when left out
 */
export function formatNumber(
  value: number,
  region: Region,
  digits: number | Decimals = { min: 0, max: 3 },
): string {
  const { min, max } = typeof digits === 'number' ? { min: digits, max: digits } : digits;
  const shown = numberFormat(region, {
    minimumFractionDigits: min,
    maximumFractionDigits: max,
    // What rounds to nothing would print as "-0".
    signDisplay: 'negative',
  });
  return shown.format(value);
}

/**
 * A share with the per cent sign behind a space that does not break, in every region: "12.5 %" or "12,5 %" (so the SI
 * brochure, 9th edition, 5.4.7).
 * @param ppm parts per million of the whole
 * @param digits the exact count of decimals; as many as the share needs, at least 2, when left out
 */
export function formatPercent(ppm: number, region: Region, digits?: number): string {
  return `${formatShare(ppm, region, digits)}\u00a0%`;
}

/** A share in per cent without the sign, for a column headed "% w/w". */
export function formatShare(ppm: number, region: Region, digits?: number): string {
  return formatNumber(percentFromPpm(ppm), region, digits ?? { min: 2, max: 4 });
}

/** The decimals (2 to 4) that show every share of a column exactly, so that it lines up on its decimal sign. */
export function shareDigits(shares: readonly number[]): number {
  if (shares.some((ppm) => ppm % 10 !== 0)) return 4;
  if (shares.some((ppm) => ppm % 100 !== 0)) return 3;
  return 2;
}

/** The region's decimal sign, for aligning columns on it. */
export function decimalSign(region: Region): string {
  const parts = numberFormat(region, { minimumFractionDigits: 1 }).formatToParts(0.1);
  return parts.find((part) => part.type === 'decimal')?.value ?? '.';
}
