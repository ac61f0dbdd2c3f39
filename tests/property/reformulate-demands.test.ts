import fc from 'fast-check';
import { figure } from '../unit/checks/build';
import { ask, over, raw, type Facts } from '../unit/reformulate/small-shelf';
import type { Material } from '@core/materials/material';
import { describe, expect, it } from 'vitest';

/**
 * Every demand at once, each reckoned here from the facts that the materials are made of, never from the model: the
 * answer keeps all of them, and no formula drawn by chance that keeps all of them is nearer.
 */
interface Known {
  hlb?: number;
  required?: number;
  cost: number;
  origin: number;
  use: [number, number];
  group: 'water' | 'emulsifiers' | 'oils' | 'humectants';
}

const KNOWN: Record<string, Known> = {
  Aqua: { cost: 0, origin: 1, use: [0, 100], group: 'water' },
  'Polysorbate 60': { hlb: 14.9, cost: 900, origin: 0.3, use: [0.5, 5], group: 'emulsifiers' },
  'Sorbitan Stearate': { hlb: 4.7, cost: 700, origin: 0.9, use: [0.5, 5], group: 'emulsifiers' },
  'Steareth-21': { hlb: 15.5, cost: 500, origin: 0.2, use: [0.5, 4], group: 'emulsifiers' },
  Squalane: { required: 12, cost: 4000, origin: 1, use: [1, 60], group: 'oils' },
  'Caprylic/Capric Triglyceride': { required: 11, cost: 800, origin: 1, use: [1, 60], group: 'oils' },
  'Paraffinum Liquidum': { required: 10.5, cost: 300, origin: 0, use: [1, 60], group: 'oils' },
  Glycerin: { cost: 200, origin: 1, use: [1, 10], group: 'humectants' },
  'Butylene Glycol': { cost: 600, origin: 0, use: [1, 10], group: 'humectants' },
};
const NAMES = Object.keys(KNOWN);

const FUNCTIONS: Record<Known['group'], Material['functions']> = {
  water: ['solvent'],
  emulsifiers: ['emulsifier'],
  oils: ['emollient'],
  humectants: ['humectant'],
};

function materialOf(name: string): Material {
  const { hlb, required, cost, origin, use, group } = KNOWN[name]!;
  const facts: Facts = {
    ...{ cost, use, origin },
    parts: {
      ...(hlb === undefined
        ? {}
        : { charge: 'non-ionic', architecture: 'classic', emulsionType: 'o/w' as const }),
      ...(required === undefined ? {} : { phaseOfUse: 'oil' as const }),
    },
    figures: {
      naturalOriginIndex: figure(origin),
      ...(hlb === undefined ? {} : { hlb: figure(hlb) }),
      ...(required === undefined ? {} : { requiredHlbOw: figure(required) }),
    },
  };
  return raw(name, name, FUNCTIONS[group], facts);
}

type Shares = Record<string, number>;
const of = (shares: Shares, fact: (one: Known) => number): number =>
  NAMES.reduce((sum, name) => sum + (shares[name] ?? 0) * fact(KNOWN[name]!), 0);
const mean = (shares: Shares, key: 'hlb' | 'required'): number =>
  of(shares, (one) => one[key] ?? 0) / of(shares, (one) => (one[key] === undefined ? 0 : 1));
const costOf = (shares: Shares): number => of(shares, ({ cost }) => cost / 100);
const originOf = (shares: Shares): number => of(shares, ({ origin }) => origin);

interface Wish {
  costAtMost: number;
  originAtLeast: number | null;
  hlbWithin: number;
  groupsWithin: number;
}

/** What of the wishes a formula breaks, beyond what rounding to the ppm may move. */
function broken(now: Shares, shares: Shares, wish: Wish): string[] {
  const band = mean(now, 'required');
  const faults: [string, boolean][] = [
    ['whole', Math.abs(of(shares, () => 1) - 100) > 1e-9],
    ['cost', costOf(shares) > wish.costAtMost + 0.02],
    ['origin', wish.originAtLeast !== null && originOf(shares) < wish.originAtLeast - 0.001],
    // One ppm more or less of 4 % of emulsifiers moves their mean by less than 0.001.
    ['offered', !(Math.abs(mean(shares, 'hlb') - band) <= wish.hlbWithin + 0.01)],
    ['required', !(Math.abs(mean(shares, 'required') - band) <= wish.hlbWithin + 0.001)],
  ];
  for (const group of ['emulsifiers', 'oils', 'humectants'] as const) {
    const total = (of_: Shares): number => of(of_, (one) => (one.group === group ? 1 : 0));
    const room = (total(now) * wish.groupsWithin) / 100;
    faults.push([group, Math.abs(total(shares) - total(now)) > room + 0.001]);
  }
  for (const name of NAMES) {
    const [share, before, { use, group }] = [shares[name] ?? 0, now[name] ?? 0, KNOWN[name]!];
    if (share <= 0 || group === 'water') continue;
    const least = before > 0 ? Math.min(use[0], before) : use[0];
    faults.push([name, share < least - 2e-4 || share > Math.max(use[1], before) + 2e-4]);
  }
  return faults.filter(([, is]) => is).map(([what]) => what);
}

/** Half of what moved, and half a per cent for each that comes or goes. */
const distanceOf = (now: Shares, shares: Shares): number =>
  NAMES.reduce((sum, name) => {
    const [before, after] = [now[name] ?? 0, shares[name] ?? 0];
    return sum + Math.abs(after - before) / 2 + (before > 0 !== after > 0 ? 0.5 : 0);
  }, 0);

const tenths = (least: number, most: number): fc.Arbitrary<number> =>
  fc.integer({ min: least * 10, max: most * 10 }).map((ten) => ten / 10);

