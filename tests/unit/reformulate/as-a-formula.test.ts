import fc from 'fast-check';
import type { FormulaContent } from '@core/formulas/formula';
import { formulaLines, formulaShares } from '@core/formulas/shares';
import type { Reformulation } from '@core/reformulate/reformulate';
import { reformulated } from '@core/reformulate/reformulated';
import { roleOf } from '@core/reformulate/roles';
import { reformulateWish } from '@core/reformulate/wish';
import { describe, expect, it } from 'vitest';
import { content, make, nextId, phase } from '../checks/build';
import { ask, over, raw } from './small-shelf';

type Share = Reformulation['shares'][number];

const own = Array.from({ length: 6 }, (_, at) => make(`Own ${at}`, 'Glycerin'));
const fresh = Array.from({ length: 3 }, (_, at) => make(`New ${at}`, 'Glycerin'));

/** Splits a million parts by weights, the rest to the first. */
function wholeOf(weights: readonly number[]): number[] {
  const all = weights.reduce((sum, one) => sum + one, 0);
  const parts = weights.map((one) => Math.floor((one / all) * 1_000_000));
  parts[0] = (parts[0] ?? 0) + 1_000_000 - parts.reduce((sum, one) => sum + one, 0);
  return parts;
}

/** A formula of some lines over two phases, materials that may repeat, one line q.s.; and an answer over them. */
const answered = fc
  .record({
    lines: fc.array(
      fc.record({
        of: fc.nat(own.length - 1),
        weight: fc.integer({ min: 1, max: 900 }),
        second: fc.boolean(),
      }),
      { minLength: 2, maxLength: 9 },
    ),
    filling: fc.boolean(),
    next: fc.array(fc.nat(500), { minLength: own.length, maxLength: own.length }),
    come: fc.array(fc.nat(300), { minLength: fresh.length, maxLength: fresh.length }),
  })
  .map(({ lines, filling, next, come }) => {
    const parts = wholeOf(lines.map(({ weight }) => weight));
    const formula: FormulaContent = content([phase([]), phase([])]);
    lines.forEach(({ of, second }, at) => {
      const toHundred = filling && at === 0;
      formula.phases[second ? 1 : 0]!.lines.push({
        ...{ id: nextId(), materialId: own[of]!.id, note: `line ${at}` },
        ...{ ppm: toHundred ? 0 : parts[at]!, toHundred },
      });
    });
    const used = own.filter(({ id }) => formulaLines(formula).some(({ materialId }) => materialId === id));
    const { byLine } = formulaShares(formula);
    const was = (id: string): number =>
      formulaLines(formula).reduce((sum, one) => sum + (one.materialId === id ? byLine.get(one.id)! : 0), 0);
    const is = wholeOf([
      // The material of the q.s. line stays: it is what fills up.
      ...used.map(({ id }, at) => Math.max(id === own[lines[0]!.of]!.id ? 1 : 0, next[at]!)),
      ...come,
    ]);
    const shares: Share[] = [...used, ...fresh].map(({ id }, at) => ({
      ...{ materialId: id, was: was(id), is: is[at]! },
      role: at % 2 === 0 ? 'humectants' : 'actives',
    }));
    return { formula, shares };
  });

