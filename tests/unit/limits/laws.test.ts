import fc from 'fast-check';
import { amountOf, contentsOf } from '@core/limits/contents';
import { dosedLines, lawOfFormula } from '@core/limits/in-formula';
import { shareOfMost, type Judged } from '@core/limits/judged';
import type { Law } from '@core/limits/law';
import { blankMarket } from '@core/products/market';
import { REGIONS } from '@core/products/product-kinds';
import { substanceIndex } from '@core/substances/substance-index';
import { describe, expect, it } from 'vitest';
import { content, make, phase } from '../checks/build';
import { law, limit, SUBSTANCES } from './acids';
import { judged, situation, type Line } from './law';

const NAMES = ['Benzoic Acid', 'Sodium Benzoate', 'Sorbic Acid', 'Aqua'];

const share = fc.integer({ min: 0, max: 200 }).map((hundredths) => hundredths / 100);
/** A material of one or two of the names, each as a supplier's range. */
const ranged = fc
  .uniqueArray(
    fc.tuple(
      fc.constantFrom(...NAMES),
      fc.integer({ min: 0, max: 500_000 }),
      fc.integer({ min: 0, max: 500_000 }),
    ),
    { minLength: 1, maxLength: 2, selector: ([name]) => name },
  )
  .map((parts) =>
    make('Ranged', NAMES, {
      composition: parts.map(([inci, a, b]) => ({ inci, lowPpm: Math.min(a, b), highPpm: Math.max(a, b) })),
    }),
  );
const lines = fc.array(fc.tuple(ranged, share), { minLength: 1, maxLength: 5 });

const LAW = law(
  limit('Benzoic Acid', { percent: 0.5 }),
  limit('Sorbic Acid', { percent: 0.6, rule: 'less than' }),
  limit('Acids', { of: 'group', counting: 'together', expressedAs: 'Benzoic Acid', percent: 1 }),
  limit('Acids', { of: 'group', counting: 'by shares of their limits', percent: 0.8 }),
  limit('Acids', { of: 'group', percent: 0.7 }),
  limit('Aqua', { rule: 'range of the active', minPercent: 0.1, percent: 2 }),
);
const rank = ['within', 'below least', 'may be above', 'above'];
/** What was judged, in an order of its own: the limit with what it counted, the totals and the verdict. */
const told = (found: readonly Judged[]): string[] =>
  found
    .map(({ limit: { id }, counted, total, verdict }) =>
      [
        ...[id, counted.map(({ substance }) => substance.name).sort()],
        ...[total.low, total.used, total.high].map((one) => one.toFixed(9)),
        verdict,
      ].join(' '),
    )
    .sort();

