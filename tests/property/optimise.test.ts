import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { OBJECTIVES, PAIRING_RULES, type Candidate, type Demand } from '@core/emulsions/optimise/demand';
import { optimise } from '@core/emulsions/optimise/optimise';
import type { Choice } from '@core/emulsions/optimise/result';
import { Problem } from '@core/problems/problem';
import { solveWithHighs } from '@service/emulsions/optimiser';
import { benchDemand, generatedCandidates } from '../bench/emulsifiers';
import { exhaustiveOptimum, exhaustiveValues } from '../bench/exhaustive';

const tenths = (min: number, max: number) => fc.integer({ min: min * 10, max: max * 10 }).map((n) => n / 10);

const candidate = (index: number): fc.Arbitrary<Candidate> =>
  fc.record({
    id: fc.constant(`c${index}`),
    name: fc.constant(`Emulsifier ${index}`),
    hlb: fc.option(tenths(1, 19), { freq: 10 }),
    charge: fc.constantFrom('non-ionic', 'non-ionic', 'non-ionic', 'anionic', 'cationic', null),
    architecture: fc.constantFrom('classic', 'classic', 'classic', 'polymeric', null),
    emulsionType: fc.constantFrom('o/w', 'w/o', 'both', null),
    character: fc.constantFrom('waxy', 'liquid', null),
    costPerKg: fc.option(fc.integer({ min: 100, max: 9000 }), { freq: 10 }),
    minPercent: tenths(0, 1),
    maxPercent: tenths(1, 6),
  });

const candidates = fc
  .integer({ min: 2, max: 8 })
  .chain((count) => fc.tuple(...Array.from({ length: count }, (_, index) => candidate(index))));

const demand: fc.Arbitrary<Demand> = fc
  .record({
    emulsionType: fc.constantFrom('o/w' as const, 'w/o' as const),
    targetHlb: fc.option(tenths(3, 17), { freq: 8 }),
    tolerance: fc.constantFrom(0, 0.2, 0.5, 1, 3),
    totalMinPercent: tenths(0, 5),
    span: tenths(0, 4),
    atMost: fc.integer({ min: 1, max: 4 }),
    pinned: fc.subarray(['c0'], { minLength: 0 }),
    excluded: fc.subarray(['c1'], { minLength: 0 }),
    objective: fc.constantFrom(...OBJECTIVES),
    rules: fc.subarray([...PAIRING_RULES]).map((rules) => (rules.length > 3 ? rules.slice(0, 2) : rules)),
    alternatives: fc.constant(6),
  })
  .map(({ span, ...rest }) => ({
    ...rest,
    totalMaxPercent: Math.round((rest.totalMinPercent + span + 0.1) * 10) / 10,
    objective: rest.targetHlb === null && rest.objective === 'nearest HLB' ? 'least cost' : rest.objective,
  }));

/** Every demand, checked on the answer as it is given to the maker. */
function expectAllHold(choice: Choice, all: readonly Candidate[], asked: Demand): void {
  const room = 1e-5;
  const ids = choice.lines.map((line) => line.id);
  expect(new Set(ids).size).toBe(ids.length);
  expect(ids.length).toBeLessThanOrEqual(asked.atMost);
  for (const id of asked.pinned) expect(ids).toContain(id);
  for (const id of asked.excluded) expect(ids).not.toContain(id);
  const total = choice.lines.reduce((sum, line) => sum + line.percent, 0);
  expect(total).toBeGreaterThanOrEqual(asked.totalMinPercent - room);
  expect(total).toBeLessThanOrEqual(asked.totalMaxPercent + room);
  for (const line of choice.lines) {
    const one = all.find((candidate) => candidate.id === line.id);
    expect(line.percent).toBeGreaterThanOrEqual((one?.minPercent ?? Infinity) - room);
    expect(line.percent).toBeLessThanOrEqual((one?.maxPercent ?? -Infinity) + room);
  }
  if (asked.targetHlb !== null) {
    expect(Math.abs((choice.hlb ?? NaN) - asked.targetHlb)).toBeLessThanOrEqual(asked.tolerance + 1e-3);
  }
}

/** As many alternatives as there are other sets of materials, up to the six asked for, each another set. */
function expectAllAlternatives(best: Choice, others: readonly Choice[], sets: number): void {
  expect(others).toHaveLength(Math.min(sets - 1, 6));
  const materials = [best, ...others].map(({ lines }) => lines.map((line) => line.id).sort());
  expect(new Set(materials.map((ids) => ids.join())).size).toBe(materials.length);
}

describe('the optimiser against exhaustive search', () => {
  it('finds the same optimum, or proves that there is none, and keeps every demand', async () => {
    await fc.assert(
      fc.asyncProperty(candidates, demand, async (all, asked) => {
        const expected = exhaustiveValues(all, asked);
        try {
          const result = await optimise({ candidates: all, demand: asked }, solveWithHighs);
          if (result.status === 'infeasible') {
            expect(expected).toEqual([]);
            expect(result.conflict.length).toBeGreaterThan(0);
            return;
          }
          expect(result.best.objective).toBeCloseTo(expected[0] ?? NaN, 4);
          for (const choice of [result.best, ...result.alternatives]) expectAllHold(choice, all, asked);
          for (const other of result.alternatives) {
            expect(other.objective).toBeGreaterThanOrEqual(result.best.objective - 1e-4);
          }
          expectAllAlternatives(result.best, result.alternatives, expected.length);
          expect(result.noMore).toBe(expected.length < 7);
        } catch (problem) {
          // A demand that cannot even be modelled is refused, and then nothing is feasible either.
          if (!(problem instanceof Problem)) throw problem;
          expect(expected).toEqual([]);
        }
      }),
      { numRuns: 80, seed: 20261125 },
    );
  }, 300_000);

  it('gives six alternatives wherever there are as many, with and without pins', async () => {
    const shelf = generatedCandidates(9, 3).filter((one) => one.costPerKg !== null);
    for (const objective of ['least cost', 'fewest materials'] as const) {
      for (const pinned of [[], ['candidate-0'], ['candidate-0', 'candidate-2']]) {
        for (const targetHlb of [null, 11]) {
          const asked = benchDemand({
            objective,
            pinned,
            targetHlb,
            tolerance: 1,
            rules: [],
            alternatives: 6,
          });
          const expected = exhaustiveValues(shelf, asked);
          const result = await optimise({ candidates: shelf, demand: asked }, solveWithHighs);
          if (result.status === 'infeasible') throw new Error(result.reason);
          expectAllAlternatives(result.best, result.alternatives, expected.length);
        }
      }
    }
  }, 300_000);

  it('finds the same optimum when a field is large enough to be narrowed', async () => {
    for (const seed of [1, 2]) {
      for (const objective of OBJECTIVES) {
        for (const asked of [
          benchDemand({ objective, atMost: 2 }),
          benchDemand({ objective, atMost: 2, tolerance: 0, totalMinPercent: 6, totalMaxPercent: 6 }),
          benchDemand({ objective, atMost: 2, rules: ['one sign of charge', 'ionic with a non-ionic'] }),
        ]) {
          const all = generatedCandidates(110, seed);
          const result = await optimise({ candidates: all, demand: asked }, solveWithHighs);
          const expected = exhaustiveOptimum(all, asked);
          if (result.status === 'infeasible') expect(expected).toBeNull();
          else expect(result.best.objective).toBeCloseTo(expected ?? NaN, 4);
        }
      }
    }
  }, 300_000);
});
