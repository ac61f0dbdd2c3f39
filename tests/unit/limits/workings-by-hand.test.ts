import fc from 'fast-check';
import { createListIndex } from '@core/lists/list-index';
import { listQuery } from '@core/lists/query';
import { amountOf, contentsOf } from '@core/limits/contents';
import { EXAMPLE } from '@core/limits/fields';
import { subjectsOf } from '@core/limits/judge';
import { factorInSum, isConverted, shareOfMost } from '@core/limits/judged';
import { lawChanges } from '@core/limits/law-changes';
import { blankLimit, limitContent, type LimitContent } from '@core/limits/limit';
import { limitKey } from '@core/limits/limit-key';
import { LIMITS_LIST, type LimitEntry } from '@core/limits/list';
import { totalWords } from '@core/limits/words';
import { workingOfLimit } from '@core/limits/working';
import { factorOf } from '@core/substances/counted-as';
import { blankSubstance } from '@core/substances/substance';
import { substanceIndex } from '@core/substances/substance-index';
import { describe, expect, it } from 'vitest';
import { make, nextId } from '../checks/build';
import { law, limit, SUBSTANCES } from './acids';
import { EXAMPLES, judged, kept, situation, type Line } from './law';

const acid = make('Acid', 'Benzoic Acid');
const salt = make('Salt', 'Sodium Benzoate');
const sorbic = make('Sorbic', 'Sorbic Acid');
const group = { of: 'group', expressedAs: 'Benzoic Acid' } as const;
const first = (rows: Line[], ...limits: ReturnType<typeof limit>[]) =>
  judged(rows, situation(), law(...limits))[0]!;

describe('the working of a limit', () => {
  it('of one substance: what each line brings, and the share of the limit', () => {
    const { steps } = workingOfLimit(
      first(
        [
          [acid, 0.3],
          [acid, 0.1],
        ],
        limit('Benzoic Acid', { percent: 0.5 }),
      ),
    );
    expect(steps.map(({ shows, unit }) => [shows, unit])).toEqual([
      ['0.3 (Acid) + 0.1 (Acid)', '% of the product'],
      ['100 × 0.4 / 0.5', '% of the limit'],
    ]);
    expect(steps.at(-1)?.result).toBeCloseTo(80, 9);
  });

  it('of an acid and its salt: the salt converted, both summed, held against the limit', () => {
    const found = first(
      [
        [acid, 0.2],
        [salt, 0.3],
      ],
      limit('Acids', { ...group, counting: 'together', percent: 0.5 }),
    );
    const { steps, sources } = workingOfLimit(found);
    // 0.3 × 122.123 / 144.105 = 0.254238; with 0.2 it is 0.454238, 90.8475 % of 0.5.
    expect(steps.map(({ shows }) => shows)).toEqual([
      '0.2 (Acid)',
      '0.3 (Salt)',
      '0.3 × 122.123 / 144.105',
      '0.2 + 0.254238',
      '100 × 0.454238 / 0.5',
    ]);
    expect(steps.at(-1)?.result).toBeCloseTo(90.8475, 3);
    expect(sources).toHaveLength(2);
    expect(shareOfMost(found)).toBeCloseTo(90.8475, 3);
  });

  it('by shares of limits: each its own, and their sum is the last step', () => {
    const found = first(
      [
        [acid, 0.25],
        [sorbic, 0.3],
      ],
      limit('Acids', { of: 'group', counting: 'by shares of their limits', percent: 1 }),
      limit('Benzoic Acid', { percent: 0.5 }),
      limit('Sorbic Acid', { percent: 0.6 }),
    );
    const { steps } = workingOfLimit(found);
    // 0.25 of 0.5 and 0.3 of 0.6: two halves.
    expect(
      steps.filter(({ unit }) => unit === '% of its limit').map(({ result }) => Math.round(result)),
    ).toEqual([50, 50]);
    expect(steps.at(-1)).toMatchObject({ shows: '50 + 50', unit: '% of the limits' });
    expect(totalWords(found)).toBe('100\u00a0% of the limit, their shares summed');
    expect(found.verdict).toBe('within');
  });

  it('of a supplier’s range goes to its upper end, and says so', () => {
    const ranged = make('Ranged', 'Benzoic Acid', {
      composition: [{ inci: 'Benzoic Acid', lowPpm: 200_000, highPpm: 400_000 }],
    });
    const { steps, cautions } = workingOfLimit(first([[ranged, 1]], limit('Benzoic Acid', { percent: 0.5 })));
    expect(steps[0]?.shows).toBe('0.4 (Ranged)');
    expect(cautions).toEqual([
      'Suppliers’ ranges are compared with the limit at their upper end, the worst case.',
    ]);
  });

  it('of what is not allowed at all has no share to show', () => {
    const found = first([[acid, 0.1]], limit('Benzoic Acid', { rule: 'prohibited', percent: null }));
    expect(shareOfMost(found)).toBeNull();
    expect(workingOfLimit(found).steps.map(({ unit }) => unit)).toEqual(['% of the product']);
  });

  it('factors go into a sum as they convert, or as a share of the own limit in per cent', () => {
    const factor = { value: 0.8, shows: '', unknown: null };
    expect(factorInSum({ factor, ownPercent: null })).toBe(0.8);
    expect(factorInSum({ factor, ownPercent: 0.4 })).toBeCloseTo(200, 9);
    expect(factorInSum({ factor, ownPercent: 0 })).toBe(0);
    expect(isConverted([{ factor }])).toBe(true);
    expect(isConverted([{ factor: { ...factor, value: 1 } }])).toBe(false);
    expect(isConverted([])).toBe(false);
  });
});

