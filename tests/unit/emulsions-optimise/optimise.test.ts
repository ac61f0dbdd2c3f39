import { describe, expect, it } from 'vitest';
import type { Candidate } from '@core/emulsions/optimise/demand';
import { optimise, type OptimiseInput } from '@core/emulsions/optimise/optimise';
import { Problem } from '@core/problems/problem';
import { solveWithHighs } from '@service/emulsions/optimiser';

/** HLBs as in the reference table; prices and usage ranges invented. */
const one = (id: string, hlb: number | null, parts: Partial<Candidate> = {}): Candidate => ({
  id,
  name: id,
  hlb,
  charge: 'non-ionic',
  architecture: 'classic',
  emulsionType: hlb !== null && hlb < 7 ? 'w/o' : 'o/w',
  character: 'waxy',
  costPerKg: 1000,
  minPercent: 0.5,
  maxPercent: 5,
  ...parts,
});
const steareth21 = one('Steareth-21', 15.5, { costPerKg: 1800 });
const steareth2 = one('Steareth-2', 4.9, { costPerKg: 1500 });
const polysorbate60 = one('Polysorbate 60', 14.9, { costPerKg: 700, character: 'liquid' });
const sorbitanStearate = one('Sorbitan Stearate', 4.7, { costPerKg: 600 });
const stearoylLactylate = one('Sodium Stearoyl Lactylate', null, { charge: 'anionic', costPerKg: 500 });
const behentrimonium = one('Behentrimonium Chloride', null, { charge: 'cationic', costPerKg: 1200 });
const SHELF = [steareth21, steareth2, polysorbate60, sorbitanStearate];

type Asked = OptimiseInput['demand'];
const asked = (parts: Partial<Asked> = {}): Asked => ({
  emulsionType: 'o/w',
  targetHlb: 10,
  tolerance: 0,
  totalMinPercent: 5,
  totalMaxPercent: 5,
  atMost: 2,
  objective: 'least cost',
  ...parts,
});
const run = (candidates: Candidate[], parts: Partial<Asked> = {}) =>
  optimise({ candidates, demand: asked(parts) }, solveWithHighs);

async function optimal(candidates: Candidate[], parts: Partial<Asked> = {}) {
  const result = await run(candidates, parts);
  if (result.status !== 'optimal') throw new Error(result.reason);
  return result;
}
async function infeasible(candidates: Candidate[], parts: Partial<Asked> = {}) {
  const result = await run(candidates, parts);
  if (result.status === 'optimal') throw new Error('An answer was found where none was expected.');
  return result;
}
async function refusal(candidates: Candidate[], parts: Partial<Asked> = {}): Promise<Problem> {
  const problem = await run(candidates, parts).catch((caught: unknown) => caught);
  if (!(problem instanceof Problem)) throw new Error('No refusal.');
  return problem;
}