const instance = fc.record({
  // About the HLB that the oils ask for, so that a band can be held at all.
  now: fc.record({
    'Polysorbate 60': tenths(2, 3),
    'Sorbitan Stearate': tenths(1, 1.6),
    Squalane: tenths(5, 15),
    'Caprylic/Capric Triglyceride': tenths(5, 15),
    'Butylene Glycol': tenths(2, 6),
  }),
  cheaper: fc.integer({ min: 60, max: 105 }),
  origin: fc.option(fc.integer({ min: -2, max: 4 })),
  hlbWithin: fc.constantFrom(0.5, 1, 2),
  groupsWithin: fc.constantFrom(10, 25, 50),
});

/** Formulas in the neighbourhood: each share of now scaled, some put in the place of others of their group. */
function* drawn(now: Shares, random: () => number, count: number): Generator<Shares> {
  for (let run = 0; run < count; run += 1) {
    const shares: Shares = {};
    let sum = 0;
    for (const name of NAMES) {
      const { group, use } = KNOWN[name]!;
      if (group === 'water') continue;
      const before = now[name] ?? 0;
      const stays = before > 0 ? random() > 0.15 : random() < 0.2;
      const share = before > 0 ? before * (0.7 + 0.6 * random()) : use[0] + 4 * random();
      shares[name] = stays ? (random() < 0.4 && before > 0 ? before : share) : 0;
      sum += shares[name];
    }
    shares.Aqua = 100 - sum;
    if (shares.Aqua > 0) yield shares;
  }
}

/** Numbers between 0 and 1, the same ones for a seed (Park and Miller's minimal standard generator, 1988). */
function numbersFrom(seed: number): () => number {
  let state = 1 + (seed % 2_147_483_646);
  return () => {
    state = (state * 48_271) % 2_147_483_647;
    return state / 2_147_483_647;
  };
}

describe('reformulating an emulsion with every demand at once', () => {
  const shelf = NAMES.map(materialOf);
  const named = (name: string): Material => shelf[NAMES.indexOf(name)]!;
  const byId = new Map(shelf.map(({ id, tradeName }) => [id, tradeName]));

  it('keeps all that was asked, says its own figures right, and is no farther than any formula drawn by chance', async () => {
    await fc.assert(
      fc.asyncProperty(instance, fc.nat(), async ({ now: rows, cheaper, origin, ...bands }, seed) => {
        const now: Shares = { ...rows, Aqua: 100 - Object.values(rows).reduce((sum, one) => sum + one, 0) };
        const wish: Wish = {
          ...bands,
          costAtMost: (costOf(now) * cheaper) / 100,
          originAtLeast: origin === null ? null : Math.min(99, originOf(now) + origin),
        };
        const formula = over(
          named('Aqua'),
          Object.entries(rows).map(([name, share]) => [named(name), share]),
          { productType: 'o/w emulsion' },
        );
        const result = await ask(formula, shelf, wish);
        const nearby = [...drawn(now, numbersFrom(seed), 600)].filter(
          (shares) => broken(now, shares, wish).length === 0,
        );
        if (result.status === 'none') {
          // What is within by the room of rounding alone is no proof against it.
          const clear = { ...wish, hlbWithin: wish.hlbWithin - 0.02, costAtMost: wish.costAtMost - 0.03 };
          expect(nearby.filter((shares) => broken(now, shares, clear).length === 0)).toEqual([]);
          expect(result.conflict.length).toBeGreaterThan(0);
          return;
        }
        const { best } = result;
        const shares: Shares = {};
        for (const { materialId, is } of best.shares) shares[byId.get(materialId)!] = is / 10_000;
        expect(broken(now, shares, wish)).toEqual([]);
        expect(best.costPerKg).toBeCloseTo(costOf(shares), 6);
        expect(best.originPercent).toBeCloseTo(originOf(shares), 6);
        // Shares are rounded as the formula's own are: to a tenth of a per cent each.
        expect(Math.abs(best.distance - distanceOf(now, shares))).toBeLessThan(0.1 * NAMES.length);
        const nearest = Math.min(Infinity, ...nearby.map((one) => distanceOf(now, one)));
        expect(best.distance).toBeLessThanOrEqual(nearest + 0.05);
      }),
      { numRuns: 8 },
    );
  });

  it('moves less the more it is let: no wider wish has a farther answer', async () => {
    const wider = fc.record({
      cost: fc.integer({ min: 0, max: 20 }),
      origin: fc.integer({ min: 0, max: 3 }),
      hlb: fc.constantFrom(0, 0.5),
      groups: fc.constantFrom(0, 15),
    });
    await fc.assert(
      fc.asyncProperty(instance, wider, async ({ now: rows, cheaper, origin, ...bands }, by) => {
        const now: Shares = { ...rows, Aqua: 100 - Object.values(rows).reduce((sum, one) => sum + one, 0) };
        const formula = over(
          named('Aqua'),
          Object.entries(rows).map(([name, share]) => [named(name), share]),
          { productType: 'o/w emulsion' },
        );
        const least = origin === null ? null : Math.min(99, originOf(now) + origin);
        const wish = { ...bands, costAtMost: (costOf(now) * cheaper) / 100, originAtLeast: least };
        const result = await ask(formula, shelf, wish);
        if (result.status === 'none') return;
        const again = await ask(formula, shelf, {
          costAtMost: (costOf(now) * (cheaper + by.cost)) / 100,
          originAtLeast: least === null ? null : least - by.origin,
          hlbWithin: bands.hlbWithin + by.hlb,
          groupsWithin: bands.groupsWithin + by.groups,
        });
        if (again.status === 'none') throw new Error('A wider wish found none.');
        expect(again.best.distance).toBeLessThanOrEqual(result.best.distance + 1e-5);
      }),
      { numRuns: 8 },
    );
  });
});
