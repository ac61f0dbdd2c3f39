import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { largestRemainder } from '@core/quantities/largest-remainder';
import { hlbSeries, hlbSteps, levelSeries, type HlbSeriesInput } from '@core/trials/plan-trials';
import { chosenEmulsifiers, trialSeries, type Trial } from '@core/trials/trial-series';
import { Problem } from '@core/problems/problem';
import { nextId } from '../checks/build';

const [high, low, oil, water] = [nextId(), nextId(), nextId(), nextId()] as const;
const input = (parts: Partial<HlbSeriesInput> = {}): HlbSeriesInput => ({
  targetHlb: 10,
  low: { materialId: low, hlb: 4.9 },
  high: { materialId: high, hlb: 15.5 },
  levelPpm: 50_000,
  others: [
    { materialId: oil, share: 20 },
    { materialId: water, share: 75 },
  ],
  batchMg: 100_000,
  readabilityMg: 10,
  ...parts,
});
const sum = (trial: Trial | undefined, key: 'mg' | 'ppm') =>
  (trial?.lines ?? []).reduce((total, line) => total + line[key], 0);

describe('a series round an HLB', () => {
  it('runs from one below to one above in halves', () => {
    expect(hlbSeries(input()).map((trial) => trial.hlb)).toEqual([9, 9.5, 10, 10.5, 11]);
    expect(hlbSeries(input())[0]?.label).toBe('HLB 9');
  });
  it('weighs the pair by the two-component formula', () => {
    // (10 − 4.9)/(15.5 − 4.9) = 48.113 % of 5 g is 2.4057 g: on a balance of 10 mg, 2.41 g of the high one.
    const middle = hlbSeries(input())[2];
    expect(middle?.lines.find((line) => line.materialId === high)?.mg).toBe(2410);
    expect(middle?.lines.find((line) => line.materialId === low)?.mg).toBe(2590);
  });
  it('adds up to the batch and to 100 %, whatever the numbers', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 900_000 }),
        fc.integer({ min: 1, max: 5000 }),
        fc.constantFrom(1, 10, 100),
        fc.array(fc.integer({ min: 1, max: 1000 }), { minLength: 1, maxLength: 12 }),
        fc.double({ min: 5, max: 15, noNaN: true }),
        (levelPpm, steps, readabilityMg, shares, targetHlb) => {
          const batchMg = steps * readabilityMg;
          const others = shares.map((share) => ({ materialId: oil, share }));
          for (const trial of hlbSeries(input({ levelPpm, batchMg, readabilityMg, others, targetHlb }))) {
            expect(sum(trial, 'mg')).toBe(batchMg);
            expect(sum(trial, 'ppm')).toBe(1_000_000);
            expect(trial.lines.every((line) => line.mg % readabilityMg === 0)).toBe(true);
          }
        },
      ),
    );
  });
  it('leaves out what the pair cannot reach', () => {
    expect(hlbSeries(input({ targetHlb: 15 })).map((trial) => trial.hlb)).toEqual([14, 14.5, 15, 15.5]);
    expect(
      hlbSeries(input({ targetHlb: 15 }))
        .at(-1)
        ?.lines.some((line) => line.materialId === low),
    ).toBe(false);
  });
  it.each<[string, Partial<HlbSeriesInput>]>([
    ['a target out of reach', { targetHlb: 17 }],
    ['two of one HLB', { low: { materialId: low, hlb: 15.5 } }],
    ['no batch', { batchMg: 0 }],
    ['a batch finer than the balance', { batchMg: 105 }],
    ['nothing to emulsify', { others: [] }],
    ['a level of nothing', { levelPpm: 0 }],
    ['a level of everything', { levelPpm: 1_000_000 }],
    ['no number', { targetHlb: NaN }],
  ])('refuses %s', (_, parts) => {
    expect(() => hlbSeries(input(parts))).toThrow(Problem);
  });
});