describe('limits held against a formula', () => {
  it('do not hang on the order of lines, of substances or of limits', () => {
    fc.assert(
      fc.property(lines, fc.boolean(), (rows, both) => {
        const turned: Law = {
          substances: both ? [...SUBSTANCES].reverse() : SUBSTANCES,
          limits: [...LAW.limits].reverse(),
        };
        expect(told(judged([...rows].reverse(), situation(), turned))).toEqual(
          told(judged(rows, situation(), LAW)),
        );
      }),
    );
  });

  it('grow with the formula: twice the shares are twice the total, and no verdict gets better', () => {
    fc.assert(
      fc.property(lines, (rows) => {
        // To the ppm, as shares are kept.
        const double = rows.map(([material, each]): Line => [material, 2 * each]);
        const [one, two] = [judged(rows, situation(), LAW), judged(double, situation(), LAW)];
        expect(two.map((each) => each.limit.id)).toEqual(one.map((each) => each.limit.id));
        two.forEach((each, at) => {
          const before = one[at]!;
          expect(each.total.high).toBeCloseTo(2 * before.total.high, 9);
          expect(each.total.low).toBeCloseTo(2 * before.total.low, 9);
          if (each.limit.rule !== 'range of the active')
            expect(rank.indexOf(each.verdict)).toBeGreaterThanOrEqual(rank.indexOf(before.verdict));
        });
      }),
    );
  });

  it('are doubted more the wider a supplier’s range is; what is certain stays certain within it', () => {
    fc.assert(
      fc.property(lines, fc.integer({ min: 0, max: 100 }), (rows, part) => {
        const pinned = rows.map(([material, each]): Line => [
          make('Exact', NAMES, {
            composition: material.composition.map(({ inci, lowPpm, highPpm }) => {
              const exact = Math.round(lowPpm + ((highPpm - lowPpm) * part) / 100);
              return { inci, lowPpm: exact, highPpm: exact };
            }),
          }),
          each,
        ]);
        const wide = judged(rows, situation(), LAW);
        for (const one of judged(pinned, situation(), LAW)) {
          const same = (other: Judged): boolean =>
            other.limit.id === one.limit.id &&
            (one.limit.counting !== 'each by itself' ||
              other.counted[0]?.substance.id === one.counted[0]?.substance.id);
          const around = wide.find(same)!;
          expect(one.total.high).toBeLessThanOrEqual(around.total.high + 1e-6);
          expect(one.total.low).toBeGreaterThanOrEqual(around.total.low - 1e-6);
          if (around.verdict === 'within' && one.limit.rule !== 'range of the active')
            expect(one.verdict).toBe('within');
          if (around.verdict === 'above') expect(one.verdict).toBe('above');
        }
      }),
    );
  });

  it('sum shares of limits as one would by hand', () => {
    const own = fc.integer({ min: 1, max: 300 }).map((hundredths) => hundredths / 100);
    fc.assert(
      fc.property(share, share, own, fc.option(own), own, (a, b, ownA, ownB, sum) => {
        const limits = [
          limit('Acids', { of: 'group', counting: 'by shares of their limits', percent: sum }),
          limit('Benzoic Acid', { percent: ownA }),
          ...(ownB === null ? [] : [limit('Sorbic Acid', { percent: ownB })]),
        ];
        const rows: Line[] = [
          [make('A', 'Benzoic Acid'), a],
          [make('B', 'Sorbic Acid'), b],
        ];
        const found = judged(rows, situation(), law(...limits)).find(
          (one) => one.limit.counting === 'by shares of their limits',
        );
        // A substance without a limit of its own is held to the sum's.
        const expected = (100 * a) / ownA + (100 * b) / (ownB ?? sum);
        fc.pre(a + b > 0);
        expect(found!.total.high).toBeCloseTo(expected, 6);
        expect(shareOfMost(found!)).toBeCloseTo(expected, 6);
        if (Math.abs(expected - 100) > 1e-6) expect(found!.verdict).toBe(expected > 100 ? 'above' : 'within');
      }),
    );
  });

  it('are the same for a salt and for the acid that it holds, mole by mole', () => {
    // IUPAC abridged weights: C 12.011, H 1.008, O 15.999, Na 22.990.
    const acid = 7 * 12.011 + 6 * 1.008 + 2 * 15.999;
    const salt = 7 * 12.011 + 5 * 1.008 + 22.99 + 2 * 15.999;
    fc.assert(
      fc.property(share, (percent) => {
        const asAcid = limit('Acids', { of: 'group', counting: 'together', expressedAs: 'Benzoic Acid' });
        const [one] = judged([[make('S', 'Sodium Benzoate'), percent]], situation(), law(asAcid));
        fc.pre(percent > 0);
        expect(one!.total.high).toBeCloseTo((percent * acid) / salt, 5);
        expect(one!.cautions).toEqual([]);
      }),
    );
  });

  it('hold each region by itself: of several, all of them in turn', () => {
    const some = fc.uniqueArray(fc.constantFrom(...REGIONS), { maxLength: 4 });
    const limits = REGIONS.map((region, at) =>
      limit('Benzoic Acid', { regions: [region], percent: 0.1 * (at + 1) }),
    );
    fc.assert(
      fc.property(some, share, (regions, percent) => {
        fc.pre(percent > 0);
        const material = make('A', 'Benzoic Acid');
        const formula = content([phase([[material, percent]])], { market: { ...blankMarket(), regions } });
        const found = lawOfFormula(formula, () => material, law(...limits), '2026-11-28').judged;
        const asked = regions.length === 0 ? ['EU'] : regions;
        expect(found.map(({ region }) => region)).toEqual(asked);
        expect(found.flatMap((one) => one.limit.regions)).toEqual(asked);
      }),
    );
  });

  it('hold from the first to the last of their days', () => {
    const day = fc.integer({ min: 1, max: 28 }).map((one) => `2026-02-${String(one).padStart(2, '0')}`);
    fc.assert(
      fc.property(fc.option(day), fc.option(day), day, (from, until, onDay) => {
        fc.pre(from === null || until === null || from <= until);
        const one = limit('Benzoic Acid', { from: from ?? '', until: until ?? '' });
        const found = judged([[make('A', 'Benzoic Acid'), 1]], situation({ onDay }), law(one));
        const over = until !== null && Number(onDay.slice(-2)) > Number(until.slice(-2));
        const begun = from === null || Number(onDay.slice(-2)) >= Number(from.slice(-2));
        expect(found.map(({ time }) => time)).toEqual(over ? [] : [begun ? 'in force' : 'coming']);
      }),
    );
  });
});

describe('what a formula holds', () => {
  it('is never more of a substance than the line itself, however many of its names a supplier lists', () => {
    const names = fc.uniqueArray(
      fc.tuple(
        fc.constantFrom('Aqua', 'Water', 'Eau', 'Sorbic Acid'),
        fc.integer({ min: 0, max: 1_000_000 }),
      ),
      { minLength: 1, maxLength: 4, selector: ([name]) => name },
    );
    fc.assert(
      fc.property(names, fc.integer({ min: 1, max: 1_000_000 }), (parts, ppm) => {
        const material = make('Overlapping', 'Aqua', {
          composition: parts.map(([inci, highPpm]) => ({ inci, lowPpm: 0, highPpm })),
        });
        const dosed = [{ lineId: 'a', material, ppm }];
        for (const one of contentsOf(dosed, substanceIndex(SUBSTANCES)).present.values())
          expect(amountOf(one.parts).high).toBeLessThanOrEqual(ppm);
      }),
    );
  });

  it('leaves lines out whose material is gone, and counts none below zero', () => {
    const [one, gone] = [make('A', 'Benzoic Acid'), make('B', 'Sorbic Acid')];
    const formula = content([
      phase([
        [one, 2],
        [gone, 1],
      ]),
    ]);
    expect(dosedLines(formula, (id) => (id === one.id ? one : undefined))).toMatchObject([{ ppm: 20_000 }]);
    const over = content([phase([[one, 120]])]);
    over.phases[0]!.lines.push({ id: gone.id, materialId: gone.id, ppm: 0, toHundred: true, note: '' });
    expect(
      dosedLines(over, (id) => [one, gone].find((each) => each.id === id)).map(({ ppm }) => ppm),
    ).toEqual([1_200_000, 0]);
  });
});
