import { decimalPlaces, missingPlaces } from '@core/locale/decimal-places';
import { formatNumber } from '@core/locale/numbers';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

describe('figures of a column, set to the right', () => {
  it('are filled up to the longest, the sign counted where there is none', () => {
    expect(missingPlaces('5', 2, 'en-GB')).toBe('.00');
    expect(missingPlaces('0.25', 2, 'en-GB')).toBe('');
    expect(missingPlaces('0,5', 4, 'de-DE')).toBe('000');
    expect(missingPlaces('1,234', 0, 'en-GB')).toBe('');
  });

  it('then all end as far behind their decimal sign, in every region', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 0, max: 10 ** 9 }), { minLength: 1, maxLength: 8 }),
        fc.constantFrom('en-GB' as const, 'de-DE' as const, 'fr-FR' as const, 'de-CH' as const),
        (ppm, region) => {
          const written = ppm.map((one) => formatNumber(one / 10_000, region, { min: 0, max: 4 }));
          const places = Math.max(...written.map((one) => decimalPlaces(one, region)));
          for (const one of written)
            expect(decimalPlaces(one + missingPlaces(one, places, region), region)).toBe(places);
        },
      ),
    );
  });
});
