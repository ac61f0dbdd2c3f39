import { dayWords } from './dates';
import { decimalSign, formatNumber, type Decimals, type Region } from './numbers';
import { show } from '../working/show';

const RAISED: Record<string, string> = {
  '-': '⁻',
  '−': '⁻',
  ...Object.fromEntries([...'⁰¹²³⁴⁵⁶⁷⁸⁹'].entries()),
};

function raised(power: string): string {
  return [...power].map((sign) => RAISED[sign] ?? sign).join('');
}

/** A number as the region writes it; one too small for these decimals in powers of ten, never as 0. A minus is a real one. */
export function readableNumber(value: number, region: Region, digits: number | Decimals): string {
  const most = typeof digits === 'number' ? digits : digits.max;
  if (value !== 0 && Math.abs(value) < 10 ** -most) return workingNumber(value, region);
  return formatNumber(value, region, digits).replace('-', '−');
}

/**
 * The text of a working as the region writes it: its numbers with the region's decimal sign, its powers of ten
 * raised. Workings are put together without a region, by `show`.
 */
export function workingText(text: string, region: Region): string {
  return text
    .replace(/(10\^)([−-]?\d+)(?![\d.]|\()/g, (_, _ten, power: string) => `10${raised(power)}`)
    .replace(/(\d)\.(?=\d)/g, `$1${decimalSign(region)}`);
}

/** What stands behind a number without a line being broken between them. */
const UNITS =
  /(\d) (?=(%|°C|mPa·s|rpm|min|h|kg|g|mg|mL|mmol|mol|ppm|mN\/m|N\/m|nm|µm|g\/mL|mg\/kg)(?![\p{L}\p{N}]))/gu;

/** A day as sentences are put together with it: "2026-03-31", and no part of a longer number. */
const DAY = /(?<![\p{L}\d./-])\d{4}-\d{2}-\d{2}(?![\p{L}\d/-])/gu;

/**
 * A sentence with numbers and days, such as what a check or a rule says, as the region writes it: with its decimal sign,
 * its way of writing a day, and no break before a unit. Such sentences are put together without a region.
 */
export function regionText(text: string, region: Region): string {
  return text
    .replace(DAY, (day) => dayWords(day, region))
    .replace(/(?<![\p{L}\d.,-])(\d+)\.(\d+)(?![.\d]*[\p{L}.]\d)/gu, `$1${decimalSign(region)}$2`)
    .replace(UNITS, '$1\u00a0');
}

/** A number of a working: in six digits, as it stands in its formulas, so that a result can be followed on. */
export function workingNumber(value: number, region: Region): string {
  return workingText(show(value), region);
}
