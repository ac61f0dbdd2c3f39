import fc from 'fast-check';
import { allowanceWords, percentWords, productsWords, subjectWords, totalWords } from '@core/limits/words';
import { workingOfLimit } from '@core/limits/working';
import { shareOfMost } from '@core/limits/judged';
import type { LimitContent } from '@core/limits/limit';
import { describe, expect, it } from 'vitest';
import { make } from '../checks/build';
import { law, limit } from './acids';
import { judged, situation, type Line } from './law';

const allowed = (parts: Partial<LimitContent>): string => allowanceWords(limit('Acids', parts));
const nbsp = (text: string): string => text.replace(/ %/g, '\u00a0%');

describe('what a limit allows, in words', () => {
  it.each([
    [{ percent: 0.5 }, 'at most 0.5 %'],
    [{ percent: 0.5, expressedAs: 'Benzoic Acid' }, 'at most 0.5 % as Benzoic Acid'],
    [{ percent: 0.1, rule: 'less than' }, 'less than 0.1 %'],
    [{ percent: 0.8, counting: 'together' }, 'at most 0.8 %, together'],
    [{ percent: 0.14, counting: 'by shares of their limits' }, 'at most 0.14 %, by the sum of their shares'],
    [{ rule: 'prohibited', percent: null }, 'not allowed'],
    [{ rule: 'notice', percent: null }, 'no share is set'],
    [{ rule: 'range of the active', minPercent: 2, percent: 5 }, '2 % to 5 %'],
    [{ rule: 'range of the active', minPercent: null, percent: 5 }, '0 % to 5 %'],
    [{ rule: 'range of the active', minPercent: 2, percent: null }, '2 % to 100 %'],
    [{ percent: 0.0015 }, 'at most 0.0015 %'],
  ] as [Partial<LimitContent>, string][])('%j: %s', (parts, words) =>
    expect(allowed(parts)).toBe(nbsp(words)),
  );

  it.each([
    [{}, 'leave-on and rinse-off'],
    [{ use: 'rinse-off' }, 'rinse-off'],
    [
      { use: 'leave-on', kinds: ['face'], exceptKinds: ['pump spray'] },
      'leave-on; only face; not pump spray',
    ],
    [{ hands: 'professional use' }, 'leave-on and rinse-off; professional use'],
    [{ purpose: 'preservative' }, 'leave-on and rinse-off; as preservative'],
    [{ purpose: 'other than preservative' }, 'leave-on and rinse-off; as anything but a preservative'],
  ] as [Partial<LimitContent>, string][])('for products %j: %s', (parts, words) =>
    expect(productsWords(limit('Acids', parts))).toBe(words),
  );
});

describe('what a formula holds, in words', () => {
  const benzoic = make('A', 'Benzoic Acid');
  const only = (rows: Line[], parts: Partial<LimitContent>, subject = 'Benzoic Acid') =>
    judged(rows, situation(), law(limit(subject, parts)))[0]!;

  it('as the limit counts it, over the supplier’s range where there is one', () => {
    expect(totalWords(only([[benzoic, 0.5]], {}))).toBe(nbsp('0.5 %'));
    const ranged = make('R', 'Benzoic Acid', {
      composition: [{ inci: 'Benzoic Acid', lowPpm: 400_000, highPpm: 600_000 }],
    });
    expect(totalWords(only([[ranged, 1]], {}))).toBe(nbsp('0.4 % to 0.6 %'));
    const salt = make('S', 'Sodium Benzoate');
    // 0.5 × 122.123 / 144.105.
    expect(totalWords(only([[salt, 0.5]], { expressedAs: 'Benzoic Acid' }, 'Sodium Benzoate'))).toBe(
      nbsp('0.42373 % as Benzoic Acid'),
    );
  });

  it('is never written as the limit itself where it passes it', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 200_000 }), (ppm) => {
        const share = ppm / 10_000;
        const found = only([[benzoic, share]], { percent: 5 });
        const written = Number(totalWords(found).replace(/\u00a0%/, ''));
        expect(written > 5).toBe(found.verdict === 'above');
        // Five digits are shown.
        expect(Math.abs(written - share)).toBeLessThanOrEqual(0.00051);
      }),
    );
  });

  it('is written in digits however small it is, and reads back as it was', () => {
    expect(percentWords(1e-7)).toBe(nbsp('0.0000001 %'));
    expect(percentWords(1.2345e-7)).toBe(nbsp('0.00000012345 %'));
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 99_999 }), fc.integer({ min: 0, max: 12 }), (digits, power) => {
        const share = digits / 10 ** power;
        const written = percentWords(share).replace(/\u00a0%/, '');
        expect(written).toMatch(/^\d+(\.\d+)?$/);
        expect(Number(written)).toBeCloseTo(share, 15);
      }),
    );
  });

  it('names the one substance where each counts by itself, else the group', () => {
    const group = { of: 'group' as const, percent: 1 };
    expect(subjectWords(only([[benzoic, 0.5]], group, 'Acids'))).toBe('Benzoic Acid');
    expect(subjectWords(only([[benzoic, 0.5]], { ...group, counting: 'together' }, 'Acids'))).toBe('Acids');
  });
});

describe('how a limit was held against a formula', () => {
  const shelf = ['Benzoic Acid', 'Sodium Benzoate', 'Sorbic Acid'].map((inci) => make(inci, inci));
  const rows = fc.array(fc.tuple(fc.constantFrom(...shelf), fc.integer({ min: 1, max: 9_000 })), {
    minLength: 1,
    maxLength: 4,
  });
  const parts = fc.constantFrom<Partial<LimitContent>>(
    { of: 'group', counting: 'together', percent: 0.8 },
    { of: 'group', counting: 'together', expressedAs: 'Benzoic Acid', percent: 0.5 },
    { of: 'group', counting: 'by shares of their limits', percent: 0.6 },
    { of: 'group', percent: 0.5 },
  );

  it('ends in the figure that was judged, each step a number, with the limit’s own source', () => {
    fc.assert(
      fc.property(rows, parts, (lines, asked) => {
        const all = judged(
          lines.map(([one, ppm]): Line => [one, ppm / 10_000]),
          situation(),
          law(limit('Acids', asked)),
        );
        for (const found of all) {
          const { steps, value, sources } = workingOfLimit(found);
          expect(value).toBe(found.total.high);
          expect(sources[0]?.text).toBe('s');
          expect(
            steps.every(({ result, shows, says }) => Number.isFinite(result) && shows !== '' && says !== ''),
          ).toBe(true);
          const last = steps.at(-1)!.result;
          const share = shareOfMost(found);
          // The last step is the share of the limit, or the sum of shares, which is one already.
          expect(last).toBeCloseTo(share ?? value, 9);
        }
      }),
      { numRuns: 60 },
    );
  });
});
