import fc from 'fast-check';
import type { FormulaContent } from '@core/formulas/formula';
import { formulaLines, formulaShares } from '@core/formulas/shares';
import type { MaterialRow } from '@core/materials/list';
import { swapCandidates, swapFacts } from '@core/swap/candidates';
import { HELD_WITHIN, holdHlb } from '@core/swap/hold-hlb';
import { holds, swapInFormula } from '@core/swap/swap-formula';
import { SWAP_DOSES, swapLines } from '@core/swap/swap-lines';
import { describe, expect, it } from 'vitest';
import { content, figure, make, nextId, phase } from '../checks/build';

const emulsifier = (name: string, hlb: number) =>
  make(name, name, { functions: ['emulsifier'], charge: 'non-ionic', figures: { hlb: figure(hlb) } });

/** Solves a·x = b of two unknowns; null where it has no single answer. */
function solved2([a, b, c, d]: number[], [e, f]: number[]): [number, number] | null {
  const det = a! * d! - b! * c!;
  return Math.abs(det) < 1e-9 ? null : [(e! * d! - b! * f!) / det, (a! * f! - e! * c!) / det];
}

/**
 * The least sum of squares by which shares move to a mean at their total, by trying every set of those that are taken
 * out: on each, the nearest point of the two planes. Null where no set has one.
 */
function leastMove(hlbs: readonly number[], shares: readonly number[], target: number): number | null {
  const total = shares.reduce((sum, one) => sum + one, 0);
  let best: number | null = null;
  for (let mask = 1; mask < 1 << hlbs.length; mask += 1) {
    const on = hlbs.map((_, at) => Boolean(mask & (1 << at)));
    const sum = (of: (at: number) => number): number =>
      hlbs.reduce((all, _, at) => all + (on[at] ? of(at) : 0), 0);
    const [n, h, hh] = [sum(() => 1), sum((at) => hlbs[at]!), sum((at) => hlbs[at]! ** 2)];
    const short = total - sum((at) => shares[at]!);
    const moment = target * total - sum((at) => hlbs[at]! * shares[at]!);
    const one = solved2([n, h, h, hh], [short, moment]);
    const step = one ?? (Math.abs(h / n - target) < 1e-9 ? [short / n, 0] : null);
    if (!step) continue;
    const found = shares.map((share, at) => (on[at] ? share + step[0]! + step[1]! * hlbs[at]! : 0));
    if (found.some((share) => share < -1e-6)) continue;
    const moved = found.reduce((all, share, at) => all + (share - shares[at]!) ** 2, 0);
    if (best === null || moved < best) best = moved;
  }
  return best;
}

describe('emulsifiers moved to hold an HLB', () => {
  const some = fc.uniqueArray(
    fc.tuple(fc.integer({ min: 20, max: 180 }), fc.integer({ min: 100, max: 5_000 })),
    { minLength: 2, maxLength: 5, selector: ([hlb]) => hlb },
  );

  it('move as little as any shares that reach it: least squares, against every way of taking some out', () => {
    fc.assert(
      fc.property(some, fc.integer({ min: 0, max: 100 }), (rows, part) => {
        const hlbs = rows.map(([hlb]) => hlb / 10);
        const shares = rows.map(([, ppm]) => 10 * ppm);
        const [low, high] = [Math.min(...hlbs), Math.max(...hlbs)];
        const target = low + ((high - low) * part) / 100;
        const materials = rows.map((_, at) => emulsifier(`E${at}`, hlbs[at]!));
        const formula = content([phase(materials.map((one, at) => [one, shares[at]! / 10_000]))]);
        const held = holdHlb(formula, Object.fromEntries(materials.map((one) => [one.id, one])), target);
        expect(held.failed).toBeNull();
        if (!held.moved) return;
        const after = formulaLines(held.content).map(({ ppm }) => ppm);
        const moved = Math.sqrt(after.reduce((sum, ppm, at) => sum + (ppm - shares[at]!) ** 2, 0));
        const least = Math.sqrt(leastMove(hlbs, shares, target) ?? NaN);
        // Shares are rounded to 0.01 %, 100 ppm, where that still holds the HLB.
        expect(moved).toBeLessThanOrEqual(least + 100 * Math.sqrt(hlbs.length));
      }),
      { numRuns: 150 },
    );
  });

  it('leave all else alone, and move nothing the second time', () => {
    const oil = make('Oil', 'Squalane');
    fc.assert(
      fc.property(some, fc.integer({ min: 0, max: 100 }), (rows, part) => {
        const hlbs = rows.map(([hlb]) => hlb / 10);
        const target = Math.min(...hlbs) + ((Math.max(...hlbs) - Math.min(...hlbs)) * part) / 100;
        const materials = [oil, ...rows.map((_, at) => emulsifier(`E${at}`, hlbs[at]!))];
        const byId = Object.fromEntries(materials.map((one) => [one.id, one]));
        const formula = content([
          phase(materials.map((one, at) => [one, at === 0 ? 20 : rows[at - 1]![1] / 1000])),
        ]);
        const { content: after } = holdHlb(formula, byId, target);
        expect(formulaLines(after)[0]).toEqual(formulaLines(formula)[0]);
        expect(formulaShares(after).totalPpm).toBe(formulaShares(formula).totalPpm);
        expect(holdHlb(after, byId, target).moved).toBe(false);
      }),
      { numRuns: 100 },
    );
  });

  it('are none where no HLB can be averaged: ionics, polymers, and a line that is q.s.', () => {
    const ionic = make('Soap', 'Sodium Stearate', {
      ...{ functions: ['emulsifier'], charge: 'anionic' },
      figures: { hlb: figure(18) },
    });
    const formula = content([phase([[ionic, 3]])]);
    expect(holdHlb(formula, { [ionic.id]: ionic }, 12).failed).toBe(
      'no emulsifier is left whose HLB can be averaged',
    );
    const one = emulsifier('One', 12);
    const filling = content([phase([[one, 3]])]);
    filling.phases[0]!.lines[0]!.toHundred = true;
    expect(holdHlb(filling, { [one.id]: one }, 12).failed).toContain('no emulsifier is left');
    // Within a tenth it counts as held: published values are not known closer.
    expect(holdHlb(formula, { [ionic.id]: one }, 12 + HELD_WITHIN)).toMatchObject({
      moved: false,
      failed: null,
    });
  });
});

