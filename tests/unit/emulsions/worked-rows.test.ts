import fc from 'fast-check';
import { blendHlb } from '@core/emulsions/blend-hlb';
import { blendForTarget, partnerHlbFor } from '@core/emulsions/blend-two';
import { daviesHlb } from '@core/emulsions/davies';
import { DAVIES_GROUPS, DAVIES_REFUSED } from '@core/emulsions/davies-groups';
import { requiredHlb, type OilLine } from '@core/emulsions/required-hlb';
import { describe, expect, it } from 'vitest';
import { refusal } from '../working/refusal';

const oil = (
  name: string,
  mass: number,
  value: number | null,
  low: number | null = null,
  high = low,
): OilLine => ({
  name,
  mass,
  value,
  low,
  high,
  source: null,
});
const mineral = oil('Mineral oil', 30, 10.5);
const cetyl = oil('Cetyl alcohol', 10, 15.5);
const beeswax = oil('Beeswax', 5, null, 9, 12);
const squalane = oil('Squalane', 5, null);

describe('the required HLB of an oil phase', () => {
  it.each([
    ['one oil is its own', [mineral], 10.5, 10.5, 10.5, 100],
    ['two, by mass: (315 + 155) / 40', [mineral, cetyl], 11.75, 11.75, 11.75, 100],
    [
      'a range stands by its middle: (315 + 52.5) / 35',
      [mineral, beeswax],
      10.5,
      (315 + 45) / 35,
      (315 + 60) / 35,
      100,
    ],
    ['one without a value is left out: 30 of 35 are covered', [mineral, squalane], 10.5, 10.5, 10.5, 600 / 7],
    ['one of no mass counts for nothing', [mineral, oil('Cetyl alcohol', 0, 15.5)], 10.5, 10.5, 10.5, 100],
    ['a lone lower end is taken', [oil('Wax', 1, null, 9, null)], 9, 9, 9, 100],
    ['a value outside its own spread widens it', [oil('Wax', 1, 8, 9, 12)], 8, 8, 12, 100],
  ] as const)('%s', (_, oils, value, low, high, covered) => {
    const answer = requiredHlb(oils, 'o/w');
    expect(answer.worked.value).toBeCloseTo(value, 9);
    expect([answer.low, answer.high]).toEqual([expect.closeTo(low, 9), expect.closeTo(high, 9)]);
    expect(answer.coveredPercent).toBeCloseTo(covered, 9);
  });

  it('names what is left out, what is an estimate, and how far the sources leave it open', () => {
    const { worked, uncovered } = requiredHlb([mineral, beeswax, squalane], 'w/o');
    expect(uncovered).toEqual([{ name: 'Squalane', mass: 5 }]);
    const said = worked.cautions.join(' ');
    expect(said).toMatch(
      /Not counted, having no required HLB: Squalane\. The mean covers 87\.5 % of the oil phase\./,
    );
    expect(said).toMatch(/Beeswax: no single value is stated; 10\.5 from its range is an estimate\./);
    expect(said).toMatch(/Sources disagree/);
    expect(worked.steps[0]?.says).toContain('for w/o');
  });

  it('says nothing of a spread where there is none', () => {
    expect(requiredHlb([mineral], 'o/w').worked.cautions.join(' ')).not.toMatch(
      /disagree|estimate|Not counted/,
    );
  });

  it.each([
    ['no oils', [], /There are no oils/],
    ['oils that weigh nothing', [oil('Oil', 0, 10)], /All oils weigh nothing/],
    ['a mass below zero', [oil('Oil', -1, 10)], /Mass of Oil is −1/],
    ['a mass that is none', [oil('Oil', Number.NaN, 10)], /Mass of Oil is not a number/],
    [
      'only oils of which nothing is known',
      [squalane],
      /None of the oils has a required HLB for o\/w: Squalane/,
    ],
    ['an HLB off the scale', [oil('Oil', 1, 41)], /Required HLB of Oil is 41/],
    ['a lower end off the scale', [oil('Oil', 1, 10, -1, 12)], /Lowest required HLB of Oil is −1/],
    ['only a known oil of no mass', [oil('Known', 0, 10), squalane], /None of the oils has/],
  ] as const)('is refused for %s', (_, oils, says) => {
    refusal(() => requiredHlb(oils, 'o/w'), says);
  });
});

