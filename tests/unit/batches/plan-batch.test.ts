import { batchLines } from '@core/batches/plan-batch';
import { batchSize, type BatchPlan } from '@core/batches/batch';
import { formulaShares } from '@core/formulas/shares';
import { Problem } from '@core/problems/problem';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { GUM, WATER } from '../sheets/sample-materials';
import { CREAM, sampleLine } from '../sheets/samples';

const KG = 1_000_000;
type Plan = Pick<BatchPlan, 'size' | 'overagePpm' | 'readabilityMg'>;
const plan = (massMg: number, more: Partial<Plan> = {}): Plan => ({
  size: { by: 'mass', massMg },
  overagePpm: 0,
  readabilityMg: 100,
  ...more,
});

function refusal(make: () => unknown): Problem {
  try {
    make();
  } catch (error) {
    if (error instanceof Problem) return error;
    throw error;
  }
  throw new Error('was not refused');
}

describe('planning a batch', () => {
  it('weighs every line of 2.5 kg to 0.1 g, and the lines add up exactly', () => {
    const { lines, totalMg } = batchLines(CREAM, plan(2.5 * KG));
    expect(totalMg).toBe(2.5 * KG);
    expect(lines.reduce((sum, line) => sum + line.targetMg, 0)).toBe(2.5 * KG);
    // 12 % of 2.5 kg is 300 g; 0.125 % is 3.125 g, which a 0.1 g balance reads as 3.1 g.
    expect(lines[5]?.targetMg).toBe(300_000);
    expect(lines[11]?.targetMg).toBe(3_100);
  });

  it('makes units times fill plus overage', () => {
    const size = { by: 'units' as const, units: 48, fillMg: 50_000 };
    // 48 × 50 g × 1.05 = 2,520 g.
    expect(batchLines(CREAM, { size, overagePpm: 50_000, readabilityMg: 100 }).totalMg).toBe(2_520_000);
  });

  it('plans up to 10 tonnes with the overage, and says where it passes them', () => {
    const tonnes = (count: number) => plan(count * 1_000 * KG, { overagePpm: 500_000 });
    const refused = refusal(() => batchLines(CREAM, tonnes(10)));
    expect(refused.fields[0]?.path).toBe('overagePpm');
    expect(refused.message).toMatch(/^With its overage the batch comes to 15,000/);
    // 6 t and half as much again are 9 t.
    expect(batchLines(CREAM, tonnes(6)).totalMg).toBe(9_000 * KG);
  });

  it.each([
    ['units', 2.5, 'Fill a whole number of units.'],
    ['units', -3, 'Fill at least one unit.'],
    ['fillMg', 1e11, 'A unit holds 10 tonnes at most.'],
  ])('says in words what is wrong with %s of %d', (key, value, message) => {
    const size = { by: 'units', units: 1, fillMg: 1, [key]: value };
    expect(batchSize.safeParse(size).error?.issues[0]?.message).toBe(message);
  });

  it('adds up for any size and balance, no line further than one step from its exact share', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1_000, max: 10_000 * KG }),
        fc.constantFrom(1, 10, 100, 1_000),
        (massMg, readabilityMg) => {
          const { lines, totalMg } = batchLines(CREAM, plan(massMg, { readabilityMg }));
          const shares = formulaShares(CREAM).byLine;
          expect(lines.reduce((sum, line) => sum + line.targetMg, 0)).toBe(totalMg);
          for (const line of lines) {
            const exact = ((shares.get(line.lineId) ?? 0) * totalMg) / 1_000_000;
            expect(Math.abs(line.targetMg - exact)).toBeLessThanOrEqual(readabilityMg);
            expect(line.targetMg % readabilityMg).toBe(0);
          }
        },
      ),
    );
  });

  it.each([0, -5, Number.NaN])('refuses a batch of %s mg and says what to enter', (massMg) => {
    const problem = refusal(() => batchLines(CREAM, plan(massMg)));
    expect(problem.code).toBe('invalid-input');
    expect(problem.message).toBe('A batch must weigh something.');
    expect(problem.fields[0]?.path).toBe('size.massMg');
  });

  it('refuses 50 tonnes and names the largest batch', () => {
    const problem = refusal(() => batchLines(CREAM, plan(50_000 * KG)));
    expect(problem.message).toContain('50,000\u00a0kg');
    expect(problem.advice).toContain('10,000\u00a0kg');
  });

  it('refuses a balance coarser than the batch', () => {
    const problem = refusal(() => batchLines(CREAM, plan(400_000, { readabilityMg: 1_000_000 })));
    expect(problem.message).toContain('coarser');
    expect(problem.fields[0]?.path).toBe('readabilityMg');
  });

  it('refuses a formula that does not total 100 %', () => {
    const phases = [{ ...CREAM.phases[0]!, lines: [sampleLine(WATER, 90)] }];
    expect(refusal(() => batchLines({ ...CREAM, phases }, plan(KG))).message).toContain('90.00\u00a0%');
    const over = [
      { ...CREAM.phases[0]!, lines: [sampleLine(WATER, 'q.s.'), sampleLine(GUM, 60), sampleLine(GUM, 60)] },
    ];
    expect(refusal(() => batchLines({ ...CREAM, phases: over }, plan(KG))).message).toContain(
      'more than 100 %',
    );
  });

  it('says so when a line is too small for the balance', () => {
    expect(batchLines(CREAM, plan(10_000)).cautions[0]).toContain('too small for a balance that reads 0.1');
    expect(batchLines(CREAM, plan(2.5 * KG, { readabilityMg: 10 })).cautions).toEqual([]);
  });
});
