import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { batchPlan, batchSize } from '@core/batches/batch';
import { batchLines } from '@core/batches/plan-batch';
import type { SmallLine } from '@core/batches/small-lines';
import { content, make, nextId, phase } from '../checks/build';
import { refusal } from '../working/refusal';

const water = make('Water', 'Aqua');
const named = ['Blue', 'Red', 'Yellow', 'Chelator', 'Vitamin'].map((name) => make(name, 'CI 77491'));

/** Water, and small lines at ppm, all in one phase unless a second is given. */
function formula(ppms: readonly number[], second: readonly number[] = []) {
  const one = phase([[water, 100], ...ppms.map((ppm, at) => [named[at]!, ppm / 10_000] as [never, number])]);
  one.lines[0]!.toHundred = true;
  const two = phase(second.map((ppm, at) => [named[at]!, ppm / 10_000] as [never, number]));
  return content(second.length > 0 ? [one, two] : [one]);
}
const plan = (massMg: number, readabilityMg: number) => ({
  size: { by: 'mass' as const, massMg },
  overagePpm: 0,
  readabilityMg,
});
const brought = ({ premix }: SmallLine): number => (premix ? premix.takeMg * (1 - 1 / premix.parts) : 0);

describe('several small lines', () => {
  it('worked by hand: two in one carrier leave of it what both do not bring', () => {
    // 1 kg, 0.1 g: two lines of 0.06 g, each 200-fold: 12 g taken, 11.94 g of it water. Of 999.88 → 999.8 g, 975.9 g is left.
    const { small, lines } = batchLines(formula([60, 60]), plan(1_000_000, 100));
    expect(small.map(({ premix }) => premix?.takeMg)).toEqual([12_000, 12_000]);
    const waterMg = lines[0]?.targetMg ?? 0;
    for (const { premix } of small) {
      expect(premix?.carrierLeftMg).toBe(Math.round((waterMg - 2 * 11_940) / 100) * 100);
      const step = premix?.worked.steps.find(({ says }) => says.startsWith('carrier to weigh'));
      expect(step?.says).toContain('all 2 mixtures');
      expect(step?.shows).toBe('its line − 12 × (1 − 1 / 200) − 12 × (1 − 1 / 200)');
    }
  });

  it('weighed as they say come to the batch that was asked for, whatever carries them', () => {
    const ppms = fc.array(fc.integer({ min: 5, max: 3_000 }), { minLength: 1, maxLength: 5 });
    fc.assert(
      fc.property(
        ppms,
        fc.integer({ min: 20_000, max: 5_000_000 }),
        fc.constantFrom(10, 100),
        (small, massMg, readabilityMg) => {
          const planned = batchLines(formula(small), plan(massMg, readabilityMg));
          const mixed = planned.small.filter(({ premix }) => premix !== null);
          for (const line of planned.lines) {
            const carried = mixed.filter(({ premix }) => premix?.carrierLineId === line.lineId);
            if (carried.length === 0) continue;
            const left = new Set(carried.map(({ premix }) => premix?.carrierLeftMg));
            // One carrier is weighed once: each of its mixtures says the same of what is left.
            expect(left.size).toBe(1);
            const [rest = 0] = left;
            expect(rest).toBeGreaterThanOrEqual(0);
            const all = carried.reduce((sum, one) => sum + brought(one), rest);
            expect(Math.abs(all - line.targetMg)).toBeLessThanOrEqual(readabilityMg / 2 + 1e-6);
          }
        },
      ),
      { numRuns: 60 },
    );
  });

  it('are carried by none that is small itself', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 200_000, max: 500_000 }), { minLength: 2, maxLength: 2 }),
        fc.integer({ min: 50, max: 400 }),
        (two, steps) => {
          const { small } = batchLines(formula(two.map((ppm) => ppm - 1)), plan(steps * 100, 100));
          const ids = new Set(small.map(({ lineId }) => lineId));
          for (const { premix } of small) if (premix) expect(ids.has(premix.carrierLineId)).toBe(false);
        },
      ),
    );
  });

  it('take a carrier of their own phase before a larger one of another', () => {
    const apart = formula([60], [300_000, 60]);
    const { small, lines } = batchLines(apart, plan(1_000_000, 100));
    expect(small.map(({ premix }) => premix?.carrierLineId)).toEqual([lines[0]?.lineId, lines[2]?.lineId]);
  });

  it('without a line that could carry them have no premix', () => {
    const { small, cautions } = batchLines(formula([400_000, 400_000]), plan(2_000, 100));
    expect(small).toHaveLength(3);
    expect(small.every(({ premix }) => premix === null)).toBe(true);
    expect(cautions.join(' ')).toMatch(/3 lines lie below/);
  });
});

describe('what a plan may hold', () => {
  const whole = {
    versionId: nextId(),
    size: { by: 'mass', massMg: 1_000_000 },
    overagePpm: 0,
    readabilityMg: 100,
    note: '',
  };
  const said = (parts: object): string =>
    batchPlan.safeParse({ ...whole, ...parts }).error?.issues[0]?.message ?? '';

  it.each([
    [{ overagePpm: 500_000 }, ''],
    [{ overagePpm: 500_001 }, 'An overage above 50 % makes a different batch size.'],
    [{ overagePpm: -1 }, 'A share cannot be negative.'],
    [{ readabilityMg: 1 }, ''],
    [{ readabilityMg: 0 }, 'A readability is above zero.'],
    [{ readabilityMg: 100_000_001 }, 'That is coarser than any balance: 100 kg at most.'],
    [{ readabilityMg: 0.5 }, 'A mass must be a number of milligrams.'],
    [{ size: { by: 'mass', massMg: 10_000_000_000 } }, ''],
    [
      { size: { by: 'mass', massMg: 10_000_000_001 } },
      'Stillroom plans batches up to 10 tonnes. Enter a smaller mass.',
    ],
    [{ size: { by: 'mass', massMg: 0 } }, 'A batch must weigh something. Enter a mass above zero.'],
    [{ size: { by: 'units', units: 1_000_001, fillMg: 1 } }, 'A million units at most.'],
    [{ size: { by: 'units', units: 1, fillMg: 0 } }, 'A unit must hold something.'],
    [{ note: 'x'.repeat(2001) }, 'Keep this to 2,000 characters or fewer.'],
  ])('%j: %s', (parts, message) => expect(said(parts)).toBe(message));

  it('needs each of its parts', () => {
    for (const key of Object.keys(whole)) expect(said({ [key]: undefined }), key).not.toBe('');
    for (const bad of [null, 'a kilogram', {}, { by: 'volume', ml: 3 }])
      expect(batchSize.safeParse(bad).success).toBe(false);
  });

  it.each([0, -100, Number.NaN])('a readability of %d mg is refused by its field', (readabilityMg) => {
    const one = refusal(
      () => batchLines(formula([60]), plan(1_000, readabilityMg)),
      /readability is above zero/,
    );
    expect(one.fields[0]?.path).toBe('readabilityMg');
  });

  it('units by fill is the mass that they come to', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 5_000 }),
        fc.integer({ min: 1_000, max: 500_000 }),
        (units, fillMg) => {
          const by = { ...plan(0, 10), size: { by: 'units' as const, units, fillMg } };
          expect(batchLines(formula([60]), by)).toEqual({
            ...batchLines(formula([60]), plan(units * fillMg, 10)),
            lines: expect.any(Array) as unknown,
            small: expect.any(Array) as unknown,
          });
        },
      ),
      { numRuns: 30 },
    );
  });
});
