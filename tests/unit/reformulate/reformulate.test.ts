import { demoLibrary } from '@core/demo/demo-library';
import { checkFormula } from '@core/checks/all';
import { formulaCost } from '@core/costing/formula-cost';
import { formulaLines, formulaShares } from '@core/formulas/shares';
import { lawOfFormula } from '@core/limits/in-formula';
import { isBroken } from '@core/limits/judged';
import type { Material } from '@core/materials/material';
import { reformulate } from '@core/reformulate/reformulate';
import { reformulated } from '@core/reformulate/reformulated';
import { reformulateWish, type ReformulateWish } from '@core/reformulate/wish';
import { solveWithHighs } from '@service/emulsions/optimiser';
import { describe, expect, it } from 'vitest';
import { content, make, nextId, phase } from '../checks/build';
import { EXAMPLES } from '../limits/law';

const { materials, formulas } = demoLibrary();
const byId: Record<string, Material> = Object.fromEntries(materials.map((one) => [one.id, one]));
const DAY = '2026-11-28';
const cream = formulas.find(({ name }) => name === 'Hedgerow Day Cream')!;
const costOf = (content: typeof cream): number => formulaCost(content, byId, 'EUR').perKgMinor;

function ask(wish: Partial<ReformulateWish>, content = cream) {
  const ids = new Set(formulaLines(content).map(({ materialId }) => materialId));
  return reformulate(
    {
      content,
      materials: materials.filter(({ id }) => ids.has(id)),
      candidates: materials,
      ...{ law: EXAMPLES, onDay: DAY, currency: 'EUR', wish: reformulateWish.parse(wish) },
    },
    solveWithHighs,
  );
}

describe('reformulating the day cream', () => {
  it('15 % cheaper and without phenoxyethanol, and others: each keeps what was asked, and the law', async () => {
    const wish = { costAtMost: 0.85 * costOf(cream), withoutSubstances: ['Phenoxyethanol'], alternatives: 2 };
    const result = await ask(wish);
    if (result.status !== 'found') throw new Error(result.conflict.join('; '));
    expect(result.alternatives).toHaveLength(2);
    for (const found of [result.best, ...result.alternatives]) {
      const after = { ...cream, ...reformulated(cream, found, nextId) };
      expect(formulaShares(after).totalPpm).toBe(1_000_000);
      expect([...formulaShares(after).byLine.values()].every((ppm) => ppm > 0)).toBe(true);
      expect(costOf(after)).toBeLessThanOrEqual(wish.costAtMost + 0.01);
      const names = formulaLines(after).flatMap(({ materialId }) =>
        (byId[materialId]?.composition ?? []).map(({ inci }) => inci),
      );
      expect(names).not.toContain('Phenoxyethanol');
      const { judged } = lawOfFormula(after, (id) => byId[id], EXAMPLES, DAY);
      expect(judged.filter((one) => one.certain && isBroken(one) && one.verdict === 'above')).toEqual([]);
      const stops = checkFormula({
        content: after,
        materials: new Map(Object.entries(byId)),
        law: EXAMPLES,
        onDay: DAY,
      });
      expect(stops.filter(({ severity }) => severity === 'stop')).toEqual([]);
    }
  });

  it('leaves locked lines as they are, and what it is made for in the formula', async () => {
    const shea = formulaLines(cream).find(({ materialId }) => byId[materialId]?.code === 'W-301')!;
    const result = await ask({ costAtMost: 0.9 * costOf(cream), locked: [shea.id], alternatives: 1 });
    if (result.status !== 'found') throw new Error(result.conflict.join('; '));
    for (const found of [result.best, ...result.alternatives]) {
      expect(found.shares.find(({ materialId }) => materialId === shea.materialId)?.is).toBe(shea.ppm);
      const kept = found.shares.filter(({ role }) => role === 'actives' || role === 'fragrance');
      expect(kept.every(({ was, is }) => was > 0 && is > 0)).toBe(true);
    }
  });

  it('changes nothing where all is met already', async () => {
    const result = await ask({ costAtMost: 2 * costOf(cream), alternatives: 0 });
    if (result.status !== 'found') throw new Error(result.conflict.join('; '));
    expect(result.best.distance).toBeCloseTo(0, 6);
    const after = reformulated(cream, result.best, nextId);
    expect(after.phases).toEqual(cream.phases);
  });

  it('says which demands clash where nothing meets them, each of them needed for it', async () => {
    const result = await ask({ costAtMost: 0.1 * costOf(cream) });
    if (result.status !== 'none') throw new Error('Nothing can be that cheap.');
    expect(result.conflict).toContain('the cost');
    const cost = result.eased.find(({ demand }) => demand === 'the cost');
    expect(cost?.reach).toBeGreaterThan(0.1 * costOf(cream));
    // What is said to be within reach is.
    const reached = await ask({ costAtMost: (cost?.reach ?? 0) + 0.5, alternatives: 0 });
    expect(reached.status).toBe('found');
  });

  it('finds none where the least uses of what would have to come pass 100 %', async () => {
    const oil = (name: string, inci: string, minPercent: number) =>
      make(name, inci, {
        functions: ['emollient'],
        usage: {
          ...{ minPpm: minPercent * 10_000, typicalPpm: null, maxPpm: 1_000_000 },
          ...{ provenance: 'supplier', source: '' },
        },
      });
    const [kept, barred, other] = [
      oil('Kept', 'Squalane', 0),
      oil('Barred', 'Isohexadecane', 0),
      oil('Other', 'Triolein', 70),
    ];
    const half = content(
      [
        phase([
          [kept, 50],
          [barred, 50],
        ]),
      ],
      { productType: 'anhydrous' },
    );
    const result = await reformulate(
      {
        content: half,
        ...{ materials: [kept, barred], candidates: [kept, barred, other] },
        ...{ law: EXAMPLES, onDay: DAY, currency: 'EUR' },
        wish: reformulateWish.parse({
          withoutSubstances: ['Isohexadecane'],
          locked: [half.phases[0]!.lines[0]!.id],
        }),
      },
      solveWithHighs,
    );
    expect(result.status).toBe('none');
  });

  it('refuses a formula that is no whole', async () => {
    const muddle = formulas.find(({ code }) => code === 'T-001')!;
    await expect(ask({ costAtMost: 100 }, muddle)).rejects.toThrow('does not come to 100 %');
  });
});