describe('the choice of emulsifiers', () => {
  it('gives the ratio of the two-component formula', async () => {
    // x = (target − low)/(high − low) = (10 − 4.9)/(15.5 − 4.9) = 0.48113 of the high one.
    const { best } = await optimal([steareth21, steareth2]);
    expect(best.lines.find((line) => line.id === 'Steareth-21')?.percent).toBeCloseTo(5 * (5.1 / 10.6), 6);
    expect(best.hlb).toBeCloseTo(10, 9);
  });
  it('takes the cheaper pair, and offers the next-best ones, each different in materials', async () => {
    const { best, alternatives } = await optimal(SHELF, { alternatives: 5 });
    expect(best.lines.map((line) => line.id).sort()).toEqual(['Polysorbate 60', 'Sorbitan Stearate']);
    expect(alternatives).toHaveLength(3);
    const sets = [best, ...alternatives].map((choice) =>
      choice.lines
        .map((line) => line.id)
        .sort()
        .join(),
    );
    expect(new Set(sets).size).toBe(4);
    const costs = [best, ...alternatives].map((choice) => choice.costPerKg ?? NaN);
    expect(costs).toEqual([...costs].sort((a, b) => a - b));
  });
  it('keeps pins and exclusions', async () => {
    const { best } = await optimal(SHELF, { pinned: ['Steareth-21'], excluded: ['Sorbitan Stearate'] });
    expect(best.lines.map((line) => line.id).sort()).toEqual(['Steareth-2', 'Steareth-21']);
  });
  it('uses one where one suffices and the fewest are asked for', async () => {
    const middle = one('Ceteth-10', 12.9);
    const { best } = await optimal([...SHELF, middle], {
      targetHlb: 13,
      tolerance: 0.5,
      objective: 'fewest materials',
    });
    expect(best.lines.map((line) => line.id)).toEqual(['Ceteth-10']);
  });
  it('comes as near to the target as the usage ranges allow', async () => {
    // 2 % of HLB 15 at most, the other 3 % at HLB 5: (2 × 15 + 3 × 5)/5 = 9.
    const shelf = [one('high', 15, { maxPercent: 2 }), one('low', 5)];
    const { best } = await optimal(shelf, { objective: 'nearest HLB', tolerance: 2 });
    expect(best.hlb).toBeCloseTo(9, 5);
    expect(best.objective).toBeCloseTo(1, 5);
  });
  it('wants a waxy and a liquid one for w/o', async () => {
    const oleate = one('Sorbitan Oleate', 4.3, { character: 'liquid', emulsionType: 'w/o', costPerKg: 900 });
    const wo = {
      emulsionType: 'w/o' as const,
      targetHlb: 4.5,
      tolerance: 0.3,
      rules: ['waxy with liquid' as const],
    };
    const { best } = await optimal([sorbitanStearate, oleate], wo);
    expect(best.lines.map((line) => line.id).sort()).toEqual(['Sorbitan Oleate', 'Sorbitan Stearate']);
  });
  it('gives an ionic no weight in the mean, and lets it in only by a pin or a charge rule', async () => {
    const shelf = [steareth21, steareth2, stearoylLactylate];
    expect((await optimal(shelf)).leftOut.map((left) => left.id)).toEqual(['Sodium Stearoyl Lactylate']);
    const mixed = await optimal(shelf, { atMost: 3, rules: ['ionic with a non-ionic'] });
    expect(mixed.best.lines).toHaveLength(3);
    expect(mixed.best.hlb).toBeCloseTo(10, 6);
    expect(mixed.cautions.join(' ')).toContain('Sodium Stearoyl Lactylate');
  });
  it('cautions against a tolerance of zero', async () => {
    expect((await optimal(SHELF)).cautions.join(' ')).toContain('tolerance');
  });
  it('answers the same question the same way twice', async () => {
    expect(await run(SHELF, { alternatives: 3 })).toEqual(await run(SHELF, { alternatives: 3 }));
  });
});

describe('a demand without an answer', () => {
  it('says the highest HLB that can be reached', async () => {
    const found = await infeasible([one('a', 11.4), one('b', 6)], { targetHlb: 12, tolerance: 0.2 });
    expect(found.reason).toContain(
      'HLB 12 ± 0.2 cannot be reached with the allowed emulsifiers: the highest reachable is 11.4',
    );
  });
  it('says how many materials would be needed', async () => {
    const shelf = SHELF.map((each) => ({ ...each, maxPercent: 1.5 }));
    const found = await infeasible(shelf, { atMost: 3, targetHlb: null });
    expect(found.relax.map((each) => each.says).join(' ')).toContain('at least 4 materials');
  });
  it('says which total would be needed', async () => {
    const shelf = [one('a', 10, { minPercent: 2 }), one('b', 10, { minPercent: 2 })];
    const found = await infeasible(shelf, { pinned: ['a', 'b'], totalMinPercent: 1, totalMaxPercent: 3 });
    expect(found.relax.map((each) => each.says).join(' ')).toContain('at least 4 %');
  });
  it('names the pins that clash, and never advises to give up one sign of charge', async () => {
    const found = await infeasible([...SHELF, stearoylLactylate, behentrimonium], {
      atMost: 4,
      tolerance: 0.5,
      totalMaxPercent: 8,
      pinned: ['Sodium Stearoyl Lactylate', 'Behentrimonium Chloride'],
      rules: ['one sign of charge'],
    });
    expect(found.conflict).toContain('one sign of charge');
    expect(found.relax.map((each) => each.demand)).not.toContain('one sign of charge');
    expect(found.relax.map((each) => each.demand)).toContain('the pin on Behentrimonium Chloride');
  });
  it('names an exclusion that stands in the way', async () => {
    const found = await infeasible(SHELF, { excluded: ['Steareth-2', 'Sorbitan Stearate'] });
    expect(found.relax.map((each) => each.says).join(' ')).toMatch(/allow (Steareth-2|Sorbitan Stearate)/);
  });
  it('can do with one candidate, or says why not', async () => {
    expect((await optimal([one('only', 10)])).best.lines).toHaveLength(1);
    expect((await infeasible([one('only', 8)])).reason).toContain('highest reachable is 8');
  });
});

