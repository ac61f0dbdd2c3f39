import { describe, expect, it } from 'vitest';
import { blendHlb } from '@core/emulsions/blend-hlb';
import { blendForTarget, partnerHlbFor } from '@core/emulsions/blend-two';
import { offeredHlb } from '@core/emulsions/offered-hlb';
import type { EmulsifierLine } from '@core/emulsions/offered-hlb';
import { requiredHlb } from '@core/emulsions/required-hlb';
import type { OilLine } from '@core/emulsions/required-hlb';
import { refusal } from '../working/refusal';

function oil(name: string, mass: number, value: number | null, low?: number, high?: number): OilLine {
  return { name, mass, value, low: low ?? null, high: high ?? null, source: null };
}

describe('required HLB', () => {
  it('names oils without a value and says what share is covered', () => {
    const found = requiredHlb([oil('mineral oil', 30, 10.5), oil('a new ester', 10, null)], 'o/w');
    expect(found.worked.value).toBe(10.5);
    expect(found.coveredPercent).toBe(75);
    expect(found.uncovered).toEqual([{ name: 'a new ester', mass: 10 }]);
    expect(found.worked.cautions.join()).toMatch(/a new ester.*75 %/);
  });

  it('carries the sources’ spread through as a range', () => {
    // Mineral oil o/w 10 to 12 and beeswax 9 to 16: the disagreements of the reference, 1.
    const found = requiredHlb([oil('mineral oil', 3, 10.5, 10, 12), oil('beeswax', 1, 12, 9, 16)], 'o/w');
    expect(found.low).toBe((3 * 10 + 9) / 4);
    expect(found.high).toBe((3 * 12 + 16) / 4);
  });

  it('takes the midpoint of a range without a value, and says so', () => {
    const found = requiredHlb([oil('lanolin', 1, null, 10, 14)], 'o/w');
    expect(found.worked.value).toBe(12);
    expect(found.worked.cautions.join()).toContain('estimate');
  });

  it('refuses no oils, only unknown oils, no mass, a negative mass and an impossible HLB', () => {
    refusal(() => requiredHlb([], 'o/w'), /no oils/);
    refusal(() => requiredHlb([oil('jojoba', 1, null)], 'w/o'), /None of the oils.*w\/o.*jojoba/);
    refusal(() => requiredHlb([oil('jojoba', 0, 6)], 'o/w'), /weigh nothing/);
    refusal(() => requiredHlb([oil('jojoba', 0, 6), oil('new', 1, null)], 'o/w'), /None of the oils/);
    refusal(() => requiredHlb([oil('jojoba', -1, 6)], 'o/w'), /negative/);
    refusal(() => requiredHlb([oil('jojoba', 1, 60)], 'o/w'), /between 0 and 40/);
  });
});

describe('offered HLB', () => {
  const waxy: EmulsifierLine = {
    name: 'waxy',
    mass: 3,
    hlb: 12,
    charge: 'non-ionic',
    architecture: 'classic',
  };
  const sulfate: EmulsifierLine = {
    name: 'sulfate',
    mass: 1,
    hlb: 40,
    charge: 'anionic',
    architecture: 'classic',
  };

  it('describes classic non-ionics, names the rest, and marks the figure over everything', () => {
    const found = offeredHlb([waxy, sulfate]);
    expect(found.described?.value).toBe(12);
    expect(found.describedPercent).toBe(75);
    expect(found.notDescribed).toMatchObject([{ name: 'sulfate', why: expect.stringContaining('anionic') }]);
    expect(found.everything?.value).toBe(19);
    expect(found.everything?.cautions.join()).toContain('does not describe');
  });

  it('has no mean for an ionic alone, a polymer or particles', () => {
    const polymer: EmulsifierLine = { ...waxy, name: 'polymer', architecture: 'polymeric' };
    const clay: EmulsifierLine = { ...waxy, name: 'clay', hlb: null, architecture: 'particulate' };
    expect(offeredHlb([sulfate, polymer, clay]).described).toBeNull();
    expect(offeredHlb([clay]).everything).toBeNull();
  });

  it('refuses no emulsifiers and no mass', () => {
    refusal(() => offeredHlb([]), /no emulsifiers/);
    refusal(() => offeredHlb([{ ...waxy, mass: 0 }]), /weigh nothing/);
  });
});

describe('two for a target', () => {
  it('splits a total', () => {
    const blend = blendForTarget({ targetHlb: 12, lowHlb: 4.3, highHlb: 15, total: 5 });
    expect((blend.lowMass ?? 0) + (blend.highMass ?? 0)).toBeCloseTo(5, 12);
    expect(blend.highPercent).toBeCloseTo(71.963, 3);
  });

  it('says by how much a target is out of reach and which partner would reach it', () => {
    const high = refusal(
      () => blendForTarget({ targetHlb: 16, lowHlb: 4.3, highHlb: 15 }),
      /16 is 1 above.*4\.3 to 15/,
    );
    expect(high.facts).toMatchObject({ gap: 1, partnerHlb: 16 });
    expect(high.advice).toContain('HLB 16 or more');
    expect(high.advice).toContain('17');
    const low = refusal(() => blendForTarget({ targetHlb: 3, lowHlb: 4, highHlb: 15 }), /3 is 1 below/);
    expect(low.advice).toContain('HLB 3 or less');
  });

  it('reaches both ends, binary noise included', () => {
    expect(blendForTarget({ targetHlb: 15 + 1e-12, lowHlb: 4.3, highHlb: 15 }).highPercent).toBe(100);
    expect(blendForTarget({ targetHlb: 4.3, lowHlb: 4.3, highHlb: 15 }).highPercent).toBe(0);
  });

  it('refuses equal and swapped HLBs and a negative total', () => {
    refusal(() => blendForTarget({ targetHlb: 10, lowHlb: 10, highHlb: 10 }), /any ratio/);
    refusal(() => blendForTarget({ targetHlb: 10, lowHlb: 15, highHlb: 5 }), /above the high one/);
    refusal(
      () => blendForTarget({ targetHlb: 10, lowHlb: 5, highHlb: 15, total: -1 }),
      /Total level is −1; it cannot be negative/,
    );
  });

  it('takes HLBs off Griffin’s scale, as Davies’ sums give them', () => {
    // Sodium octyl sulfate by Davies: 7 + 38.7 − 8 × 0.475 = 41.9; from −1, 10 lies 11 of 42.9 up.
    const { highPercent, worked } = blendForTarget({ targetHlb: 10, lowHlb: -1, highHlb: 41.9 });
    expect(highPercent).toBeCloseTo((100 * 11) / 42.9, 9);
    expect(worked.steps[0]?.shows).toBe('100 × (10 − (−1)) / (41.9 − (−1))');
  });

  it('finds the partner’s HLB at a share', () => {
    expect(partnerHlbFor(16, 15, 50).value).toBe(17);
    refusal(() => partnerHlbFor(16, 15, 100), /No share/);
  });
});

describe('a blend', () => {
  it('refuses nothing, nothing weighed, and an HLB off the scale', () => {
    refusal(() => blendHlb([]), /no emulsifier/);
    refusal(() => blendHlb([{ mass: 0, hlb: 5 }]), /zero/);
    refusal(() => blendHlb([{ mass: 1, hlb: 101 }]), /between −50 and 100/);
    refusal(() => blendHlb([{ mass: Number.NaN, hlb: 5 }]), /not a number/);
  });
});