const shelf = Array.from({ length: 4 }, (_, at) => make(`M${at}`, 'Glycerin'));
/** Formulas over three phases, with one material perhaps on several lines, and perhaps a q.s. line. */
const formulas = fc
  .record({
    lines: fc.array(
      fc.record({ of: fc.nat(3), ppm: fc.integer({ min: 1, max: 90_000 }), phase: fc.nat(2) }),
      { minLength: 1, maxLength: 8 },
    ),
    filling: fc.boolean(),
  })
  .map(({ lines, filling }): FormulaContent => {
    const formula = content([phase([]), phase([]), phase([])]);
    lines.forEach(({ of, ppm, phase: at }, index) =>
      formula.phases[at]!.lines.push({
        ...{ id: nextId(), materialId: shelf[of]!.id, ppm, note: '' },
        toHundred: filling && index === 0,
      }),
    );
    return formula;
  });
const [from, to] = [shelf[0]!, shelf[1]!];

describe('a material put in the place of another', () => {
  it('leaves none of the old one, takes all of its share as it was, and the whole stays the whole', () => {
    fc.assert(
      fc.property(formulas, (formula) => {
        const { content: after } = swapLines(formula, from.id, to, 'as it was');
        expect(holds(after, from.id)).toBe(false);
        const share = (of: FormulaContent, id: string): number => {
          const { byLine } = formulaShares(of);
          return formulaLines(of).reduce(
            (sum, line) => sum + (line.materialId === id ? byLine.get(line.id)! : 0),
            0,
          );
        };
        expect(share(after, to.id)).toBe(share(formula, from.id) + share(formula, to.id));
        expect(formulaShares(after).totalPpm).toBe(formulaShares(formula).totalPpm);
        for (const other of shelf.slice(2)) expect(share(after, other.id)).toBe(share(formula, other.id));
      }),
    );
  });

  it('touches no phase in which the old one does not stand', () => {
    fc.assert(
      fc.property(formulas, fc.constantFrom(...SWAP_DOSES), (formula, dose) => {
        const { content: after } = swapLines(formula, from.id, to, dose);
        formula.phases.forEach((one, at) => {
          if (!one.lines.some(({ materialId }) => materialId === from.id))
            expect(after.phases[at]).toEqual(one);
          else
            expect(after.phases[at]!.lines.filter(({ materialId }) => materialId === to.id)).toHaveLength(1);
        });
      }),
    );
  });

  it('comes to its range, whatever it takes the place of, over several lines in their proportion', () => {
    const usage = {
      minPpm: 3_000,
      typicalPpm: 8_000,
      maxPpm: 10_000,
      provenance: 'supplier',
      source: '',
    } as const;
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 1, max: 30_000 }), { minLength: 1, maxLength: 3 }), (shares) => {
        const formula = content(shares.map((ppm) => phase([[from, ppm / 10_000]])));
        const ranged = { id: to.id, usage };
        const was = shares.reduce((sum, one) => sum + one, 0);
        const wanted = Math.min(10_000, Math.max(3_000, was));
        const lines = formulaLines(swapLines(formula, from.id, ranged, 'within its range').content);
        expect(lines.reduce((sum, { ppm }) => sum + ppm, 0)).toBe(wanted);
        lines.forEach(({ ppm }, at) => expect(Math.abs(ppm - (shares[at]! * wanted) / was)).toBeLessThan(1));
        const usual = formulaLines(swapLines(formula, from.id, ranged, 'its usual share').content);
        expect(usual.reduce((sum, { ppm }) => sum + ppm, 0)).toBe(8_000);
      }),
    );
  });

  it('says where the lines come to no whole, or leave nothing for q.s.', () => {
    const strong = make('Strong', 'Urea', {
      usage: { minPpm: 0, typicalPpm: 20_000, maxPpm: 30_000, provenance: 'supplier', source: '' },
    });
    const water = make('Water', 'Aqua');
    const materials = { [from.id]: from, [water.id]: water, [strong.id]: strong };
    const formula = content([
      phase([
        [from, 1],
        [water, 99],
      ]),
    ]);
    const swap = { from, to: strong, dose: 'its usual share', holdHlb: false } as const;
    expect(swapInFormula({ content: formula, materials }, swap).notes).toEqual([
      'The lines no longer come to 100 %: 101.00 %. Distribute the rest, or mark a line q.s.',
    ]);
    const qs = structuredClone(formula);
    qs.phases[0]!.lines.push({ id: nextId(), materialId: shelf[2]!.id, ppm: 0, toHundred: true, note: '' });
    expect(swapInFormula({ content: qs, materials }, swap).notes).toEqual([
      'Nothing is left for the q.s. line: lower another share.',
    ]);
  });
});

