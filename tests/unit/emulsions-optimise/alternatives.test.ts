import { describe, expect, it } from 'vitest';
import type { Candidate } from '@core/emulsions/optimise/demand';
import { optimise, type OptimiseInput } from '@core/emulsions/optimise/optimise';
import { solveWithHighs } from '@service/emulsions/optimiser';
import { demoShelf, named } from './demo-shelf';

const SHELF = demoShelf();
const PINS = named(SHELF, 'Pibberley 60', 'Dunnockle Stearate').map((one) => one.id);
const isPin = (one: Candidate): boolean => PINS.includes(one.id);

async function optimal(parts: Partial<OptimiseInput['demand']>, candidates = SHELF) {
  const demand: OptimiseInput['demand'] = {
    emulsionType: 'o/w',
    targetHlb: null,
    tolerance: 0.3,
    totalMinPercent: 3,
    totalMaxPercent: 5,
    atMost: 4,
    objective: 'least cost',
    rules: ['one sign of charge', 'serves the type'],
    alternatives: 6,
    ...parts,
  };
  const result = await optimise({ candidates, demand }, solveWithHighs);
  if (result.status === 'infeasible') throw new Error(result.reason);
  return result;
}

describe('the next-best choices', () => {
  it('come as asked for although the pins alone suffice', async () => {
    // Nothing is cheaper than the pins, so that no third is used to save money.
    const dearest = Math.max(...SHELF.filter(isPin).map((one) => one.costPerKg ?? 0));
    const dearer = SHELF.filter((one) => isPin(one) || (one.costPerKg ?? 0) > dearest);
    const { best, alternatives, noMore } = await optimal({ pinned: PINS }, dearer);
    expect(best.lines.map((line) => line.id).sort()).toEqual([...PINS].sort());
    expect(alternatives).toHaveLength(6);
    expect(noMore).toBe(false);
    const costs = [best, ...alternatives].map((choice) => choice.costPerKg ?? NaN);
    expect(costs).toEqual([...costs].sort((a, b) => a - b));
    for (const { lines } of alternatives) {
      expect(lines.map((line) => line.id)).toEqual(expect.arrayContaining(PINS));
      expect(lines.length).toBeGreaterThan(2);
    }
  });

  it('come as asked for on the whole shelf with pins', async () => {
    expect((await optimal({ pinned: PINS })).alternatives).toHaveLength(6);
  });

  it('do not repeat a better one with a further material, where there are enough others', async () => {
    const { best, alternatives } = await optimal({ targetHlb: 10 });
    const sets = [best, ...alternatives].map(({ lines }) => lines.map((line) => line.id));
    for (const [index, set] of sets.entries()) {
      for (const other of sets.slice(index + 1)) expect(set.every((id) => other.includes(id))).toBe(false);
    }
  });

  it('are said to be all there are, when they are', async () => {
    const three = named(SHELF, 'Pibberley 60', 'Pibberley 80', 'Dunnockle Stearate');
    const { alternatives, noMore } = await optimal({ pinned: PINS }, three);
    expect(alternatives).toHaveLength(1);
    expect(noMore).toBe(true);
    expect((await optimal({ pinned: PINS, atMost: 2 })).alternatives).toEqual([]);
  });
});
