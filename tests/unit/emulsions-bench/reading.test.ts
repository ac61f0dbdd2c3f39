import { takeLines } from '@core/emulsions/bench/from-formula';
import { planHlbSeries, planLevelSeries } from '@core/trials/plan-series';
import { readBench, type BenchInput } from '@core/emulsions/bench/reading';
import { refusals, roundedShares, withEmulsifiers } from '@core/emulsions/bench/use-in-formula';
import { formulaLines, formulaShares } from '@core/formulas/shares';
import type { Formula } from '@core/formulas/formula';
import { demoLibrary } from '@core/demo/demo-library';
import type { Material } from '@core/materials/material';
import { describe, expect, it } from 'vitest';

const { materials, formulas } = demoLibrary();
const byCode = new Map(materials.map((material) => [material.code, material]));
const byId = Object.fromEntries(materials.map((material) => [material.id, material]));

function material(code: string): Material {
  const known = byCode.get(code);
  if (!known) throw new Error(`No ${code} in the demonstration library.`);
  return known;
}
const line = (code: string, percent: number) => ({ material: material(code), percent });

function cream(): Formula {
  const found = formulas.find((formula) => formula.code === 'F-001');
  if (!found) throw new Error('No F-001 in the demonstration library.');
  return found;
}

const taken = takeLines(cream(), byId);
const lines = (list: { materialId: string; percent: number }[]) =>
  list.flatMap(({ materialId, percent }) => {
    const known = byId[materialId];
    return known ? [{ material: known, percent }] : [];
  });
const bench = (parts: Partial<BenchInput> = {}) =>
  readBench({
    emulsionType: 'o/w',
    oils: lines(taken.oils),
    emulsifiers: [],
    rest: lines(taken.rest),
    targetHlb: null,
    ...parts,
  });

describe('a formula’s lines on the bench', () => {
  it('are its oils without emulsifiers, its emulsifiers, and the rest, nothing lost', () => {
    expect(lines(taken.oils).map((one) => one.material.code)).toEqual([
      'O-102',
      'O-203',
      'O-108',
      'W-102',
      'W-301',
    ]);
    expect(lines(taken.emulsifiers).map((one) => one.material.code)).toEqual(['N-101', 'N-210']);
    const all = [...taken.oils, ...taken.emulsifiers, ...taken.rest];
    expect(all.reduce((sum, one) => sum + one.percent, 0)).toBeCloseTo(100, 6);
  });
});

describe('what the bench reads', () => {
  it('the required HLB is the mean worked by hand: (6 × 11.5 + 4 × 7 + 3 × 11 + 3 × 15.5 + 2 × 8) / 18', () => {
    const { required } = bench();
    expect(required.ok && required.value.worked.value).toBeCloseTo(192.5 / 18, 10);
  });

  it('the ratio of two puts the blend on the target', () => {
    const emulsifiers = [line('N-101', 2), line('N-210', 2)];
    const { pair } = bench({ emulsifiers });
    if (!pair?.ok) throw new Error('A ratio was expected.');
    const set = [line('N-101', pair.value.high.percent), line('N-210', pair.value.low.percent)];
    const { verdict } = bench({ emulsifiers: set });
    expect(verdict?.fit).toBe('within');
    expect(verdict?.difference).toBeCloseTo(0, 9);
  });

  it('a pair out of reach says by how much, and from which HLB a partner would reach', () => {
    const { pair } = bench({ emulsifiers: [line('N-210', 2), line('N-204', 2)] });
    if (!pair || pair.ok) throw new Error('A refusal was expected.');
    expect(pair.refusal.title).toMatch(/above what this pair reaches/);
    expect(pair.refusal.facts.partnerHlb).toBeCloseTo(192.5 / 18, 10);
  });

  it('a cationic beside soap is blocked, and beside a non-ionic it is not', () => {
    const salt = bench({ emulsifiers: [line('K-401', 3), line('A-302', 1)], rest: [] });
    expect(salt.blocking[0]?.why).toMatch(/insoluble salt/);
    expect(bench({ emulsifiers: [line('K-401', 3), line('N-101', 1)], rest: [] }).blocking).toEqual([]);
  });

  it('ionics alone are told by charge, never by a mean', () => {
    const { verdict, offered } = bench({ emulsifiers: [line('A-302', 2)] });
    expect(offered.ok && offered.value.described).toBeNull();
    expect(verdict?.says).toMatch(/HLB says nothing/);
  });

  it('oils that pass 100 % ask for nothing: the refusal says by how much', () => {
    const { required, target } = bench({ oils: [line('O-102', 95), line('O-203', 12)] });
    expect(!required.ok && required.refusal.title).toBe(
      'The oils come to 107 % of the formula, 7 % more than it can hold.',
    );
    expect(target).toBeNull();
  });

  it('oils and emulsifiers that together pass 100 % get no verdict and no ratio, and exactly 100 % gets both', () => {
    const pairAt = (each: number) => [line('N-101', each), line('N-210', each)];
    const over = bench({ oils: [line('O-102', 95)], emulsifiers: pairAt(5) });
    expect(!over.offered.ok && over.offered.refusal.title).toMatch(/together come to 105 % of the formula/);
    expect(over.verdict).toBeNull();
    expect(over.pair).toBeNull();
    const full = bench({ oils: [line('O-102', 90)], emulsifiers: pairAt(5) });
    expect(full.offered.ok).toBe(true);
    expect(full.pair?.ok).toBe(true);
  });

  it('emulsifiers at 101 % offer no ratio to set', () => {
    const over = bench({ emulsifiers: [line('N-101', 60), line('N-210', 41)] });
    expect(!over.offered.ok && over.offered.refusal.title).toMatch(/101 % of the formula/);
    expect(over.pair).toBeNull();
  });

  it('no oils, levels over 100 % and empty levels are refused in words', () => {
    const none = bench({ oils: [] }).required;
    expect(!none.ok && none.refusal.title).toBe('There are no oils.');
    const over = bench({ emulsifiers: [line('N-101', 70), line('N-210', 40)] }).offered;
    expect(!over.ok && over.refusal.title).toMatch(/110 % of the formula/);
    const zero = bench({ emulsifiers: [line('N-101', 0)] }).offered;
    expect(!zero.ok && zero.refusal.title).toMatch(/weigh nothing/);
  });
});

