import { batchLines } from '@core/batches/plan-batch';
import { minimumWeightMg } from '@core/batches/small-lines';
import { WHOLE_PPM } from '@core/quantities/share';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { GUM, WATER } from '../sheets/sample-materials';
import { CREAM, sampleLine } from '../sheets/samples';

const KG = 1_000_000;
const plan = (massMg: number, readabilityMg: number) => ({
  ...{ size: { by: 'mass' as const, massMg }, overagePpm: 0, readabilityMg },
});

/** Water with a line of 0.006 % of gum. */
const THIN = {
  ...CREAM,
  phases: [{ ...CREAM.phases[0]!, lines: [sampleLine(WATER, 'q.s.'), sampleLine(GUM, 0.006)] }],
};

describe('lines that a balance weighs too coarsely', () => {
  it('0.06 g on a balance that reads 0.1 g becomes 0.1 g: called out as two thirds too much', () => {
    const { small, cautions, lines } = batchLines(THIN, plan(KG, 100));
    expect(lines[1]?.targetMg).toBe(100);
    expect(small).toHaveLength(1);
    expect(small[0]?.exactMg).toBeCloseTo(60, 9);
    expect(small[0]?.roundingPpm).toBeCloseTo((WHOLE_PPM * 2) / 3, 3);
    expect(small[0]).toMatchObject({ roundedTooFar: true, belowMinimum: true });
    expect(cautions.join(' ')).toMatch(/moved by more than 1/);
  });

  it('the minimum weight follows the pharmacopoeia’s rule: 82 steps to within 1 %, 820 to within 0.1 %', () => {
    expect(minimumWeightMg(100)).toBeCloseTo(8_200, 9);
    expect(minimumWeightMg(100, 1_000)).toBeCloseTo(82_000, 9);
  });

  it('says nothing of lines that the balance can weigh, nor with a wider limit', () => {
    expect(batchLines(THIN, plan(KG, 1)).small.filter((line) => line.roundedTooFar)).toEqual([]);
    expect(batchLines(CREAM, plan(100 * KG, 10)).small).toEqual([]);
    expect(batchLines(THIN, plan(KG, 100), 'en-GB', 700_000).small.some((line) => line.roundedTooFar)).toBe(
      false,
    );
  });

  it('the premix holds what the batch needs, and every weight in it can be read', () => {
    const { small, lines } = batchLines(THIN, plan(KG, 100));
    const premix = small[0]?.premix;
    if (!premix) throw new Error('A premix was expected.');
    // By hand: 8.2 / 0.06 = 136.7, so 20 × 10 = 200 parts: 8.2 g with 155.8 g of water, 8.2 g of that with 73.8 g, take 12 g.
    expect(premix.parts).toBe(200);
    expect(premix.stages).toEqual([
      { weighMg: 8_200, parts: 20, carrierMg: 155_800 },
      { weighMg: 8_200, parts: 10, carrierMg: 73_800 },
    ]);
    expect(premix.takeMg).toBe(12_000);
    expect(premix.carrierLineId).toBe(lines[0]?.lineId);
    expect(premix.takeMg / premix.parts).toBeCloseTo(60, 9);
    expect(premix.worked.value).toBe(12);
  });

  it('any premix brings the line to within the limit, and leaves the whole as it was', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 50_000, max: 10 * KG }),
        fc.constantFrom(10, 100, 1_000),
        (massMg, readabilityMg) => {
          const { small, lines } = batchLines(THIN, plan(massMg, readabilityMg));
          for (const { premix, exactMg } of small) {
            if (!premix) continue;
            const carrier = lines.find((line) => line.lineId === premix.carrierLineId);
            const brought = premix.takeMg / premix.parts;
            expect(Math.abs(brought - exactMg) / exactMg).toBeLessThanOrEqual(0.01);
            expect(premix.carrierLeftMg).toBeGreaterThanOrEqual(0);
            for (const [index, stage] of premix.stages.entries()) {
              const next = premix.stages[index + 1]?.weighMg ?? premix.takeMg;
              expect(stage.weighMg + stage.carrierMg).toBeGreaterThanOrEqual(next);
            }
            const spent = premix.takeMg - brought + premix.carrierLeftMg;
            expect(Math.abs(spent - (carrier?.targetMg ?? 0))).toBeLessThanOrEqual(readabilityMg);
          }
        },
      ),
    );
  });
});