describe('an answer as a formula', () => {
  it('comes to 100 %, and to the answer’s share of each material', () => {
    fc.assert(
      fc.property(answered, ({ formula, shares }) => {
        const after = reformulated(formula, { shares }, nextId);
        const sums = formulaShares(after);
        expect(sums.totalPpm).toBe(1_000_000);
        for (const { materialId, is } of shares) {
          const lines = formulaLines(after).filter((one) => one.materialId === materialId);
          expect(lines.reduce((sum, one) => sum + sums.byLine.get(one.id)!, 0)).toBe(is);
        }
      }),
      { numRuns: 150 },
    );
  });

  it('keeps each line’s note and place, and the proportion of lines of one material to the ppm', () => {
    fc.assert(
      fc.property(answered, ({ formula, shares }) => {
        const after = reformulated(formula, { shares }, nextId);
        const [before, now] = [formulaShares(formula).byLine, formulaShares(after).byLine];
        formula.phases.forEach(({ lines }, at) => {
          const ids = new Set(lines.map(({ id }) => id));
          const kept = after.phases[at]!.lines.filter(({ id }) => ids.has(id));
          expect(kept.map(({ id }) => id)).toEqual(lines.map(({ id }) => id).filter((id) => now.has(id)));
          for (const line of kept) {
            const { was, is } = shares.find(({ materialId }) => materialId === line.materialId)!;
            expect(line.note).toBe(lines.find(({ id }) => id === line.id)!.note);
            expect(Math.abs(now.get(line.id)! - (before.get(line.id)! * is) / was)).toBeLessThan(1);
          }
        });
      }),
      { numRuns: 150 },
    );
  });

  it('changes nothing where the answer is the formula, and the same again changes nothing more', () => {
    fc.assert(
      fc.property(answered, ({ formula, shares }) => {
        const same = shares.map((one) => ({ ...one, is: one.was }));
        expect(formulaShares(reformulated(formula, { shares: same }, nextId)).byLine).toEqual(
          formulaShares(formula).byLine,
        );
        const after = reformulated(formula, { shares }, nextId);
        const settled = shares.map((one) => ({ ...one, was: one.is }));
        const { byLine } = formulaShares(after);
        expect(formulaShares(reformulated(after, { shares: settled }, nextId)).byLine).toEqual(byLine);
      }),
      { numRuns: 100 },
    );
  });

  it('puts what is new where most of what does the same stands', () => {
    const [a, b, c, d] = own as [(typeof own)[0], (typeof own)[0], (typeof own)[0], (typeof own)[0]];
    const formula = content([
      phase([
        [a, 60],
        [b, 1],
      ]),
      phase([
        [c, 9],
        [d, 30],
      ]),
    ]);
    const role = ['solvents', 'actives', 'actives', 'oils'];
    const shares: Share[] = [a, b, c, d].map(({ id }, at) => ({
      ...{ materialId: id, was: [600_000, 10_000, 90_000, 300_000][at]! },
      ...{ is: [600_000, 10_000, 80_000, 300_000][at]!, role: role[at]! },
    }));
    shares.push({ materialId: fresh[0]!.id, was: 0, is: 10_000, role: 'actives' });
    const after = reformulated(formula, { shares }, nextId);
    expect(after.phases[1]!.lines.at(-1)).toMatchObject({ materialId: fresh[0]!.id, ppm: 10_000 });
    expect(after.phases[0]!.lines).toHaveLength(2);
  });
});

describe('what a material is in a formula for', () => {
  it.each([
    ['water', raw('Water', 'Aqua', ['solvent'])],
    ['water', raw('Water', 'Water (Aqua)', [])],
    ['emulsifiers', raw('An oily emulsifier', 'Polysorbate 60', ['emollient', 'emulsifier'])],
    ['oils', raw('Oil', 'Squalane', ['emollient'], { parts: { phaseOfUse: 'oil' } })],
    ['co-emulsifiers and body', raw('Alcohol', 'Cetearyl Alcohol', ['co-emulsifier'])],
    ['preservatives', raw('P', 'Phenoxyethanol', ['solvent', 'preservative'])],
    [
      'fragrance',
      raw('F', 'Lavandula Angustifolia Oil', ['fragrance', 'emollient'], { parts: { phaseOfUse: 'oil' } }),
    ],
    ['UV filters', raw('U', 'Octocrylene', ['uv filter', 'emollient'], { parts: { phaseOfUse: 'oil' } })],
    ['actives', raw('A', 'Tocopherol', ['active', 'emollient'], { parts: { phaseOfUse: 'oil' } })],
    ['pH aids', raw('B', 'Sodium Hydroxide', ['base'])],
    ['others', raw('Powder', 'Talc', ['solvent'])],
    ['others', raw('Nothing said', 'Talc', [])],
  ])('%s', (role, material) => {
    expect(roleOf(material)).toBe(role);
  });
});

describe('what is asked', () => {
  it.each([
    [{ costAtMost: 0 }, 'A cost is above zero.'],
    [{ costAtMost: 'cheap' }, 'Write the cost as a number.'],
    [{ originAtLeast: -1 }, 'The natural origin cannot be negative.'],
    [{ originAtLeast: 101 }, 'The natural origin is 100 at most.'],
    [{ hlbWithin: 21 }, 'The HLB band is 20 at most.'],
    [{ phWithin: 'wide' }, 'The acid and base band must be a number.'],
    [{ groupsWithin: 101 }, 'The groups’ room is 100 at most.'],
  ])('%o is refused in words', (wish, message) => {
    expect(reformulateWish.safeParse(wish).error?.issues.map((one) => one.message)).toEqual([message]);
  });

  it('is little where nothing is said: what keeps the formula what it is', () => {
    expect(reformulateWish.parse({})).toMatchObject({
      ...{ costAtMost: null, originAtLeast: null, hlbWithin: 1, groupsWithin: 25 },
      ...{ keepRanges: true, keepLaw: true, withoutSubstances: [], locked: [] },
    });
  });

  it('is refused of a formula whose material is gone, and of one that passes 100 %', async () => {
    const water = raw('Water', 'Aqua', ['solvent']);
    const gone = raw('Gone', 'Glycerin', ['humectant'], { use: [0, 10] });
    await expect(ask(over(water, [[gone, 5]]), [water], {})).rejects.toThrow(
      'A line names a material that is no longer in the library.',
    );
    await expect(ask(over(water, [[gone, 104]]), [water, gone], {})).rejects.toThrow(
      'does not come to 100 %',
    );
  });
});
