import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { amountOf, contentsOf, type Dosed } from '@core/limits/contents';
import { blankLimit, limitContent, type LimitContent } from '@core/limits/limit';
import { passes, shareOfLimit } from '@core/limits/share-of-limit';
import { appliesTo, limitKindsOf, regionsOf, timeOf } from '@core/limits/situation';
import { substanceIndex } from '@core/substances/substance-index';
import { blankSubstance } from '@core/substances/substance';
import { blankMarket } from '@core/products/market';
import { make, nextId } from '../checks/build';
import { NEGATIVE, NOT_POSITIVE, refusesEach } from '../working/bounds';
import { judged, kept, situation } from './law';

const percent = fc.integer({ min: 1, max: 100_000 }).map((one) => one / 1000);
const limit = (parts: Partial<LimitContent> = {}) =>
  kept<LimitContent>({ ...blankLimit('Urea'), percent: 1, regions: ['EU'], source: 'invented', ...parts });

describe('a share against a limit', () => {
  it('the limit itself is allowed by “at most” and not by “less than”, however its sum was made', () => {
    fc.assert(
      fc.property(percent, fc.integer({ min: 1, max: 12 }), (most, count) => {
        const sum = Array.from({ length: count }, () => most / count).reduce((all, one) => all + one, 0);
        expect([passes(sum, most), passes(sum, most, { strict: true })]).toEqual([false, true]);
        expect([passes(sum * 1.000001, most), passes(sum * 0.999999, most, { strict: true })]).toEqual([
          true,
          false,
        ]);
      }),
    );
  });

  it('sums shares by their factors, in any order; twice as much is twice the share', () => {
    const part = fc.record({ percent, factor: fc.double({ min: 0, max: 3, noNaN: true }) });
    fc.assert(
      fc.property(fc.array(part, { maxLength: 8 }), percent, (parts, most) => {
        const one = shareOfLimit(parts, most);
        const twice = shareOfLimit(
          [...parts].reverse().map((each) => ({ ...each, percent: 2 * each.percent })),
          most,
        );
        expect(twice.shareOfLimit).toBeCloseTo(2 * one.shareOfLimit, 6);
        expect(one.verdict === 'above').toBe(one.shareOfLimit > 100 * (1 + 1e-9));
      }),
    );
    expect(shareOfLimit([], 1)).toEqual({ total: 0, shareOfLimit: 0, verdict: 'within' });
  });

  it.each([
    ['The limit', NOT_POSITIVE, (x: number) => shareOfLimit([], x)],
    ['A share', NEGATIVE, (x: number) => shareOfLimit([{ percent: x, factor: 1 }], 1)],
    ['A factor', NEGATIVE, (x: number) => shareOfLimit([{ percent: 1, factor: x }], 1)],
  ] as const)('%s, out of bounds', (...field) => refusesEach(field));
});

describe('for whom and when a limit holds', () => {
  it.each([
    [{}, '2026-07-31', 'in force'],
    [{ from: '2026-07-31' }, '2026-07-30', 'coming'],
    [{ from: '2026-07-31' }, '2026-07-31', 'in force'],
    [{ until: '2026-07-31' }, '2026-07-31', 'in force'],
    [{ until: '2026-07-31' }, '2026-08-01', 'past'],
    [{ from: '2026-01-01', until: '2026-07-31' }, '2025-12-31', 'coming'],
  ] as const)('%j on %s: %s', (days, day, time) => expect(timeOf(limit(days), day)).toBe(time));

  it.each([
    ['nothing said', {}, {}, {}, 'yes'],
    ['another region', { regions: ['US'] }, {}, {}, 'no'],
    ['its use', { use: 'leave-on' }, {}, {}, 'yes'],
    ['another use', { use: 'rinse-off' }, {}, {}, 'no'],
    ['its kind', { kinds: ['face cream'] }, {}, { kind: 'face cream' }, 'yes'],
    ['a trait of its kind', { kinds: ['face'] }, {}, { kind: 'face cream' }, 'yes'],
    ['another kind', { kinds: ['lip'] }, {}, { kind: 'face cream' }, 'no'],
    ['a kind, where none is said', { kinds: ['lip'] }, {}, {}, 'open'],
    ['a kind left out', { exceptKinds: ['face'] }, {}, { kind: 'face cream' }, 'no'],
    ['a kind left out, where none is said', { exceptKinds: ['face'] }, {}, {}, 'yes'],
    [
      'what is prohibited but for one kind, where none is said',
      { rule: 'prohibited', exceptKinds: ['face'] },
      {},
      {},
      'open',
    ],
    ['professionals, of a product for all', { hands: 'professional use' }, {}, {}, 'no'],
    [
      'professionals, of a product for them',
      { hands: 'professional use' },
      {},
      { users: ['professional use'] },
      'yes',
    ],
    [
      'the public, of a product for professionals',
      { hands: 'general public' },
      {},
      { users: ['professional use'] },
      'no',
    ],
    [
      'how it is dispensed',
      { kinds: ['pump spray'] },
      {},
      { kind: 'face cream', dispenser: 'pump spray' },
      'yes',
    ],
  ] as const)('%s', (_what, parts, at, market, applies) => {
    expect(appliesTo(limit(parts as Partial<LimitContent>), situation(at, market as object))).toBe(applies);
  });

  it('a formula that names no region is held against the European Union, and has no words', () => {
    expect(regionsOf(blankMarket())).toEqual(['EU']);
    expect(regionsOf({ ...blankMarket(), regions: ['US', 'EU'] })).toEqual(['US', 'EU']);
    expect([...limitKindsOf(blankMarket())]).toEqual([]);
  });
});

