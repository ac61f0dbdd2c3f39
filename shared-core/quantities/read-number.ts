export type NumberReading = { ok: true; value: number } | { ok: false; message: string };

/**
 * Reads a number as a maker types it: decimal comma or point, spaces or apostrophes between thousands.
 * A text with both marks takes the later one as the decimal mark ("1.234,5" and "1,234.5" are both 1234.5).
 * One lone comma or point is always the decimal mark.
 */
export function readNumber(text: string): NumberReading {
  const plain = text
    .trim()
    .replace(/[\s\u00a0\u202f'’]/g, '')
    .replace(/[−–]/g, '-');
  if (plain === '') return { ok: false, message: 'Enter a number.' };
  const comma = plain.lastIndexOf(',');
  const point = plain.lastIndexOf('.');
  const decimal = Math.max(comma, point);
  const mark = decimal === comma ? ',' : '.';
  const other = mark === ',' ? '.' : ',';
  const repeated = decimal >= 0 && plain.split(mark).length > 2;
  const grouped = repeated && plain.includes(other);
  if (grouped || (repeated && !/^-?\d{1,3}([.,]\d{3})+$/.test(plain)))
    return { ok: false, message: `“${text.trim()}” is not a number. Write it like 12.5 or 12,5.` };
  const normal = repeated ? plain.split(mark).join('') : plain.split(other).join('').replace(mark, '.');
  if (!/^-?(\d+\.?\d*|\.\d+)$/.test(normal))
    return { ok: false, message: `“${text.trim()}” is not a number. Write it like 12.5 or 12,5.` };
  return { ok: true, value: Number(normal) };
}
