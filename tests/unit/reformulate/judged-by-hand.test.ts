import { NO_LAW } from '@core/limits/law';
import { formulaLines } from '@core/formulas/shares';
import type { Material } from '@core/materials/material';
import { DEMANDS } from '@core/reformulate/demand-rows';
import { fieldOf } from '@core/reformulate/field';
import { costOf, judgedDemands, originOf } from '@core/reformulate/judge';
import { roundedShares } from '@core/reformulate/rounded';
import { reformulateWish, type ReformulateWish } from '@core/reformulate/wish';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { over, raw, type Facts } from './small-shelf';

/* The judge holds an answer against every demand by its shares alone: no solver is asked here. Costs in cents per kg. */
const water = raw('Pump water', 'Aqua', ['solvent'], { cost: 0, origin: 1 });
const humectant = (name: string, facts: Facts): Material =>
  raw(name, name, ['humectant'], { use: [1, 40], ...facts });
const dear = humectant('Propanediol', { cost: 900, origin: 0 });
const cheap = humectant('Glycerin', { cost: 300, origin: 1 });
const formula = over(water, [
  [dear, 10],
  [cheap, 10],
]);

function judged(
  wish: Partial<ReformulateWish>,
  percents: readonly [water: number, dear: number, cheap: number],
) {
  const ids = new Set(formulaLines(formula).map(({ materialId }) => materialId));
  const materials = [water, dear, cheap];
  const field = fieldOf({
    ...{ content: formula, materials: materials.filter(({ id }) => ids.has(id)), candidates: materials },
    ...{ law: NO_LAW, onDay: '2026-11-28', currency: 'EUR', wish: reformulateWish.parse(wish) },
  });
  const shares = new Map(
    materials.map((one, at) => [
      field.players.find(({ material }) => material.id === one.id)!,
      percents[at]!,
    ]),
  );
  return { field, shares, demands: judgedDemands(field, shares) };
}
const broken = (...asked: Parameters<typeof judged>): string[] =>
  [
    ...new Set(
      judged(...asked)
        .demands.filter((one) => one.broken)
        .map(({ demand }) => demand),
    ),
  ].sort();

describe('an answer, judged by hand', () => {
  it('as the formula stands breaks nothing where nothing is asked', () => {
    expect(broken({}, [80, 10, 10])).toEqual([]);
  });

  it('costs what its shares cost, and is natural by what of it is: 120 cents, 90 % and 50 % without the water', () => {
    const { shares } = judged({}, [80, 10, 10]);
    expect(costOf(shares)).toBeCloseTo(120, 9);
    expect(originOf(shares, true)).toBeCloseTo(90, 9);
    expect(originOf(shares, false)).toBeCloseTo(50, 9);
  });

  it.each<[string, Partial<ReformulateWish>, [number, number, number], string[]]>([
    ['short of 100 %', {}, [79, 10, 10], ['whole']],
    ['a cent too dear', { costAtMost: 119 }, [80, 10, 10], [DEMANDS.cost]],
    ['just cheap enough', { costAtMost: 120 }, [80, 10, 10], []],
    ['not natural enough', { originAtLeast: 91 }, [80, 10, 10], [DEMANDS.origin]],
    ['natural enough with its water', { originAtLeast: 90 }, [80, 10, 10], []],
    ['not so without it', { originAtLeast: 90, originWithWater: false }, [80, 10, 10], [DEMANDS.origin]],
    ['its humectants at the end of their room', { groupsWithin: 25 }, [75, 15, 10], []],
    ['its humectants beyond it', { groupsWithin: 25 }, [74.9, 15.1, 10], [DEMANDS.groups]],
    ['within its room and ranges', {}, [80.5, 9.7, 9.8], []],
    [
      'a material under a per cent where that is its least',
      { groupsWithin: 100 },
      [80, 19.1, 0.9],
      [DEMANDS.ranges],
    ],
    ['the same where ranges need not be kept', { groupsWithin: 100, keepRanges: false }, [80, 19.1, 0.9], []],
  ])('%s', (_, wish, percents, demands) => {
    expect(broken(wish, percents)).toEqual(demands);
  });

  it('with a locked line moved is broken, however little', () => {
    const locked = [formula.phases[0]!.lines[0]!.id];
    expect(broken({ locked }, [80, 10, 10])).toEqual([]);
    expect(broken({ locked }, [80, 9.99, 10.01])).toEqual([DEMANDS.locked]);
  });

  it('that still holds what was barred says of which material', () => {
    const { demands } = judged({ withoutSubstances: ['Propanediol'] }, [80, 10, 10]);
    const found = demands.filter((one) => one.broken);
    expect(found.map(({ says }) => says)).toEqual(['Propanediol is still there']);
  });

  it('says what it comes to beside what was asked', () => {
    const says = judged({ costAtMost: 100, originAtLeast: 95 }, [80, 10, 10]).demands.map((one) => one.says);
    expect(says).toContain('€1.20 of at most €1.00 per kg');
    expect(says).toContain('90 % of at least 95 %');
    expect(says).toContain('humectants 20 %, asked from 15 to 25 %');
  });
});

describe('an answer, rounded', () => {
  it('comes to 100 % to the ppm, breaks nothing, and leaves alone what did not move', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 49_999 }), (less) => {
        const down = less / 10_000;
        const { field, shares } = judged({}, [80 + down, 10 - down, 10]);
        const ppm = roundedShares(field, shares);
        const percent = new Map([...ppm].map(([player, one]) => [player, one / 10_000]));
        expect([...ppm.values()].reduce((sum, one) => sum + one, 0)).toBe(1_000_000);
        expect(judgedDemands(field, percent).filter((one) => one.broken)).toEqual([]);
        const still = [...ppm].find(([{ material }]) => material.id === cheap.id);
        expect(still?.[1]).toBe(100_000);
      }),
      { numRuns: 30 },
    );
  });
});
