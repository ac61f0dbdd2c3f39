import { blankLimit, type Limit, type LimitContent } from '@core/limits/limit';
import { lawAsItWas, SAME_LAW } from '@core/limits/law-then';
import { limitKindsOf, regionsOf, timeOf } from '@core/limits/situation';
import { situationsOf } from '@core/limits/in-formula';
import { passes, shareOfLimit, CONVERTED_TO_WITHIN } from '@core/limits/share-of-limit';
import { blankTarget } from '@core/formulas/formula';
import { blankMarket } from '@core/products/market';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { kept } from './law';

const limit = (parts: Partial<LimitContent>): Limit =>
  kept<LimitContent>({ ...blankLimit('Urea'), percent: 5, regions: ['EU'], source: 'invented', ...parts });

describe('for which products a limit is', () => {
  it('answers to its kind, where it is used, and how it is dispensed', () => {
    const words = limitKindsOf({ ...blankMarket(), kind: 'face cream', dispenser: 'propellant spray' });
    expect(words.has('face cream')).toBe(true);
    expect(words.has('propellant spray')).toBe(true);
    expect(limitKindsOf(blankMarket()).size).toBe(0);
  });

  it('is held against the European Union where no region is said, else against those that are', () => {
    expect(regionsOf(blankMarket())).toEqual(['EU']);
    expect(regionsOf({ ...blankMarket(), regions: ['US', 'Great Britain'] })).toEqual([
      'US',
      'Great Britain',
    ]);
    const asked = situationsOf(
      {
        use: 'leave-on',
        market: { ...blankMarket(), regions: ['EU', 'US'] },
        target: { ...blankTarget(), phLow: 5 },
      },
      '2026-11-28',
    );
    expect(asked.map(({ region, ph }) => [region, ph])).toEqual([
      ['EU', { low: 5, high: 5 }],
      ['US', { low: 5, high: 5 }],
    ]);
  });
});

describe('when a limit holds', () => {
  it('first comes, then holds, then is past, and never goes back', () => {
    const day = fc
      .integer({ min: 0, max: 3000 })
      .map((n) => new Date(Date.UTC(2024, 0, 1 + n)).toISOString().slice(0, 10));
    const ranks = ['coming', 'in force', 'past'];
    fc.assert(
      fc.property(
        fc.tuple(day, day).map((two) => two.sort()),
        fc.tuple(day, day).map((two) => two.sort()),
        ([from = '', until = ''], [one = '', later = '']) => {
          expect(ranks.indexOf(timeOf({ from, until }, one))).toBeLessThanOrEqual(
            ranks.indexOf(timeOf({ from, until }, later)),
          );
        },
      ),
      { numRuns: 100 },
    );
  });
});

describe('the law as a library held it', () => {
  const [a, b, c] = [limit({ percent: 1 }), limit({ percent: 2 }), limit({ percent: 3 })];
  const law = (...limits: Limit[]) => ({ limits, substances: [] });
  it('leaves out what came since, puts what was changed back, and what was removed too', () => {
    const was = { ...b, percent: 20 };
    const gone = limit({ percent: 4 });
    const then = lawAsItWas(law(a, b, c), { was: law(was, gone), since: [c.id] });
    expect(then.limits.map(({ id, percent }) => [id, percent])).toEqual([
      [a.id, 1],
      [b.id, 20],
      [gone.id, 4],
    ]);
  });
  it('is what it is now where nothing was otherwise', () => {
    expect(lawAsItWas(law(a, b), SAME_LAW)).toEqual(law(a, b));
  });
});

describe('a share against a limit', () => {
  it('passes by one ppm of the product, and not at the limit itself, however it was summed', () => {
    expect(passes(0.5, 0.5)).toBe(false);
    expect(passes(0.5001, 0.5)).toBe(true);
    expect(passes(0.1 + 0.2, 0.3)).toBe(false);
    expect(passes(0.3, 0.3, { strict: true })).toBe(true);
    expect(passes(0.2999, 0.3, { strict: true })).toBe(false);
    expect(passes(0, 0)).toBe(false);
    expect(passes(1e-6, 0)).toBe(true);
  });

  it('converted by molar masses is the limit to one part in a hundred thousand, and no further', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.001, max: 30, noNaN: true }),
        fc.double({ min: -3, max: 3, noNaN: true }),
        (most, times) => {
          fc.pre(Math.abs(Math.abs(times) - 1) > 0.01);
          const share = most * (1 + times * CONVERTED_TO_WITHIN);
          expect(passes(share, most, { converted: true })).toBe(times > 1);
          expect(passes(share, most, { converted: true, strict: true })).toBe(times > -1);
        },
      ),
      { numRuns: 100 },
    );
  });

  it('worked by hand: 0.59 % of sodium benzoate is 0.5 % as the acid, 0.5901 % is above', () => {
    const factor = 122.123 / 144.105;
    const of = (percent: number) => shareOfLimit([{ percent, factor }], 0.5);
    expect(of(0.59)).toMatchObject({ verdict: 'within' });
    expect(of(0.59).shareOfLimit).toBeCloseTo(100.0001, 3);
    expect(of(0.5901)).toMatchObject({ verdict: 'above' });
    expect(shareOfLimit([{ percent: 0.5000005, factor: 1 }], 0.5).verdict).toBe('above');
  });

  it('sums what it is given, in any order, and refuses what cannot be', () => {
    const some = [
      { percent: 0.2, factor: 1 },
      { percent: 0.3, factor: 0.5 },
    ];
    expect(shareOfLimit(some, 1).total).toBeCloseTo(0.35, 12);
    expect(shareOfLimit([...some].reverse(), 1).total).toBeCloseTo(0.35, 12);
    expect(shareOfLimit([], 1)).toEqual({ total: 0, shareOfLimit: 0, verdict: 'within' });
    expect(() => shareOfLimit(some, 0)).toThrow('The limit');
    expect(() => shareOfLimit([{ percent: -1, factor: 1 }], 1)).toThrow('A share');
    expect(() => shareOfLimit([{ percent: 1, factor: -1 }], 1)).toThrow('A factor');
  });
});