const urea = kept({ ...blankSubstance('Urea') });
const law = (parts: Partial<LimitContent> = {}) => ({ substances: [urea], limits: [limit(parts)] });
const cream = make('U', 'Urea');
const rank = ['within', 'may be above', 'above'] as const;

describe('verdicts', () => {
  it('never get better when more goes in, nor change when a line is split', () => {
    fc.assert(
      fc.property(percent, percent, (less, more) => {
        fc.pre(less + more <= 100);
        const at = (lines: number[]) =>
          judged(
            lines.map((each) => [cream, each]),
            situation(),
            law({ percent: 5 }),
          )[0];
        const [one, both] = [at([less]), at([less + more])];
        expect(rank.indexOf(both?.verdict as 'above')).toBeGreaterThanOrEqual(
          rank.indexOf(one?.verdict as 'above'),
        );
        const split = at([less, more]);
        expect([split?.verdict, split?.total.high.toFixed(3)]).toEqual([
          both?.verdict,
          both?.total.high.toFixed(3),
        ]);
      }),
    );
  });

  it.each([
    [0.4, 0.6, 'within'],
    [0.9, 1.1, 'may be above'],
    [1.1, 1.3, 'above'],
  ])('of a supplier’s range of %d to %d %% against 1 %%: %s', (low, high, verdict) => {
    const ranged = make('R', 'Urea', {
      composition: [{ inci: 'Urea', lowPpm: low * 10_000, highPpm: high * 10_000 }],
    });
    expect(judged([[ranged, 100]], situation(), law())[0]?.verdict).toBe(verdict);
  });

  it.each([
    [{ rule: 'range of the active', minPercent: 2, percent: 5 }, 1, 'below least'],
    [{ rule: 'range of the active', minPercent: 2, percent: 5 }, 2, 'within'],
    [{ rule: 'range of the active', minPercent: 2, percent: 5 }, 5, 'within'],
    [{ rule: 'range of the active', minPercent: 2, percent: 5 }, 5.1, 'above'],
    [{ rule: 'prohibited', percent: null }, 0.0001, 'above'],
    [{ rule: 'notice', percent: null }, 50, 'notice'],
    [{ rule: 'less than' }, 1, 'above'],
    [{ rule: 'at most' }, 1, 'within'],
    [{ rule: 'at most', percent: null }, 1, 'cannot tell'],
  ] as const)('%j at %d %%: %s', (parts, share, verdict) => {
    expect(judged([[cream, share]], situation(), law(parts))[0]?.verdict).toBe(verdict);
  });

  it.each([
    [null, null, { low: 5, high: 6 }, null],
    [4, 6, null, 'unknown'],
    [4, 6, { low: 4, high: 6 }, 'within'],
    [4, 6, { low: 3.9, high: 6 }, 'outside'],
    [4, null, { low: 4, high: 14 }, 'within'],
    [null, 6, { low: 0, high: 6.1 }, 'outside'],
  ])('pH %s to %s, product %j: %s', (phLow, phHigh, ph, word) => {
    expect(judged([[cream, 1]], situation({ ph }), law({ phLow, phHigh }))[0]?.ph).toBe(word);
  });

  it('a phrase of the label stands from beyond its share, and where none is said at once', () => {
    const phrase = (share: number, phraseAbove: number | null) =>
      judged([[cream, share]], situation(), law({ labelPhrase: 'Contains urea.', phraseAbove }))[0]?.phrase;
    expect([phrase(0.5, 0.5), phrase(0.51, 0.5), phrase(0.01, null)]).toEqual([
      '',
      'Contains urea.',
      'Contains urea.',
    ]);
  });
});

