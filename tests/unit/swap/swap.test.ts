import fc from 'fast-check';
import { formulaLines, formulaShares } from '@core/formulas/shares';
import { hlbOf } from '@core/emulsions/systems/character';
import { holdHlb, HELD_WITHIN } from '@core/swap/hold-hlb';
import { swapCandidates, swapFacts } from '@core/swap/candidates';
import { swapInFormula } from '@core/swap/swap-formula';
import { swapLines } from '@core/swap/swap-lines';
import type { MaterialRow } from '@core/materials/list';
import type { Material } from '@core/materials/material';
import { describe, expect, it } from 'vitest';
import { content, figure, make, phase } from '../checks/build';

const emulsifier = (name: string, hlb: number) =>
  make(name, name, { functions: ['emulsifier'], charge: 'non-ionic', figures: { hlb: figure(hlb) } });
const water = make('Water', 'Aqua');
const old = make('Old one', 'Phenoxyethanol', { functions: ['preservative'] });
const other = make('Other', 'Sodium Benzoate', {
  functions: ['preservative'],
  usage: { minPpm: 1_000, typicalPpm: 4_000, maxPpm: 5_900, provenance: 'supplier', source: '' },
});
const withQs = (rows: Parameters<typeof phase>[0]) => {
  const own = phase(rows);
  own.lines.unshift({ id: water.id, materialId: water.id, ppm: 0, toHundred: true, note: '' });
  return content([own]);
};
const ppmOf = (formula: ReturnType<typeof content>, material: Material) =>
  formulaLines(formula)
    .filter(({ materialId }) => materialId === material.id)
    .map(({ ppm }) => ppm);

describe('a material put in the place of another', () => {
  it('takes its share, a share within its range, or its usual one; q.s. makes the formula whole', () => {
    const formula = withQs([[old, 1]]);
    expect(ppmOf(swapLines(formula, old.id, other, 'as it was').content, other)).toEqual([10_000]);
    expect(ppmOf(swapLines(formula, old.id, other, 'within its range').content, other)).toEqual([5_900]);
    const { content: after } = swapLines(formula, old.id, other, 'its usual share');
    expect(ppmOf(after, other)).toEqual([4_000]);
    expect(formulaShares(after).totalPpm).toBe(1_000_000);
  });

  it('becomes one line where it stood in the same phase already, with both shares and both notes', () => {
    const formula = withQs([
      [old, 1],
      [other, 0.3],
    ]);
    const lines = formula.phases[0]!.lines;
    lines[1]!.note = 'last';
    lines[2]!.note = 'dissolve first';
    const swapped = swapLines(formula, old.id, other, 'as it was');
    expect(ppmOf(swapped.content, other)).toEqual([13_000]);
    expect(swapped).toMatchObject({ merged: 1, lines: 1 });
    expect(formulaLines(swapped.content)[1]?.note).toBe('last; dissolve first');
  });

  it('stays on two lines in two phases, and says so', () => {
    const formula = content([
      phase([[old, 1]]),
      phase([
        [other, 0.3],
        [water, 98.7],
      ]),
    ]);
    const swap = { from: old, to: other, dose: 'as it was', holdHlb: false } as const;
    const { notes, content: after } = swapInFormula(
      { content: formula, materials: { [old.id]: old, [other.id]: other, [water.id]: water } },
      swap,
    );
    expect(ppmOf(after, other)).toEqual([10_000, 3_000]);
    expect(notes).toEqual(['Other is now on 2 lines, in different phases.']);
  });

  it('keeps the q.s. mark of a line that it takes over, also when two become one', () => {
    const formula = withQs([[other, 0.5]]);
    const { content: after } = swapLines(formula, water.id, other, 'as it was');
    expect(formulaLines(after)).toMatchObject([{ materialId: other.id, toHundred: true }]);
    expect(formulaShares(after).totalPpm).toBe(1_000_000);
  });
});

