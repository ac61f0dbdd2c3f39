import { minorDigits } from '../quantities/money';
import type { Currency } from '../quantities/money';
import type { Region } from './numbers';

const formats = new Map<string, Intl.NumberFormat>();

/**
 * An amount of money as the region writes it.
 * @param minor minor units (cents, pence), rounded half away from zero here and only here
 */
export function formatMoney(minor: number, currency: Currency, region: Region): string {
  const key = `${region} ${currency}`;
  const digits = minorDigits(currency);
  const shown =
    formats.get(key) ??
    new Intl.NumberFormat(region, {
      style: 'currency',
      currency,
      minimumFractionDigits: digits,
      maximumFractionDigits: digits,
      signDisplay: 'negative',
    });
  formats.set(key, shown);
  return shown.format((Math.sign(minor) * Math.round(Math.abs(minor))) / 10 ** digits);
}
