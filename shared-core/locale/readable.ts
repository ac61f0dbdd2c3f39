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

/** A number of a working: in six digits, as it stands in its formulas, so that a result can be followed on. */
export function workingNumber(value: number, region: Region): string {
  return workingText(show(value), region);
}