describe('the example limits', () => {
  const index = substanceIndex(EXAMPLES.substances);

  it('count every substance by a known factor: none as it is for want of a figure', () => {
    const unknown = EXAMPLES.limits
      .filter(({ expressedAs }) => expressedAs !== '')
      .flatMap((one) =>
        (subjectsOf(one, index) ?? []).flatMap(
          (subject) => factorOf(subject, index.find(one.expressedAs), index).unknown ?? [],
        ),
      );
    // Quats of mixed chains have no one molar mass.
    expect(unknown.filter((why) => !/Benzalkonium/.test(why))).toEqual([]);
  });

  it('are each told apart by what they ask, and marked as examples with their text', () => {
    const keys = EXAMPLES.limits.map(limitKey);
    expect(new Set(keys).size).toBe(keys.length);
    for (const one of EXAMPLES.limits) {
      expect(one.checked).toBe(EXAMPLE);
      expect(one.source, one.subject).toMatch(/Regulation|United States|panel|committee/);
    }
  });

  it('hold no share that no product has, and end no earlier on the shelf than in the market', () => {
    for (const { percent, minPercent, from, fromOnShelf, subject } of EXAMPLES.limits) {
      expect(percent ?? 1, subject).toBeGreaterThan(0);
      expect(percent ?? 1, subject).toBeLessThanOrEqual(30);
      expect(minPercent ?? 0, subject).toBeLessThan(percent ?? 1);
      if (fromOnShelf !== '') expect(fromOnShelf >= from, subject).toBe(true);
    }
  });
});

describe('what tells one limit from another', () => {
  const base: LimitContent = { ...blankLimit('Urea'), percent: 5, regions: ['EU'], source: 's' };
  it.each([
    [{ percent: 6 }],
    [{ rule: 'less than' }],
    [{ use: 'rinse-off' }],
    [{ kinds: ['hair'] }],
    [{ exceptKinds: ['hair'] }],
    [{ hands: 'professional use' }],
    [{ purpose: 'preservative' }],
    [{ nanoForm: 'nano only' }],
    [{ from: '2026-01-01' }],
    [{ expressedAs: 'Nitrogen' }],
    [{ counting: 'together' }],
    [{ source: 'another' }],
  ] as [Partial<LimitContent>][])('%j is another', (parts) => {
    expect(limitKey({ ...base, ...parts })).not.toBe(limitKey(base));
  });

  it.each([
    [{ notes: 'seen' }],
    [{ checked: 'checked' }],
    [{ subject: 'UREA' }],
    [{ condition: 'as the text has it' }],
  ] as [Partial<LimitContent>][])('%j is the same', (parts) => {
    expect(limitKey({ ...base, ...parts })).toBe(limitKey(base));
  });
});

describe('what may be entered of a limit', () => {
  const said = (parts: Partial<LimitContent>): string[] =>
    limitContent
      .safeParse({ ...blankLimit('Urea'), percent: 5, regions: ['EU'], source: 's', ...parts })
      .error?.issues.map(({ message }) => message) ?? [];

  it.each([
    [{ subject: ' ' }, ['Give the substance or group.']],
    [{ source: '' }, ['Give the text that it comes from.']],
    [{ rule: 'less than', percent: null }, ['Give the limit in per cent of the product.']],
    [{ phLow: 3, phHigh: 14.1 }, ['pH runs from 0 to 14.']],
    [{ phraseAbove: 101 }, ['A limit cannot be above 100 %.']],
    // Both ends of a pH, or a day, may be the same.
    [{ phLow: 5, phHigh: 5 }, []],
    [{ from: '2026-07-31', until: '2026-07-31' }, []],
    [{ rule: 'range of the active', minPercent: 2, percent: null }, []],
    [{ rule: 'prohibited', percent: null }, []],
    [{ rule: 'notice', percent: null, condition: 'Measure it.' }, []],
    [{ percent: 100 }, []],
  ] as [Partial<LimitContent>, string[]][])('%j: %j', (parts, messages) =>
    expect(said(parts)).toEqual(messages),
  );
});