describe('what no maker asks for in words', () => {
  it('is not named as a demand: that a mean HLB must describe half of the emulsifier', async () => {
    // 4 % of the anionic at least, and 3 % of the only one with an HLB at most.
    const shelf = [{ ...stearoylLactylate, minPercent: 4 }, one('only', 10, { maxPercent: 3 })];
    const found = await infeasible(shelf, { pinned: ['Sodium Stearoyl Lactylate'], totalMaxPercent: 8 });
    expect(
      [found.reason, ...found.conflict, ...found.relax.map((each) => each.demand)].join(' '),
    ).not.toContain('at least half');
    expect(found.conflict).toContain('the HLB window');
    expect(found.relax.find((each) => each.demand === 'the HLB window')?.says).toContain(
      'HLB 10 would describe less than half of the emulsifier; leave the target HLB out',
    );
  });
  it('holds all the same: a total from 0 % is not met by nothing', async () => {
    const nothing = { targetHlb: null, totalMinPercent: 0, rules: ['one sign of charge' as const] };
    for (const objective of ['least cost', 'fewest materials'] as const) {
      const { best } = await optimal(SHELF, { ...nothing, objective });
      expect(best.lines).toHaveLength(1);
    }
    const none = await infeasible([steareth2], { ...nothing, excluded: ['Steareth-2'] });
    expect(none.conflict).toEqual(['the exclusions']);
  });
});

describe('what is refused', () => {
  it.each<[string, Candidate[], Partial<Asked>, RegExp]>([
    ['no candidates', [], {}, /no emulsifiers/],
    ['an ionic asked for by HLB alone', [stearoylLactylate], {}, /does not describe anionic/],
    [
      'a pin that is excluded',
      SHELF,
      { pinned: ['Steareth-2'], excluded: ['Steareth-2'] },
      /both pinned and excluded/,
    ],
    [
      'more pins than places',
      SHELF,
      { atMost: 1, pinned: ['Steareth-2', 'Steareth-21'] },
      /2 emulsifiers are pinned/,
    ],
    ['a pin that is not there', SHELF, { pinned: ['gone'] }, /not among the candidates/],
    ['a pin without a price', [one('free', 10, { costPerKg: null })], { pinned: ['free'] }, /no price/],
    ['a negative tolerance', SHELF, { tolerance: -1 }, /tolerance cannot be negative/],
    ['a level above 100 %', SHELF, { totalMaxPercent: 120 }, /more than 100/],
    ['a negative level', SHELF, { totalMinPercent: -1 }, /cannot be negative/],
    ['a total that ends before it begins', SHELF, { totalMinPercent: 6 }, /lowest total is above/],
    ['no number', SHELF, { targetHlb: NaN }, /must be a number/],
    ['no places', SHELF, { atMost: 0 }, /at least one/],
    ['an HLB beyond the scale', SHELF, { targetHlb: 60 }, /between 0 and 40/],
  ])('%s', async (_, candidates, parts, says) => {
    const problem = await refusal(candidates, parts);
    expect(problem.code).toBe('invalid-input');
    expect(problem.message).toMatch(says);
    expect(problem.advice).not.toBe('');
  });
});

describe('the solver', () => {
  it('goes on after a model that it cannot read', async () => {
    await expect(solveWithHighs('this is no model')).rejects.toThrow();
    expect((await optimal(SHELF)).status).toBe('optimal');
  });
});
