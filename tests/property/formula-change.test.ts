import fc from 'fast-check';
import { distributed, scaledGroup } from '@core/formulas/change/adjust-shares';
import { compareVersions } from '@core/formulas/compare-versions';
import type { FormulaContent, FormulaLine } from '@core/formulas/formula';
import { formulaLines, formulaShares } from '@core/formulas/shares';
import { Problem } from '@core/problems/problem';
import { WHOLE_PPM } from '@core/quantities/share';
import { addLine, changeLine, markToHundred, moveLine, removeLine } from '@renderer/formulas/edits';
import { describe, expect, it } from 'vitest';
import { content, nextId } from '../unit/checks/build';

const MATERIALS = Array.from({ length: 8 }, nextId);

/** A formula of some lines in three phases; with a q.s. line or without. */
const someFormula = (toHundred: boolean): fc.Arbitrary<FormulaContent> =>
  fc
    .array(fc.tuple(fc.nat(2), fc.nat(MATERIALS.length - 1), fc.integer({ min: 0, max: 60_000 })), {
      minLength: 2,
      maxLength: 12,
    })
    .map((rows) => {
      const lines = rows.map(([phase, material, ppm], at) => ({
        phase,
        line: {
          id: nextId(),
          materialId: MATERIALS[material] ?? '',
          ppm,
          toHundred: toHundred && at === 0,
          note: '',
        } satisfies FormulaLine,
      }));
      return content(
        [0, 1, 2].map((at) => ({
          id: nextId(),
          title: '',
          temperatureC: null,
          lines: lines.filter(({ phase }) => phase === at).map(({ line }) => line),
        })),
      );
    });

type Edit = (formula: FormulaContent) => FormulaContent;
const pick = (formula: FormulaContent, at: number): string => {
  const lines = formulaLines(formula);
  return lines[at % Math.max(lines.length, 1)]?.id ?? '';
};
/** Whatever a maker does to the ledger. */
const someEdit: fc.Arbitrary<Edit> = fc.oneof(
  fc.tuple(fc.nat(20), fc.integer({ min: 0, max: 90_000 })).map(
    ([at, ppm]): Edit =>
      (formula) =>
        changeLine(pick(formula, at), { ppm })(formula),
  ),
  fc.tuple(fc.nat(20), fc.constantFrom<-1 | 1>(-1, 1)).map(
    ([at, by]): Edit =>
      (formula) =>
        moveLine(pick(formula, at), by)(formula),
  ),
  fc.nat(20).map((at): Edit => (formula) => {
    const id = pick(formula, at);
    return formulaLines(formula).find((line) => line.id === id)?.toHundred
      ? formula
      : removeLine(id)(formula);
  }),
  fc.nat(20).map(
    (at): Edit =>
      (formula) =>
        markToHundred(pick(formula, at), true)(formula),
  ),
  fc.nat(7).map(
    (material): Edit =>
      (formula) =>
        addLine(formula.phases[0]?.id ?? '', {
          ...{ id: nextId(), materialId: MATERIALS[material] ?? '', ppm: 7_777, toHundred: false, note: '' },
        })(formula),
  ),
);

/** The share of each material over all lines. */
function byMaterial(formula: FormulaContent): Map<string, number> {
  const { byLine } = formulaShares(formula);
  const sums = new Map<string, number>();
  for (const { id, materialId } of formulaLines(formula))
    sums.set(materialId, (sums.get(materialId) ?? 0) + (byLine.get(id) ?? 0));
  return new Map([...sums].filter(([, ppm]) => ppm !== 0).sort());
}

describe('edits of a formula', () => {
  it('leave exactly 1,000,000 ppm wherever one line is q.s.', () => {
    fc.assert(
      fc.property(someFormula(true), fc.array(someEdit, { maxLength: 15 }), (formula, edits) => {
        const after = edits.reduce((state, edit) => edit(state), formula);
        expect(formulaShares(after).totalPpm).toBe(WHOLE_PPM);
      }),
    );
  });

  it('a difference applied to the old shares gives the new ones', () => {
    fc.assert(
      fc.property(someFormula(true), fc.array(someEdit, { maxLength: 8 }), (before, edits) => {
        const after = edits.reduce((state, edit) => edit(state), before);
        // Told by the materials' ids, so that each difference says whose it is.
        const told = compareVersions(before, after, (id) => id).filter(({ area }) => area === 'line');
        const sums = byMaterial(before);
        const seen = new Set<string>();
        for (const { what, kind, changePpm = 0, before: was, after: is } of told) {
          const key = [what, kind, was, is].join();
          if (kind === 'moved') continue;
          seen.add(key);
          sums.set(what, (sums.get(what) ?? 0) + changePpm);
        }
        const applied = new Map([...sums].filter(([, ppm]) => ppm !== 0).sort());
        expect(applied).toEqual(byMaterial(after));
      }),
    );
  });
});

describe('adjusting shares', () => {
  it('distributing makes exactly 1,000,000 ppm and leaves the locked lines', () => {
    fc.assert(
      fc.property(someFormula(false), fc.array(fc.nat(11), { maxLength: 4 }), (formula, locks) => {
        const lines = formulaLines(formula);
        const locked = new Set(locks.flatMap((at) => lines[at]?.id ?? []));
        if (locked.size === lines.length) {
          expect(() => distributed(formula, locked)).toThrow(Problem);
          return;
        }
        const after = distributed(formula, locked);
        expect(formulaShares(after).totalPpm).toBe(WHOLE_PPM);
        for (const line of lines)
          if (locked.has(line.id))
            expect(formulaLines(after).find(({ id }) => id === line.id)?.ppm).toBe(line.ppm);
      }),
    );
  });

  it('a scaled group comes to what is asked, in its own proportions to the ppm', () => {
    fc.assert(
      fc.property(someFormula(true), fc.integer({ min: 0, max: 200_000 }), (formula, total) => {
        const lines = formulaLines(formula).filter(({ toHundred }) => !toHundred);
        const ids = lines.slice(0, 4).map(({ id }) => id);
        const others = lines.slice(4).reduce((sum, { ppm }) => sum + ppm, 0);
        if (others + total > WHOLE_PPM) return;
        const after = scaledGroup(formula, ids, total, new Set());
        const group = formulaLines(after).filter(({ id }) => ids.includes(id));
        expect(group.reduce((sum, { ppm }) => sum + ppm, 0)).toBe(total);
        expect(formulaShares(after).totalPpm).toBe(WHOLE_PPM);
        const was = lines.slice(0, 4).reduce((sum, { ppm }) => sum + ppm, 0);
        for (const line of group) {
          const before = lines.find(({ id }) => id === line.id)?.ppm ?? 0;
          const exact = was === 0 ? total / group.length : (before * total) / was;
          expect(Math.abs(line.ppm - exact)).toBeLessThan(1.000001);
        }
      }),
    );
  });
});
