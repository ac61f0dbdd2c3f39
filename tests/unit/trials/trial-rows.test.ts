import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { trialRows } from '@core/trials/trial-rows';
import { hlbSeries, levelSeries } from '@core/trials/plan-trials';
import { nextId } from '../checks/build';

const [high, low, oil, water] = [nextId(), nextId(), nextId(), nextId()] as const;
const batch = { batchMg: 100_000, readabilityMg: 10 };

describe('the rows to weigh trials by', () => {
  it('come to the batch in every trial, also where a material stands among oils and the rest', () => {
    const share = fc.integer({ min: 1, max: 50 });
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.constantFrom(oil, water, high), share), { minLength: 1, maxLength: 6 }),
        (rows) => {
          const others = rows.map(([materialId, parts]) => ({ materialId, share: parts }));
          const trials = hlbSeries({
            ...batch,
            others,
            targetHlb: 10,
            low: { materialId: low, hlb: 5 },
            high: { materialId: high, hlb: 15 },
            levelPpm: 50_000,
          });
          const weighed = trialRows({ trials });
          for (const at of trials.keys())
            expect(weighed.reduce((sum, { masses }) => sum + (masses[at] ?? 0), 0)).toBe(batch.batchMg);
          const keys = weighed.map(({ part, materialId }) => `${part} ${materialId}`);
          expect(new Set(keys).size).toBe(keys.length);
        },
      ),
      { numRuns: 50 },
    );
  });

  it('put emulsifiers first, and leave open what a trial has none of', () => {
    const trials = hlbSeries({
      ...batch,
      others: [{ materialId: oil, share: 1 }],
      targetHlb: 15,
      low: { materialId: low, hlb: 5 },
      high: { materialId: high, hlb: 15 },
      levelPpm: 50_000,
    });
    const rows = trialRows({ trials });
    expect(rows.map(({ part }) => part)).toEqual(['emulsifier', 'emulsifier', 'other']);
    // At HLB 15 the high one stands alone.
    expect(rows.find(({ materialId }) => materialId === low)?.masses.at(-1)).toBeNull();
    expect(trialRows({ trials: [] })).toEqual([]);
  });
});

describe('a series of levels', () => {
  it('weighs in proportion to its level', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 20 }), (percent) => {
        const [one, two] = levelSeries({
          ...batch,
          others: [{ materialId: water, share: 1 }],
          emulsifiers: [{ materialId: high, share: 1, hlb: 12 }],
          levelsPpm: [percent * 10_000, percent * 20_000],
        });
        expect(two?.lines[0]?.mg).toBe(2 * (one?.lines[0]?.mg ?? 0));
        expect(one?.lines[0]?.mg).toBe(percent * 1_000);
      }),
    );
  });
});
