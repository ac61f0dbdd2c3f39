import fc from 'fast-check';
import type { Material } from '@core/materials/material';
import { NO_LAW } from '@core/limits/law';
import { reformulate, type Reformulation } from '@core/reformulate/reformulate';
import { reformulateWish, type ReformulateWish } from '@core/reformulate/wish';
import { solveWithHighs } from '@service/emulsions/optimiser';
import { describe, expect, it } from 'vitest';
import { content, make, phase } from '../unit/checks/build';

/** One raw material as the brute force knows it. */
interface Plain {
  material: Material;
  now: number;
  least: number;
  most: number;
  cost: number;
  origin: number;
  water: boolean;
  barred: boolean;
}
const MOVE = 0.5;
const LEAST = 0.01;

/** Every corner of what is asked for one set of materials: half-planes a·x ≤ b. */
interface Half {
  a: number[];
  b: number;
}

/** Solves a square system; null where it has no single answer. */
function solved(a: readonly (readonly number[])[], b: readonly number[]): number[] | null {
  const n = b.length;
  const rows = a.map((row, at) => [...row, b[at] ?? 0]);
  for (let col = 0; col < n; col += 1) {
    const pivot = rows
      .slice(col)
      .reduce((best, row, at) => (Math.abs(row[col]!) > Math.abs(rows[best]![col]!) ? at + col : best), col);
    [rows[col], rows[pivot]] = [rows[pivot]!, rows[col]!];
    if (Math.abs(rows[col]![col]!) < 1e-10) return null;
    for (let at = 0; at < n; at += 1) {
      if (at === col) continue;
      const by = rows[at]![col]! / rows[col]![col]!;
      rows[at] = rows[at]!.map((value, k) => value - by * rows[col]![k]!);
    }
  }
  return rows.map((row, at) => row[n]! / row[at]!);
}

function* choose(count: number, of: number, from = 0): Generator<number[]> {
  if (count === 0) yield [];
  else
    for (let at = from; at <= of - count; at += 1)
      for (const rest of choose(count - 1, of, at + 1)) yield [at, ...rest];
}

/**
 * The least distance by trying every set of materials, and in each every corner of the demands and of the folds of the
 * distance (where a share is what it was): a convex, piecewise linear figure is least at one of them. Shares no code
 * with the model.
 */
function bruteForce(
  all: readonly Plain[],
  wish: ReformulateWish,
  allowed: (used: readonly Plain[]) => boolean = () => true,
): number | null {
  let best: number | null = null;
  for (let mask = 1; mask < 1 << all.length; mask += 1) {
    const used = all.filter((_, at) => mask & (1 << at));
    if (used.some(({ barred }) => barred) || !allowed(used)) continue;
    const n = used.length;
    const unit = (at: number, sign: number): number[] => used.map((_, k) => (k === at ? sign : 0));
    const halves: Half[] = used.flatMap(({ least, most }, at) => [
      { a: unit(at, 1), b: most },
      { a: unit(at, -1), b: -least },
    ]);
    const grouped = all.filter(({ water }) => !water);
    const now = grouped.reduce((sum, one) => sum + one.now, 0);
    const room = (now * wish.groupsWithin) / 100;
    halves.push({ a: used.map(({ water }) => (water ? 0 : 1)), b: now + room });
    halves.push({ a: used.map(({ water }) => (water ? 0 : -1)), b: -(now - room) });
    if (wish.costAtMost !== null) halves.push({ a: used.map(({ cost }) => cost / 100), b: wish.costAtMost });
    if (wish.originAtLeast !== null)
      halves.push({ a: used.map(({ origin }) => -100 * origin + (wish.originAtLeast ?? 0)), b: 0 });
    const folds: Half[] = used.map(({ now: was }, at) => ({ a: unit(at, 1), b: was }));
    const planes = [...halves, ...folds];
    const whole = used.map(() => 1);
    for (const picked of choose(n - 1, planes.length)) {
      const x = solved(
        [whole, ...picked.map((at) => planes[at]!.a)],
        [100, ...picked.map((at) => planes[at]!.b)],
      );
      if (!x) continue;
      const fits = halves.every(({ a, b }) => a.reduce((sum, by, at) => sum + by * x[at]!, 0) <= b + 1e-7);
      if (!fits) continue;
      const distance = all.reduce((sum, one) => {
        const at = used.indexOf(one);
        const share = at < 0 ? 0 : x[at]!;
        return sum + 0.5 * Math.abs(share - one.now) + (at >= 0 !== one.now > 0 ? MOVE : 0);
      }, 0);
      if (best === null || distance < best) best = distance;
    }
  }
  return best;
}

/** What comes and goes of its own accord in an answer, by material. */
interface Moves {
  come: string[];
  go: string[];
}

/**
 * Which sets a further answer may be made of, told apart from the model: no more materials than now beyond what the
 * best needed; and none that makes all moves of one before it, or, once those are used up, none that is one before it.
 */
function furtherThan(all: readonly Plain[], before: readonly Moves[], exact: boolean) {
  const own = all.filter(({ now }) => now > 0);
  const barred = own.filter((one) => one.barred).length;
  const spare = Math.max(0, before[0]!.come.length - before[0]!.go.length - barred);
  return (used: readonly Plain[]): boolean => {
    const ids = new Set(used.map(({ material }) => material.id));
    const come = used.filter(({ now }) => now === 0).length;
    const go = own.filter((one) => !one.barred && !ids.has(one.material.id)).length;
    if (used.length > own.length + spare) return false;
    return before.every((one) => {
      const all = one.come.every((id) => ids.has(id)) && one.go.every((id) => !ids.has(id));
      const same = all && come === one.come.length && go === one.go.length;
      return exact || one.come.length + one.go.length === 0 ? !same : !all;
    });
  };
}