describe('a series of levels', () => {
  const { others, batchMg, readabilityMg } = input();
  const emulsifiers = [
    { materialId: high, share: 3, hlb: 15 },
    { materialId: low, share: 1, hlb: 5 },
  ];
  it('keeps the ratio and goes through the levels in order', () => {
    const trials = levelSeries({
      others,
      batchMg,
      readabilityMg,
      emulsifiers,
      levelsPpm: [60_000, 40_000, 40_000],
    });
    expect(trials.map((trial) => trial.label)).toEqual(['4 %', '6 %']);
    expect(trials[0]?.hlb).toBeCloseTo(12.5, 9);
    expect(trials[0]?.lines.find((line) => line.materialId === high)?.mg).toBe(3000);
  });
  it('claims no mean where one emulsifier has none', () => {
    const ionic = [{ materialId: high, share: 1, hlb: null }];
    expect(
      levelSeries({ others, batchMg, readabilityMg, emulsifiers: ionic, levelsPpm: [30_000] })[0]?.hlb,
    ).toBeNull();
  });
  it('refuses no levels and no emulsifiers', () => {
    expect(() => levelSeries({ others, batchMg, readabilityMg, emulsifiers, levelsPpm: [] })).toThrow(
      Problem,
    );
    expect(() => levelSeries({ others, batchMg, readabilityMg, emulsifiers: [], levelsPpm: [1] })).toThrow(
      Problem,
    );
  });
});

describe('a saved series', () => {
  const series = {
    id: nextId(),
    title: 'Cream, round HLB 10',
    createdAt: '2026-01-01T00:00:00.000Z',
    formulaId: null,
    targetHlb: 10,
    batchMg: 100_000,
    readabilityMg: 10,
    trials: hlbSeries(input()),
    chosen: 3,
    notes: '',
  };
  it('passes its schema, and gives the chosen trial’s emulsifiers for a formula', () => {
    const saved = trialSeries.parse(series);
    const lines = chosenEmulsifiers(saved);
    expect(lines.map((line) => line.materialId)).toEqual([high, low]);
    expect(lines.reduce((total, line) => total + line.ppm, 0)).toBe(50_000);
    expect(chosenEmulsifiers({ ...saved, chosen: null })).toEqual([]);
  });
  it('refuses a choice that is not in it', () => {
    expect(trialSeries.safeParse({ ...series, chosen: 5 }).success).toBe(false);
  });
});

describe('HLBs of a series', () => {
  it('counts both ends of the pair’s reach, whatever binary makes of them', () => {
    expect(hlbSteps(8.2, 7.2, 15)).toEqual([7.2, 7.7, 8.2, 8.7, 9.2]);
    for (let tenths = 20; tenths <= 180; tenths += 1) {
      expect(hlbSteps(tenths / 10, (tenths - 10) / 10, (tenths + 10) / 10)).toHaveLength(5);
      expect(hlbSteps(tenths / 10, (tenths - 5) / 10, (tenths + 5) / 10)).toHaveLength(3);
    }
  });

  it('refuses an HLB that is no number', () => {
    expect(() => hlbSteps(Number.NaN, 5, 15)).toThrow('not a number');
    expect(() => hlbSteps(8, 5, Infinity)).toThrow('not a number');
  });
});

describe('dividing a total', () => {
  it('refuses infinite and opposite-signed parts, and steps too fine to count', () => {
    expect(() => largestRemainder([1, Infinity], 100, 1)).toThrow('Share');
    expect(() => largestRemainder([5, -3], 100, 1)).toThrow('negative');
    expect(() => largestRemainder([1, 1], 100, 1e-300)).toThrow('steps this fine');
    expect(() => largestRemainder([1, 1], 100, 0)).toThrow('Step');
    expect(() => largestRemainder([1e308, 1e308], 100, 1)).toThrow('steps this fine');
    expect(largestRemainder([1, 2], 100, 1)).toEqual([33, 67]);
  });
});
