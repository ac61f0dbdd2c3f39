import fc from 'fast-check';
import { judgeSystem } from '@core/emulsions/systems/judge-system';
import {
  levelAgainstOil,
  OIL_RELATIONS,
  systemKind,
  usualLevel,
  usualLevelWorked,
} from '@core/emulsions/systems/level';
import type { Wish } from '@core/emulsions/systems/wish';
import type { Material } from '@core/materials/material';
import { describe, expect, it } from 'vitest';
import { make } from '../checks/build';
import {
  facts,
  system,
  wish,
  judged,
  STEARETH_21,
  STEARETH_2,
  QUAT,
  GLUTAMATE,
  SOAP,
  ACRYLATE,
  CETEARYL,
  LIQUID_WO,
  POLYMERIC_WO,
} from './judged';

describe('the level for an oil phase', () => {
  it('is one part to five of oil for non-ionics, less for charges, far less for polymers, by hand', () => {
    expect(usualLevel('non-ionic o/w', 20)).toBe(4);
    expect(usualLevel('ionic o/w', 20)).toBe(3);
    expect(usualLevel('polymeric o/w', 20)).toBeCloseTo(0.6, 9);
    // Of a little oil no less than is worth weighing.
    expect(usualLevel('non-ionic o/w', 1)).toBe(1);
    expect(usualLevelWorked('w/o', 20).value).toBe(4);
  });

  it('names the kind by what is there: a polymer alone, a cationic, an ionic, else non-ionic', () => {
    const kind = (...materials: Material[]) => systemKind(materials.map(facts), 'o/w');
    expect([
      kind(ACRYLATE),
      kind(QUAT, STEARETH_21),
      kind(GLUTAMATE),
      kind(STEARETH_21),
      kind(ACRYLATE, STEARETH_21),
      kind(),
    ]).toEqual([
      ...['polymeric o/w', 'cationic o/w', 'ionic o/w', 'non-ionic o/w', 'non-ionic o/w', 'non-ionic o/w'],
    ]);
    expect(systemKind([facts(STEARETH_21)], 'w/o')).toBe('w/o');
  });

  it('is too little below its least and much above its most, both ends themselves enough', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('non-ionic o/w', 'ionic o/w', 'w/o'),
        fc.integer({ min: 1, max: 80 }),
        (kind, oil) => {
          const { least, most } = OIL_RELATIONS[kind];
          const at = (parts: number) => levelAgainstOil(kind, (parts * oil) / 100, oil)?.verdict;
          expect([at(least), at(most ?? 0), at(least - 0.01), at((most ?? 0) + 0.01)]).toEqual([
            'enough',
            'enough',
            'too little',
            'much',
          ]);
        },
      ),
      { numRuns: 40 },
    );
    expect(levelAgainstOil('w/o', 5, 0)).toBeNull();
    expect(levelAgainstOil('w/o', 5, Number.NaN)).toBeNull();
    expect(levelAgainstOil('cationic o/w', 0.001, 20)?.verdict).toBe('enough');
  });

  it('too little warns, a tenth more than usual is let be, half as much again counts in full', () => {
    const at = (percent: number, part: Partial<Wish> = {}) =>
      judged('level-for-oil', system([[STEARETH_21, percent]]), part);
    expect(at(1.5)).toMatchObject({ verdict: 'against', strength: 1, warns: true });
    expect(at(4.4).verdict).toBe('neutral');
    expect(at(5)).toMatchObject({ verdict: 'against', strength: expect.closeTo(0.5, 9) });
    expect(at(6)).toMatchObject({ strength: 1 });
    // What is asked for is no excess.
    expect(at(6, { levelFrom: 6 }).verdict).toBe('neutral');
  });
});

describe('a system judged by all rules', () => {
  const members = fc.uniqueArray(
    fc.constantFrom(STEARETH_21, STEARETH_2, QUAT, GLUTAMATE, SOAP, ACRYLATE, LIQUID_WO, POLYMERIC_WO),
    { minLength: 1, maxLength: 3 },
  );
  const wishes = fc.record({
    emulsionType: fc.constantFrom<Wish['emulsionType']>('o/w', 'w/o', 'cationic o/w'),
    climate: fc.constantFrom<Wish['climate']>('frost', 'temperate', 'hot', 'both'),
    electrolyte: fc.constantFrom<Wish['electrolyte']>('none', 'low', 'high'),
    ph: fc.option(fc.double({ min: 3, max: 10, noNaN: true })),
    oilPercent: fc.double({ min: 5, max: 60, noNaN: true }),
  });

  it('says the same whatever the order of its members, and adds up to its score', () => {
    fc.assert(
      fc.property(members, wishes, (materials, part) => {
        const of = (list: Material[]) => judgeSystem(system(list.map((one) => [one, 2])), wish(part));
        const [one, other] = [of(materials), of([...materials].reverse())];
        expect(other.refused).toBe(one.refused);
        if (one.refused || other.refused) return;
        expect(other.score).toBeCloseTo(one.score, 9);
        expect(one.reasons.reduce((sum, { points }) => sum + points, 0)).toBeCloseTo(one.score, 9);
        for (const { strength, points, verdict: said, weight } of one.reasons) {
          expect(strength).toBeGreaterThanOrEqual(0);
          expect(strength).toBeLessThanOrEqual(1);
          expect(points).toBeCloseTo((said === 'for' ? 1 : -1) * strength * weight, 9);
        }
        const sizes = one.reasons.map(({ points }) => Math.abs(points));
        expect(sizes).toEqual([...sizes].sort((a, b) => b - a));
      }),
      { numRuns: 120 },
    );
  });

  it('takes a weight that is set in place of the rule’s own, nothing for a weight of nothing', () => {
    const of = system([[STEARETH_21, 4]], [CETEARYL, 2]);
    const scored = (weights: Record<string, number>) => {
      const found = judgeSystem(of, wish(), weights);
      return found.refused ? Number.NaN : found.score;
    };
    const gel = 1.5;
    expect(scored({ 'gel-network': 0 })).toBeCloseTo(scored({}) - gel, 9);
    expect(scored({ 'gel-network': 4 })).toBeCloseTo(scored({}) - gel + 4, 9);
    expect(scored({ unknown: 9 })).toBe(scored({}));
  });
});

describe('a fatty alcohol for body', () => {
  const alcohol = (inci: string | string[]) => facts(make('Wax', inci, { consistency: 'waxy' })).fattyAlcohol;

  it('is one by each of its names, also where a supplier wrote several into one', () => {
    for (const inci of [
      'Cetyl Alcohol',
      'Cetearyl Alcohol',
      ['Cetyl Alcohol', 'Stearyl Alcohol'],
      'Cetyl Alcohol (and) Stearyl Alcohol',
      'Stearyl Alcohol & Behenyl Alcohol',
      'C14-22 Alcohols',
    ])
      expect(alcohol(inci), String(inci)).toBe(true);
  });

  it('is none beside an emulsifier of its own, however that is written', () => {
    for (const inci of [
      'Cetearyl Alcohol (and) Ceteareth-20',
      ['Cetearyl Alcohol', 'Ceteareth-20'],
      'Cetearyl Glucoside',
      'Benzyl Alcohol',
      'Isostearyl Alcohol',
      'C12-13 Alcohols',
    ])
      expect(alcohol(inci), String(inci)).toBe(false);
  });
});
