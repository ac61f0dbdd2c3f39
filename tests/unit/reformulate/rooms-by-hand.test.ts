import { DEMANDS } from '@core/reformulate/demand-rows';
import type { Material } from '@core/materials/material';
import { describe, expect, it } from 'vitest';
import { ask, best, over, raw, shareOf, type Facts } from './small-shelf';

/** Every share and distance is worked out by hand in its comment. Costs in cents per kg. */
const water = raw('Pump water', 'Aqua', ['solvent'], { cost: 0 });
const humectant = (name: string, facts: Facts): Material =>
  raw(name, name, ['humectant'], { use: [0, 40], ...facts });
const dear = humectant('Propanediol', { cost: 900 });
const cheap = humectant('Glycerin', { cost: 300 });
const shelf = [water, dear, cheap];
/** 80 % water, 10 % at 9.00, 10 % at 3.00: 120 cents a kg. */
const formula = over(water, [
  [dear, 10],
  [cheap, 10],
]);
const lineOf = (material: Material): string =>
  formula.phases[0]!.lines.find(({ materialId }) => materialId === material.id)!.id;

describe('a cost to be met', () => {
  it('without any room of the group is met within it: 9d + 3e = 105 with d + e = 20 gives d = 7.5', async () => {
    const found = await best(formula, shelf, { costAtMost: 105, groupsWithin: 0 });
    expect([shareOf(found, dear), shareOf(found, cheap), shareOf(found, water)]).toEqual([7.5, 12.5, 80]);
    expect(found.distance).toBeCloseTo(2.5, 4);
    expect(found.costPerKg).toBeCloseTo(105, 6);
  });

  it('beside a locked line is met by the other: 15 cents less are 5 % of what costs 3.00', async () => {
    const found = await best(formula, shelf, { costAtMost: 105, locked: [lineOf(dear)] });
    expect([shareOf(found, dear), shareOf(found, cheap)]).toEqual([10, 5]);
    expect(found.distance).toBeCloseTo(5, 4);
  });

  it('that no mixture of the group reaches is refused, with the least that can be: 20 % at 3.00 are 60', async () => {
    const result = await ask(formula, shelf, { costAtMost: 59, groupsWithin: 0 });
    if (result.status !== 'none') throw new Error('Nothing can be that cheap.');
    expect([...result.conflict].sort()).toEqual([DEMANDS.cost, DEMANDS.groups].sort());
    const cost = result.eased.find(({ demand }) => demand === DEMANDS.cost);
    expect(cost?.says).toBe('the least that can be reached');
    expect(cost?.reach).toBeCloseTo(60, 2);
  });

  it('says what it comes to where it stands in the way', async () => {
    const { binds } = await best(formula, shelf, { costAtMost: 105, groupsWithin: 0 });
    expect(binds.find(({ demand }) => demand === DEMANDS.cost)?.says).toBe('€1.05 of at most €1.05 per kg');
  });
});

describe('a highest use that stands in the way', () => {
  const held = humectant('Glycerin', { cost: 300, use: [0, 11] });
  const tight = over(water, [
    [dear, 10],
    [held, 10],
  ]);
  const wish = { costAtMost: 105, groupsWithin: 0 };

  it('is named with what it clashes with: 11 % and 9 % of the dear one cost 114', async () => {
    const result = await ask(tight, [water, dear, held], wish);
    if (result.status !== 'none') throw new Error('11 % is the most.');
    expect([...result.conflict].sort()).toEqual([DEMANDS.cost, DEMANDS.groups, DEMANDS.ranges].sort());
    expect(result.eased.find(({ demand }) => demand === DEMANDS.cost)?.reach).toBeCloseTo(114, 2);
    const ranges = result.eased.find(({ demand }) => demand === DEMANDS.ranges);
    expect(ranges?.reach).toBeNull();
    expect(ranges?.says).toBe(`drop or ease ${DEMANDS.ranges}`);
  });

  it('is no longer in the way once it need not be kept', async () => {
    const found = await best(tight, [water, dear, held], { ...wish, keepRanges: false });
    expect([shareOf(found, dear), shareOf(found, held)]).toEqual([7.5, 12.5]);
  });
});

describe('every answer', () => {
  it('says that nothing was made, and what a missing price or range means', async () => {
    const open = raw('Aloe water', 'Aloe Barbadensis Leaf Water', ['humectant'], {});
    const loose = over(water, [[open, 10]]);
    const { cautions } = await ask(loose, [water, open], { costAtMost: 500 });
    expect(cautions.join(' ')).toMatch(/Without a price.*Aloe water/);
    expect(cautions.join(' ')).toMatch(/No highest use is recorded for .*Aloe water/);
    expect(cautions.at(-1)).toMatch(/computed, not made.*qualified assessor/);
  });
});