describe('two emulsifiers for a target', () => {
  it.each([
    // Sorbitan stearate 4.7 with polysorbate 60 14.9, and others of the trade.
    [10, 4.7, 14.9, 51.9608],
    [12, 4.3, 15, 71.9626],
    [8, 3.8, 16.9, 32.0611],
    [4.7, 4.7, 14.9, 0],
    [14.9, 4.7, 14.9, 100],
    [0, -1, 1, 50],
  ])('HLB %d of %d and %d takes %d %% of the higher one', (targetHlb, lowHlb, highHlb, percent) => {
    const blend = blendForTarget({ targetHlb, lowHlb, highHlb, total: 5 });
    expect(blend.highPercent).toBeCloseTo(percent, 3);
    expect(blend.highPercent + blend.lowPercent).toBeCloseTo(100, 9);
    expect((blend.highMass ?? 0) + (blend.lowMass ?? 0)).toBeCloseTo(5, 9);
    const mixed = blendHlb([
      { mass: blend.highMass ?? 0, hlb: highHlb },
      { mass: blend.lowMass ?? 0, hlb: lowHlb },
    ]);
    expect(mixed.value).toBeCloseTo(targetHlb, 9);
  });

  it.each([
    [
      16,
      4,
      15,
      /Target HLB 16 is 1 above what this pair reaches \(4 to 15\)/,
      /HLB 16 or more: at equal parts one of HLB 17/,
    ],
    [
      3,
      4,
      15,
      /Target HLB 3 is 1 below what this pair reaches \(4 to 15\)/,
      /HLB 3 or less: at equal parts one of HLB 2/,
    ],
    [1, 4, 15, /3 below/, /equal parts would need a partner off the scale/],
    [10, 15, 4, /The low HLB \(15\) is above the high one \(4\)/, /Swap/],
    [10, 8, 8, /Both emulsifiers have HLB 8, so any ratio gives 8/, /different HLB/],
  ])('HLB %d of %d and %d is refused, with what to do', (targetHlb, lowHlb, highHlb, says, advice) => {
    expect(refusal(() => blendForTarget({ targetHlb, lowHlb, highHlb }), says).advice).toMatch(advice);
  });

  it('needs a partner by the share of the kept one: (10 − 0.4 × 4) / 0.6 = 14', () => {
    expect(partnerHlbFor(10, 4, 40).value).toBeCloseTo(14, 9);
    expect(partnerHlbFor(10, 4, 0).value).toBe(10);
    refusal(() => partnerHlbFor(10, 4, 100), /No share is left/);
    refusal(() => partnerHlbFor(10, 4, 101), /Share of the kept one/);
  });

  it('the partner at a share, mixed at that share, has the target', () => {
    const hlb = fc.double({ min: 1, max: 18, noNaN: true });
    fc.assert(
      fc.property(hlb, hlb, fc.integer({ min: 1, max: 95 }), (target, kept, percent) => {
        const partner = partnerHlbFor(target, kept, percent).value;
        fc.pre(partner > -49 && partner < 99);
        const mixed = blendHlb([
          { mass: percent, hlb: kept },
          { mass: 100 - percent, hlb: partner },
        ]);
        expect(mixed.value).toBeCloseTo(target, 9);
      }),
    );
  });
});

describe('Davies’ numbers', () => {
  it('stand as printed in 1957 and in later copies', () => {
    // Davies 1957, Table I, from memory.
    const printed = {
      'sulfate-na': 38.7,
      'carboxylate-k': 21.1,
      'carboxylate-na': 19.1,
      'tertiary-amine': 9.4,
      'ester-sorbitan-ring': 6.8,
      ester: 2.4,
      'carboxylic-acid': 2.1,
      hydroxyl: 1.9,
      ether: 1.3,
      'hydroxyl-sorbitan-ring': 0.5,
      carbon: -0.475,
    } as const;
    for (const [id, number] of Object.entries(printed))
      expect(DAVIES_GROUPS[id as keyof typeof printed].number, id).toBe(number);
  });

  it.each(Object.keys(DAVIES_REFUSED))('%s is refused by its name, with what to use instead', (id) => {
    const problem = refusal(() => daviesHlb({ [id]: 1, carbon: 12 }), /HLB by groups is not known/);
    expect(problem.advice).toMatch(/supplier’s HLB or HLD/);
    expect(problem.fields[0]?.path).toBe(`groups.${id}`);
  });

  it.each(['', 'Carbon', 'constructor', 'carbon '])('“%s” is no group', (id) => {
    refusal(() => daviesHlb({ [id]: 1 }), /is not a group of Davies’ table/);
  });
});
