import fc from 'fast-check';
import { enteredOutcome, outcomeWords, yieldPercent } from '@core/batches/outcome';
import { batchLines } from '@core/batches/plan-batch';
import { describe, expect, it } from 'vitest';
import { content, make, phase } from '../checks/build';

const told = {
  ...{ finishedOn: '2026-09-03', obtainedMg: 594_000, unitsFilled: 58, by: 'Ada', remarks: '' },
};

describe('what came of a batch', () => {
  it('is told with its yield of what was weighed: 594 of 611.8 g are 97.1 %', () => {
    expect(yieldPercent(told, 611_800)).toBeCloseTo(97.0906, 4);
    expect(outcomeWords({ ...told, at: '2026-09-03T10:00:00Z' }, 611_800, 'en-GB')).toBe(
      '3 Sept 2026, 594\u00a0g, 97.1\u00a0% of what was weighed, 58 units',
    );
    const bulk = outcomeWords({ ...told, unitsFilled: null, at: '' }, 611_800, 'de-DE');
    expect(bulk).toContain('97,1\u00a0%');
    expect(bulk).not.toContain('units');
  });

  it.each([
    [{ finishedOn: '2026-02-30' }, 'Enter the day as a date.'],
    [{ finishedOn: 'yesterday' }, 'Enter the day as a date.'],
    [{ obtainedMg: 0 }, 'Enter the bulk that was obtained.'],
    [{ obtainedMg: 1.5 }, 'A mass must be a number of milligrams.'],
    [{ obtainedMg: 10_000_000_001 }, 'Stillroom keeps batches up to 10 tonnes.'],
    [{ unitsFilled: -1 }, 'The units filled cannot be fewer than none.'],
    [{ unitsFilled: 1.5 }, 'A whole number of units was filled.'],
    [{ by: ' ' }, 'Give who recorded it.'],
  ])('%j is refused: %s', (part, message) => {
    const issues = enteredOutcome.safeParse({ ...told, ...part }).error?.issues ?? [];
    expect(issues.map((one) => one.message)).toEqual([message]);
  });
});

describe('a planned batch', () => {
  const shares = fc
    .array(fc.integer({ min: 1, max: 1000 }), { minLength: 2, maxLength: 8 })
    .map((weights) => {
      const whole = weights.reduce((sum, one) => sum + one, 0);
      const ppm = weights.map((one) => Math.floor((1_000_000 * one) / whole));
      ppm[0] = ppm[0]! + 1_000_000 - ppm.reduce((sum, one) => sum + one, 0);
      return ppm;
    });
  const plan = fc.record({
    massMg: fc.integer({ min: 10_000, max: 50_000_000 }),
    readabilityMg: fc.constantFrom(1, 10, 100, 1000),
    overagePpm: fc.integer({ min: 0, max: 500_000 }),
  });
  const materials = Array.from({ length: 8 }, (_, at) => make(`M${at}`, 'Glycerin'));
  const formulaOf = (ppm: readonly number[]) =>
    content([phase(ppm.map((one, at) => [materials[at]!, one / 10_000]))]);

  it('is the size that was asked for and its overage, to a step of the balance, and each line within one step', () => {
    fc.assert(
      fc.property(shares, plan, (ppm, { massMg, readabilityMg, overagePpm }) => {
        const size = { by: 'mass' as const, massMg };
        const { lines, totalMg } = batchLines(formulaOf(ppm), { size, overagePpm, readabilityMg });
        const made = massMg * (1 + overagePpm / 1e6);
        expect(Math.abs(totalMg - made)).toBeLessThanOrEqual(readabilityMg / 2 + 0.5);
        expect(lines.reduce((sum, line) => sum + line.targetMg, 0)).toBe(totalMg);
        lines.forEach(({ targetMg }, at) => {
          expect(targetMg % readabilityMg).toBe(0);
          expect(Math.abs(targetMg - (totalMg * ppm[at]!) / 1e6)).toBeLessThan(readabilityMg);
        });
      }),
      { numRuns: 150 },
    );
  });

  it('with more asked for weighs no less of anything, beyond the step that rounding moves', () => {
    fc.assert(
      fc.property(shares, plan, fc.integer({ min: 1, max: 20_000_000 }), (ppm, one, more) => {
        const at = (massMg: number): number[] =>
          batchLines(formulaOf(ppm), { ...one, size: { by: 'mass', massMg } }).lines.map(
            ({ targetMg }) => targetMg,
          );
        const [less, larger] = [at(one.massMg), at(one.massMg + more)];
        larger.forEach((mg, index) => expect(mg).toBeGreaterThan(less[index]! - 2 * one.readabilityMg));
      }),
      { numRuns: 80 },
    );
  });

  it('refuses what cannot be weighed, in words', () => {
    const refused = (ppm: number[], part: object): string => {
      try {
        batchLines(formulaOf(ppm), {
          ...{ size: { by: 'mass', massMg: 1_000_000 }, overagePpm: 0, readabilityMg: 100 },
          ...part,
        });
      } catch (problem) {
        return (problem as Error).message;
      }
      return '';
    };
    expect(refused([600_000, 300_000], {})).toBe('The lines come to 90.00\u00a0%, not 100 %.');
    expect(refused([1_000_000], { readabilityMg: 0 })).toBe('A readability is above zero.');
    expect(refused([1_000_000], { readabilityMg: 10_000_000 })).toContain('coarser than the whole batch');
    expect(
      refused([1_000_000], { size: { by: 'mass', massMg: 9_000_000_000 }, overagePpm: 200_000 }),
    ).toContain('more than Stillroom plans in one batch');
  });
});
