import type { NumberReading } from './read-number';

/** How spreadsheets write what is very small or very large into a text: 1E-05, 2,5E+06. */
const POWER_OF_TEN = /^(.*\d)e([+-]?\d{1,2})$/i;

/**
 * A number written with a power of ten; null for what is written without one.
 * @param read reads the digits before the power: they are never grouped, so that one mark among them comes before decimals
 */
export function readPowerOfTen(text: string, read: (digits: string) => NumberReading): NumberReading | null {
  const [, digits, power] = POWER_OF_TEN.exec(text) ?? [];
  if (digits === undefined) return null;
  const reading = read(digits);
  return reading.ok
    ? { ok: true, value: Number((reading.value * 10 ** Number(power)).toPrecision(15)) }
    : reading;
}