describe('what a formula holds', () => {
  const index = substanceIndex([urea, kept(blankSubstance('Glycerin'))]);
  const dose = (inci: string, ppm: number, allergens: { inci: string; ppm: number }[] = []): Dosed => ({
    lineId: nextId(),
    material: make('M', inci, { allergens }),
    ppm,
  });

  it('of a name that lists several: each from none to all, halves in the middle', () => {
    const { present } = contentsOf([dose('Urea (and) Glycerin', 100_000)], index);
    for (const one of present.values())
      expect(amountOf(one.parts)).toEqual({ low: 0, used: 50_000, high: 100_000 });
    expect(present.size).toBe(2);
  });

  it('an allergen declared besides is part of what the names say, never more of it', () => {
    const inside = contentsOf([dose('Urea', 1_000, [{ inci: 'Urea', ppm: 200_000 }])], index);
    expect(amountOf(inside.present.get(urea.id)?.parts ?? []).high).toBe(1_000);
    const beside = contentsOf([dose('Glycerin', 1_000, [{ inci: 'Urea', ppm: 200_000 }])], index);
    expect(amountOf(beside.present.get(urea.id)?.parts ?? []).high).toBe(200);
  });

  it('names what the table does not know once, with all that brings it', () => {
    const { freeText, present } = contentsOf(
      [dose('Mystery Oil', 5_000), dose('MYSTERY OIL', 3_000), dose('Urea', 0)],
      index,
    );
    expect(present.size).toBe(0);
    expect(freeText).toHaveLength(1);
    expect(freeText[0]).toMatchObject({ high: 8_000, couldMean: [] });
    expect(freeText[0]?.lineIds).toHaveLength(2);
  });
});

describe('what a limit may be', () => {
  const said = (parts: Partial<LimitContent>): string =>
    limitContent.safeParse({ ...blankLimit('Urea'), percent: 1, regions: ['EU'], source: 's', ...parts })
      .error?.issues[0]?.message ?? '';
  it.each([
    [{}, ''],
    [{ percent: null }, 'Give the limit in per cent of the product.'],
    [{ percent: 100.1 }, 'A limit cannot be above 100 %.'],
    [{ percent: -0.1 }, 'A limit cannot be negative.'],
    [
      { rule: 'range of the active', percent: null },
      'Give the least or the most of the active, in per cent.',
    ],
    [{ minPercent: 2 }, 'The least is above the most.'],
    [{ phLow: 6, phHigh: 5 }, 'The lower pH is above the upper one.'],
    [{ phLow: 14.1 }, 'pH runs from 0 to 14.'],
    [{ phHigh: -1 }, 'pH runs from 0 to 14.'],
    [{ phLow: 5, phHigh: -1 }, 'pH runs from 0 to 14.'],
    [{ rule: 'notice', percent: null }, 'A notice needs the words of the label, or the condition.'],
    [{ from: '2027-01-01', until: '2026-12-31' }, 'It ends before it begins.'],
    [{ from: '2026-02-30' }, 'Write the day as year-month-day, such as 2026-07-31.'],
    [{ regions: [] }, 'Say in which region it holds.'],
  ] as [Partial<LimitContent>, string][])('%j: %s', (parts, message) => expect(said(parts)).toBe(message));

  it('is told one fault of one end: an end that cannot be is not also called crossed', () => {
    for (const parts of [{ phHigh: -1 }, { phLow: 5, phHigh: -1 }, { percent: -0.1 }, { phLow: 14.1 }])
      expect(
        limitContent.safeParse({ ...blankLimit('Urea'), percent: 1, regions: ['EU'], source: 's', ...parts })
          .error?.issues,
      ).toHaveLength(1);
  });
});