describe('putting a system into a formula', () => {
  const phaseId = cream().phases[0]?.id ?? '';
  let count = 0;
  const newId = () => `00000000-0000-7000-8000-${String((count += 1)).padStart(12, '0')}`;
  const put = [{ materialId: material('N-207').id, percent: 3 }];

  it('replaces the emulsifiers that stand there, and the whole stays 100 %', () => {
    const after = withEmulsifiers(cream(), byId, { phaseId, lines: put, replace: true, newId });
    const codes = formulaLines(after).map((one) => byId[one.materialId]?.code);
    expect(codes).toContain('N-207');
    expect(codes).not.toContain('N-101');
    expect(formulaShares(after).totalPpm).toBe(1_000_000);
  });

  it('rounds a computed system to the decimals of the formula, keeps its sum, and lets nothing vanish', () => {
    const shares = (...percents: number[]) =>
      roundedShares(
        cream(),
        byId,
        percents.map((percent) => ({ percent })),
      );
    expect(shares(2.5375, 1.4625)).toEqual([25_400, 14_600]);
    expect(shares(1.333_3, 1.333_3, 1.333_4)).toEqual([13_300, 13_300, 13_400]);
    expect(shares(3.9987, 0.0013)).toEqual([39_990, 10]);
  });

  it('refuses lines that leave nothing for the q.s. line', () => {
    const lots = [{ materialId: material('N-207').id, percent: 90 }];
    expect(() => withEmulsifiers(cream(), byId, { phaseId, lines: lots, replace: false, newId })).toThrow(
      'passes 100 %',
    );
  });

  it('names the salt that a cationic would form with the soap of a formula', () => {
    const soap = withEmulsifiers(cream(), byId, {
      phaseId,
      lines: [{ materialId: material('A-302').id, percent: 1 }],
      replace: false,
      newId,
    });
    const cationic = [{ materialId: material('K-401').id, percent: 2 }];
    const after = withEmulsifiers(soap, byId, { phaseId, lines: cationic, replace: false, newId });
    expect(refusals(after, byId, cationic)[0]?.severity).toBe('forms a salt');
  });
});

describe('a trial series from the bench', () => {
  const plan = {
    emulsifiers: [line('N-101', 2.7), line('N-210', 1.8)],
    oils: lines(taken.oils),
    rest: lines(taken.rest),
    fillWith: null,
    batchMg: 100_000,
    readabilityMg: 100,
  };

  it('runs ± 1 HLB in halves around the target, each batch adding up to its mass', () => {
    const trials = planHlbSeries(plan, bench().target);
    expect(trials).toHaveLength(5);
    for (const trial of trials) expect(trial.lines.reduce((sum, one) => sum + one.mg, 0)).toBe(100_000);
  });

  it('asks what to fill up with where the bench holds the oils only', () => {
    expect(() => planLevelSeries({ ...plan, rest: [] }, [3, 4])).toThrow('is not accounted for');
  });

  it('refuses to scale down oils and emulsifiers that do not fit, rather than plan another phase', () => {
    const full = { ...plan, oils: plan.oils.map((oil) => ({ ...oil, percent: oil.percent * 8 })) };
    expect(() => planLevelSeries(full, [3, 4])).toThrow('more than it can hold');
  });

  it('says that a series of HLBs needs a pair', () => {
    expect(() => planHlbSeries({ ...plan, emulsifiers: [line('N-101', 3)] }, bench().target)).toThrow(
      'needs two classic non-ionic',
    );
  });
});
