import { z } from 'zod';

/** ISO 4217 codes offered in settings; a price keeps the currency it was paid in. */
export const CURRENCIES = [
  'EUR',
  'GBP',
  'USD',
  'CHF',
  'SEK',
  'NOK',
  'DKK',
  'PLN',
  'CZK',
  'CAD',
  'AUD',
  'NZD',
  'ZAR',
  'INR',
  'JPY',
  'BRL',
  'TRY',
] as const;
export const currency = z.enum(CURRENCIES, 'Choose a currency from the list.');
export type Currency = z.infer<typeof currency>;

/** Decimal digits of a currency's minor unit (ISO 4217). */
export function minorDigits(code: Currency): number {
  return code === 'JPY' ? 0 : 2;
}
