import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readNumber } from '@core/quantities/read-number';

const read = (text: string): number | null => {
  const reading = readNumber(text);
  return reading.ok ? reading.value : null;
};

describe('a number as it is typed', () => {
  it.each([
    ['12.5', 12.5],
    ['12,5', 12.5],
    ['.5', 0.5],
    [',5', 0.5],
    ['12.', 12],
    ['012', 12],
    ['  7 ', 7],
    ['-3,2', -3.2],
    ['−3.2', -3.2],
    ['– 3.2', -3.2],
    ['-0', 0],
    // A lone mark is always the decimal one, three digits behind it or not.
    ['1,234', 1.234],
    ['1.234', 1.234],
    ['1.234,5', 1234.5],
    ['1,234.5', 1234.5],
    ['1 234,5', 1234.5],
    ['1\u00a0234\u202f567,5', 1234567.5],
    ["1'234.5", 1234.5],
    ['1’234.5', 1234.5],
    ['1.234.567', 1234567],
    ['1,234,567.8', 1234567.8],
    ['1,23,456.7', 123456.7],
  ])('“%s” is %d', (text, value) => expect(read(text)).toBe(value));

  it.each([
    ['', 'Enter a number.'],
    ['   ', 'Enter a number.'],
    ...[
      '-',
      '.',
      ',',
      'abc',
      '1e3',
      '0x10',
      '5 %',
      '+5',
      '--5',
      '5-',
      '1..5',
      '1,,5',
      'NaN',
      'Infinity',
      // Slips that would change a dose if the mark were passed over.
      '1.2,3',
      '12,5.3',
      '2 5',
      '12 34',
      "1'2",
      '1 .5',
      '1,5 000',
      '1.23.4',
      '1,234,5',
      "1'234.567.8",
      '1.234,567.8',
      '٣',
    ].map((text) => [text, `“${text}” is not a number. Write it like 12.5 or 12,5.`]),
  ])('“%s” is refused', (text, message) => expect(readNumber(text)).toEqual({ ok: false, message }));

  it('is refused when no computer holds it', () => {
    expect(read('9'.repeat(308))).toBeGreaterThan(1e307);
    expect(read('9'.repeat(400))).toBeNull();
  });

  it('is the same with a comma as with a point, grouped by any mark or not, with space around', () => {
    const group = (whole: string, mark: string): string => whole.replace(/\B(?=(\d{3})+$)/g, mark);
    fc.assert(
      fc.property(fc.nat(1e9), fc.stringMatching(/^\d{1,4}$/), fc.boolean(), (n, fraction, minus) => {
        const [whole, sign] = [String(n), minus ? '-' : ''];
        const value = Number(`${sign}${whole}.${fraction}`) || 0;
        for (const [thousands, decimal] of [
          ['', '.'],
          ['', ','],
          [' ', ','],
          ['\u202f', ','],
          ["'", '.'],
          ['.', ','],
          [',', '.'],
        ] as const)
          expect(read(` ${sign}${group(whole, thousands)}${decimal}${fraction} `)).toBe(value);
      }),
    );
  });

  it('is never made of anything but digits, marks, spaces and a sign before them', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 12 }), (text) => {
        const value = read(text);
        if (value === null) return;
        expect(text.trim()).toMatch(/^[-−–]?[\d\s.,'’]*\d[\d\s.,'’]*$/);
        expect(Number.isFinite(value)).toBe(true);
        // No digit is dropped: what is kept of the text are the digits of the number.
        expect(BigInt(text.replace(/\D/g, '')) === 0n).toBe(value === 0);
      }),
    );
  });
});