describe('emulsifiers moved to hold an HLB', () => {
  it('a pair is what the closed form says', () => {
    const [high, low] = [emulsifier('High', 16), emulsifier('Low', 4)];
    const formula = content([
      phase([
        [high, 2],
        [low, 2],
      ]),
    ]);
    const { content: after, moved } = holdHlb(formula, { [high.id]: high, [low.id]: low }, 13);
    // x = (13 − 4) / (16 − 4) = 0.75 of 4 %.
    expect(moved).toBe(true);
    expect([ppmOf(after, high), ppmOf(after, low)]).toEqual([[30_000], [10_000]]);
  });

  it('reaches the ends of what is offered', () => {
    const [high, middle, low] = [emulsifier('High', 16), emulsifier('Middle', 9), emulsifier('Low', 4)];
    const formula = content([
      phase([
        [high, 2],
        [middle, 3],
        [low, 1],
      ]),
    ]);
    const byId = { [high.id]: high, [middle.id]: middle, [low.id]: low };
    for (const [target, at] of [
      [16, high],
      [4, low],
    ] as const) {
      const { content: after, failed } = holdHlb(formula, byId, target);
      expect(failed).toBeNull();
      expect(ppmOf(after, at)).toEqual([60_000]);
    }
  });

  it('says so where it cannot be reached', () => {
    const one = emulsifier('One', 10);
    const { failed } = holdHlb(content([phase([[one, 3]])]), { [one.id]: one }, 12);
    expect(failed).toContain('HLB 12.0 cannot be reached');
  });

  it('whatever the emulsifiers, the total stays and the mean is the target, or it is said that it cannot be', () => {
    const arbitrary = fc.array(fc.tuple(fc.integer({ min: 20, max: 180 }), fc.integer({ min: 1, max: 50 })), {
      minLength: 1,
      maxLength: 5,
    });
    fc.assert(
      fc.property(arbitrary, fc.integer({ min: 20, max: 180 }), (rows, tenths) => {
        const materials = rows.map(([hlb], at) => emulsifier(`E${at}`, hlb / 10));
        const formula = content([phase(rows.map(([, percent], at) => [materials[at]!, percent / 10]))]);
        const byId = Object.fromEntries(materials.map((one) => [one.id, one]));
        const target = tenths / 10;
        const { content: after, failed } = holdHlb(formula, byId, target);
        const lines = formulaLines(after);
        const total = lines.reduce((sum, { ppm }) => sum + ppm, 0);
        expect(total).toBe(formulaLines(formula).reduce((sum, { ppm }) => sum + ppm, 0));
        expect(lines.every(({ ppm }) => ppm >= 0)).toBe(true);
        const hlbs = rows.map(([hlb]) => hlb / 10);
        const inside = target >= Math.min(...hlbs) && target <= Math.max(...hlbs);
        const mean =
          lines.reduce((sum, { ppm, materialId }) => sum + ppm * (hlbOf(byId[materialId]!) ?? 0), 0) / total;
        if (inside && rows.length > 1 && new Set(hlbs).size > 1) expect(failed).toBeNull();
        if (failed === null) expect(Math.abs(mean - target)).toBeLessThanOrEqual(HELD_WITHIN + 1e-3);
      }),
      { numRuns: 1000 },
    );
  });

  it('a swapped emulsifier leaves the match of offered to required HLB where it was', () => {
    const oil = make('Oil', 'Paraffinum Liquidum', {
      functions: ['emollient'],
      phaseOfUse: 'oil',
      figures: { requiredHlbOw: figure(10) },
    });
    const [high, low, next] = [emulsifier('High', 15), emulsifier('Low', 5), emulsifier('Next', 17)];
    const formula = content([
      phase([
        [oil, 20],
        [high, 2],
        [low, 2],
        [water, 76],
      ]),
    ]);
    const materials = Object.fromEntries([oil, high, low, water].map((one) => [one.id, one]));
    const swap = { from: high, to: next, dose: 'as it was', holdHlb: true } as const;
    const { content: after, notes } = swapInFormula({ content: formula, materials }, swap);
    const [a, b] = [ppmOf(after, next)[0] ?? 0, ppmOf(after, low)[0] ?? 0];
    expect(a + b).toBe(40_000);
    expect(Math.abs((17 * a + 5 * b) / (a + b) - 10)).toBeLessThanOrEqual(HELD_WITHIN);
    expect(notes[0]).toContain('hold HLB 10.0');
  });
});

describe('candidates', () => {
  const row = (name: string, part: Partial<MaterialRow>): MaterialRow => ({
    ...{ id: name, tradeName: name, code: '', charge: null, architecture: null, emulsionType: null },
    ...{ functions: ['emulsifier'], phaseOfUse: 'oil', form: null, consistency: null, origin: null },
    ...{
      status: 'in use',
      withdrawnOn: '',
      photo: null,
      inci: name,
      supplier: '',
      keepFrom: [],
      hlb: null,
      requiredHlbOw: null,
    },
    ...{ meltingPoint: null, pricePerKg: null, currency: null, updatedAt: '', ...part },
  });
  const from = { ...swapFacts(emulsifier('From', 11)), phaseOfUse: 'oil' as const };

  it('come nearest first by charge and HLB; what shares no function, is put aside or withdrawn is none', () => {
    const found = swapCandidates(from, [
      row('far', { charge: 'non-ionic', hlb: 4 }),
      row('near', { charge: 'non-ionic', hlb: 11.5 }),
      row('anionic', { charge: 'anionic', hlb: 11 }),
      row('oil', { functions: ['emollient'] }),
      row('gone', { charge: 'non-ionic', hlb: 11, status: 'archived' }),
      row('recalled', { charge: 'non-ionic', hlb: 11, withdrawnOn: '2026-07-31' }),
    ]);
    expect(found.map((one) => one.row.id)).toEqual(['near', 'anionic', 'far']);
    expect(found[0]?.hlbStep).toBeCloseTo(0.5, 9);
  });
});
