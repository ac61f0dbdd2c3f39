import fc from 'fast-check';
import { onDecimal } from '@core/sheets/kit/on-decimal';
import { formatNumber } from '@core/locale/numbers';
import { SIZE } from '@core/sheets/kit/type-scale';
import { describe, expect, it } from 'vitest';

/** How far from the right edge the decimal sign of a cell lies, or would lie, by the face's tabular figures. */
const signAt = ({ text, margin }: ReturnType<typeof onDecimal>[number], sign: string): number => {
  const digits = String(text).includes(sign) ? String(text).split(sign)[1]!.length : 0;
  const signWide = String(text).includes(sign) ? 0.249 : 0;
  return (margin?.[2] ?? 0) + SIZE.table * (0.497 * digits + signWide);
};

describe('a column of numbers on paper', () => {
  it('has its decimal signs below each other, whatever the decimals and the region', () => {
    const numbers = fc.array(fc.double({ min: 0, max: 1000, noNaN: true }), { minLength: 1, maxLength: 12 });
    fc.assert(
      fc.property(numbers, fc.constantFrom('en-GB', 'de-DE'), (values, region) => {
        const texts = values.map((value, at) => formatNumber(value, region, { min: 0, max: at % 5 }));
        const cells = onDecimal(texts, region);
        const at = cells.map((cell) => signAt(cell, region === 'de-DE' ? ',' : '.'));
        for (const one of at) expect(one).toBeCloseTo(at[0] ?? 0, 9);
        expect(cells.map(({ text }) => text)).toEqual(texts);
      }),
    );
  });

  it('keeps a column of whole numbers at its edge', () => {
    expect(onDecimal(['12', '', '7'], 'en-GB').map(({ margin }) => margin?.[2])).toEqual([0, 0, 0]);
  });
});