const EMOLLIENT = { functions: ['humectant'] as Material['functions'] };

function materialOf(
  name: string,
  cost: number,
  origin: number,
  [least, most]: [number, number],
  inci = name,
): Material {
  return make(name, inci, {
    ...EMOLLIENT,
    usage: {
      minPpm: least * 10_000,
      typicalPpm: null,
      maxPpm: most * 10_000,
      provenance: 'supplier',
      source: '',
    },
    figures: {
      naturalOriginIndex: { low: null, value: origin, high: null, provenance: 'supplier', source: '' },
    },
    offers: [
      {
        supplier: 'S',
        itemCode: '',
        packMg: 1_000_000,
        priceMinor: cost,
        currency: 'EUR',
        date: '2026-01-01',
      },
    ],
  });
}

const instance = fc.record({
  rows: fc.array(
    fc.record({
      cost: fc.integer({ min: 100, max: 5_000 }),
      origin: fc.integer({ min: 0, max: 10 }).map((tenths) => tenths / 10),
      least: fc.constantFrom(0, 0, 0.5, 1),
      most: fc.integer({ min: 4, max: 12 }),
      now: fc.integer({ min: 1, max: 4 }),
    }),
    { minLength: 3, maxLength: 4 },
  ),
  own: fc.integer({ min: 1, max: 2 }),
  cheaper: fc.constantFrom(0.5, 0.7, 0.85, 1.2),
  origin: fc.option(fc.integer({ min: 85, max: 99 })),
  barred: fc.boolean(),
  groupsWithin: fc.constantFrom(10, 25, 60),
});

describe('reformulating against brute force', () => {
  it('finds the same least distance, or proves with it that nothing meets what is asked', async () => {
    await fc.assert(
      fc.asyncProperty(instance, async ({ rows, own, cheaper, origin, barred, groupsWithin }) => {
        const water = make('Water', 'Aqua', {
          offers: [
            {
              supplier: 'S',
              itemCode: '',
              packMg: 1_000_000,
              priceMinor: 10,
              currency: 'EUR',
              date: '2026-01-01',
            },
          ],
        });
        const materials = rows.map((row, at) =>
          materialOf(`M${at}`, row.cost, row.origin, [row.least, row.most]),
        );
        const formula = content([phase(rows.slice(0, own).map(({ now }, at) => [materials[at]!, now]))]);
        formula.phases[0]!.lines.push({
          id: water.id,
          materialId: water.id,
          ppm: 0,
          toHundred: true,
          note: '',
        });
        const share = rows.slice(0, own).reduce((sum, { now }) => sum + now, 0);
        const cost = rows
          .slice(0, own)
          .reduce((sum, { now, cost: each }) => sum + (now * each) / 100, (100 - share) / 10);
        const wish = reformulateWish.parse({
          costAtMost: cost * cheaper,
          originAtLeast: origin,
          withoutSubstances: barred ? ['M0'] : [],
          groupsWithin,
          alternatives: 2,
        });
        const plain: Plain[] = [
          ...rows.map((row, at): Plain => ({
            material: materials[at]!,
            now: at < own ? row.now : 0,
            // What stands outside its range already is not forced into it.
            least: at < own ? Math.min(Math.max(row.least, LEAST), row.now) : Math.max(row.least, LEAST),
            most: row.most,
            cost: row.cost,
            origin: row.origin,
            water: false,
            barred: barred && at === 0,
          })),
          {
            material: water,
            now: 100 - share,
            least: LEAST,
            most: 100,
            cost: 10,
            origin: 1,
            water: true,
            barred: false,
          },
        ];
        const result = await reformulate(
          {
            content: formula,
            materials: [water, ...materials.slice(0, own)],
            candidates: materials,
            ...{ law: NO_LAW, onDay: '2026-11-28', currency: 'EUR', wish },
          },
          solveWithHighs,
        );
        const expected = bruteForce(plain, wish);
        expect(result.status).toBe(expected === null ? 'none' : 'found');
        if (result.status !== 'found' || expected === null) return;
        expect(result.best.distance).toBeCloseTo(expected, 5);
        for (const one of [result.best, ...result.alternatives]) expectWhole(one);
        const answers = [result.best, ...result.alternatives];
        const bars = new Set(plain.filter((one) => one.barred).map(({ material }) => material.id));
        const moves = answers.map(({ come, go }): Moves => ({ come, go: go.filter((id) => !bars.has(id)) }));
        // Each is the next-best of those that differ, as it says; and there are no further ones where none are shown.
        for (let at = 1; at <= Math.min(answers.length, wish.alternatives); at += 1) {
          const before = moves.slice(0, at);
          const next =
            bruteForce(plain, wish, furtherThan(plain, before, false)) ??
            bruteForce(plain, wish, furtherThan(plain, before, true));
          if (at === answers.length) expect(next).toBeNull();
          else {
            expect(answers[at]!.proven).toBe(true);
            expect(answers[at]!.distance).toBeCloseTo(next!, 5);
          }
        }
        const sets = [result.best, ...result.alternatives].map(({ come, go }) =>
          [...come, '-', ...go].join(),
        );
        expect(new Set(sets).size).toBe(sets.length);
      }),
      { numRuns: 25 },
    );
  });
});

function expectWhole({ shares }: Reformulation): void {
  expect(shares.reduce((sum, { is }) => sum + is, 0)).toBe(1_000_000);
  expect(shares.every(({ is }) => is >= 0 && Number.isInteger(is))).toBe(true);
}