describe('what a formula holds, by hand', () => {
  const zinc = kept(blankSubstance('Zinc Oxide'));
  const index = substanceIndex([...SUBSTANCES, zinc]);
  const of = (lines: [ReturnType<typeof make>, number][]) =>
    contentsOf(
      lines.map(([material, ppm]) => ({ lineId: nextId(), material, ppm })),
      index,
    );

  it('sums a blend and a pure line: 30 % of 2 % and 0.4 % are 1 %', () => {
    const blend = make('Blend', 'Aqua', {
      composition: [
        { inci: 'Water', lowPpm: 700_000, highPpm: 700_000 },
        { inci: 'Benzoic Acid', lowPpm: 300_000, highPpm: 300_000 },
      ],
    });
    const { present, freeText } = of([
      [blend, 20_000],
      [acid, 4_000],
    ]);
    const byName = [...present.values()].map(({ substance, parts }) => [
      substance.name,
      amountOf(parts).high,
    ]);
    expect(byName).toEqual([
      ['Aqua', 14_000],
      ['Benzoic Acid', 10_000],
    ]);
    expect(freeText).toEqual([]);
  });

  it('keeps the nano form apart within a substance, and sums it with the other', () => {
    const both = make('Both', 'Zinc Oxide', {
      composition: [
        { inci: 'Zinc Oxide', lowPpm: 600_000, highPpm: 600_000 },
        { inci: 'Zinc Oxide (nano)', lowPpm: 400_000, highPpm: 400_000 },
      ],
    });
    const parts = of([[both, 100_000]]).present.get(zinc.id)?.parts ?? [];
    expect(parts.map(({ nano, high }) => [nano, high])).toEqual([
      [false, 60_000],
      [true, 40_000],
    ]);
    expect(amountOf(parts).high).toBe(100_000);
  });

  it('is the same for a formula split over lines, and nothing for a line of nothing', () => {
    fc.assert(
      fc.property(fc.array(fc.nat(50_000), { minLength: 1, maxLength: 6 }), (ppms) => {
        const whole = ppms.reduce((sum, ppm) => sum + ppm, 0);
        const { present } = of(ppms.map((ppm) => [acid, ppm]));
        expect(present.size).toBe(whole > 0 ? 1 : 0);
        for (const { parts } of present.values()) expect(amountOf(parts).used).toBeCloseTo(whole, 6);
      }),
      { numRuns: 30 },
    );
    expect(amountOf([])).toEqual({ low: 0, used: 0, high: 0 });
  });
});

describe('what changed in the law since', () => {
  it('tells a substance whose molar mass or group changed, and is silent of one that the formula lacks', () => {
    const [one, other] = SUBSTANCES as [(typeof SUBSTANCES)[0], (typeof SUBSTANCES)[0]];
    const changed = { ...one, formula: '', molarMass: 122 };
    const laws = {
      then: { substances: [one, other], limits: [] },
      now: { substances: [changed, { ...other, formula: 'C7H5KO2' }], limits: [] },
    };
    const held = contentsOf(
      [{ lineId: 'a', material: acid, ppm: 1_000 }],
      substanceIndex(laws.now.substances),
    );
    const found = lawChanges(laws, [held], 'en-GB');
    expect(found.map(({ kind, name, happened }) => [kind, name, happened])).toEqual([
      ['substance', 'Benzoic Acid', 'changed'],
    ]);
    expect(found[0]?.fields.map(({ key }) => key).sort()).toEqual(['formula', 'molarMass']);
    expect(lawChanges({ then: laws.now, now: laws.now }, [held], 'en-GB')).toEqual([]);
  });
});

describe('the list of limits', () => {
  const list = createListIndex(LIMITS_LIST, EXAMPLES.limits as readonly LimitEntry[]);
  const asked = (text: string, chosen: Record<string, string[]> = {}) =>
    list.search(listQuery(LIMITS_LIST, { text, chosen, limit: 500 })).rows;

  it('finds by subject, by what it is counted as and by its text, and filters by region and rule', () => {
    expect(asked('kojic').every(({ subject }) => subject === 'Kojic Acid')).toBe(true);
    expect(asked('retinol').map(({ subject }) => subject)).toContain('Retinol and its esters');
    expect(asked('2018/35').map(({ subject }) => subject)).toEqual(['D4 and D5']);
    expect(asked('', { regions: ['US'] }).every(({ regions }) => regions.includes('US'))).toBe(true);
    const banned = asked('', { rule: ['prohibited'], regions: ['Great Britain'] });
    expect(banned.map(({ subject }) => subject)).not.toContain('4-Methylbenzylidene Camphor');
    expect(banned.every(({ rule }) => rule === 'prohibited')).toBe(true);
  });
});