describe('candidates for a place', () => {
  const row = (id: string, part: Partial<MaterialRow>): MaterialRow => ({
    ...{ id, tradeName: id, code: '', charge: null, architecture: null, emulsionType: null },
    ...{ functions: ['emulsifier'], phaseOfUse: null, form: null, consistency: null, origin: null },
    ...{
      status: 'in use',
      withdrawnOn: '',
      photo: null,
      inci: id,
      supplier: '',
      keepFrom: [],
      hlb: null,
      requiredHlbOw: null,
    },
    ...{ meltingPoint: null, pricePerKg: null, currency: null, updatedAt: '', ...part },
  });
  const rows = fc.array(
    fc.record({
      hlb: fc.option(fc.integer({ min: 1, max: 20 })),
      charge: fc.constantFrom(null, 'non-ionic', 'anionic'),
      status: fc.constantFrom('in use', 'in use', 'archived'),
      functions: fc.constantFrom<MaterialRow['functions'][]>(
        ['emulsifier'],
        ['emulsifier', 'thickener'],
        ['active'],
      ),
    }),
    { maxLength: 8 },
  );
  const wanted = swapFacts(emulsifier('From', 11));

  it('are the same in whatever order the shelf is read; none archived, none without its function, never itself', () => {
    fc.assert(
      fc.property(rows, (parts) => {
        const all = parts.map((part, at) => row(`R${at}`, part as Partial<MaterialRow>));
        const found = swapCandidates(wanted, [...all, row(wanted.id, { charge: 'non-ionic', hlb: 11 })]);
        expect(swapCandidates(wanted, [...all].reverse()).map((one) => one.row.id)).toEqual(
          found.map((one) => one.row.id),
        );
        const expected = all.filter(
          ({ status, functions }) => status !== 'archived' && functions.includes('emulsifier'),
        );
        expect(found.map((one) => one.row.id).sort()).toEqual(expected.map(({ id }) => id).sort());
      }),
    );
  });

  it('say the step of HLB, the step of price in one currency, and what both hold', () => {
    const own = {
      ...wanted,
      ...{ pricePerKg: 1_000, currency: 'EUR' as const, inci: 'Glyceryl Stearate, PEG-100 Stearate' },
    };
    const [found] = swapCandidates(own, [
      row('A', {
        ...{ hlb: 12.5, pricePerKg: 1_250, currency: 'EUR', charge: 'anionic' },
        inci: 'PEG-100 STEARATE, Cetyl Alcohol',
      }),
    ]);
    expect(found).toMatchObject({ hlbStep: 1.5, priceRatio: 0.25, substances: ['PEG-100 STEARATE'] });
    expect(found!.differs).toContain('charge: anionic');
    const [other] = swapCandidates(own, [row('B', { pricePerKg: 1_250, currency: 'USD' })]);
    expect(other).toMatchObject({ hlbStep: null, priceRatio: null });
  });
});
