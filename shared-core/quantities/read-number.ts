export type NumberReading = { ok: true; value: number } | { ok: false; message: string };

/** Thousands by one mark throughout; the last group has three digits, others two or three (1,23,456.7). */
const GROUPED = /^\d{1,3}(['.,])(?:\d{2,3}\1)*\d{3}$/;
const DIGITS = /^\d*$/;

/**
 * Reads a number as a maker types it: decimal comma or point, spaces or apostrophes between thousands.
 * A text with both marks takes the later one as the decimal mark ("1.234,5" and "1,234.5" are both 1234.5).
 * One lone comma or point is always the decimal mark. What is grouped otherwise is refused: "1.2,3" and "2 5" are
 * slips of the hand, and to take them for 12.3 and 25 would change a dose in silence.
 */
export function readNumber(text: string): NumberReading {
  const plain = text.trim().replace(/[−–]/g, '-').replace(/^-\s+/, '-').replace(/[\s’]/g, "'");
  if (plain === '') return { ok: false, message: 'Enter a number.' };
  const sign = plain.startsWith('-') ? '-' : '';
  const digits = plain.slice(sign.length);
  const decimal = Math.max(digits.lastIndexOf(','), digits.lastIndexOf('.'));
  const repeated = decimal >= 0 && digits.indexOf(digits.charAt(decimal)) < decimal;
  const ends = decimal < 0 || repeated;
  const whole = ends ? digits : digits.slice(0, decimal);
  const fraction = ends ? '' : digits.slice(decimal + 1);
  const isNumber = DIGITS.test(fraction) && (DIGITS.test(whole) || GROUPED.test(whole)) && /\d/.test(digits);
  const value = Number(`${sign}${whole.replace(/\D/g, '')}.${fraction}0`);
  if (!isNumber || !Number.isFinite(value))
    return { ok: false, message: `“${text.trim()}” is not a number. Write it like 12.5 or 12,5.` };
  return { ok: true, value: value === 0 ? 0 : value };
}
