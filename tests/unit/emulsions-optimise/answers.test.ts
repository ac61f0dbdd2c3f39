import { brokenDemands, choiceOf, type Level } from '@core/emulsions/optimise/choice';
import { candidate, demand, type Candidate, type Demand } from '@core/emulsions/optimise/demand';
import { groupsOf } from '@core/emulsions/optimise/pairing';
import type { Player } from '@core/emulsions/optimise/prepare';
import { describe, expect, it } from 'vitest';

const one = (id: string, part: Partial<Candidate> = {}): Candidate => ({
  ...{ id, name: id, hlb: 12, charge: 'non-ionic', architecture: 'classic', emulsionType: 'o/w' },
  ...{ character: 'waxy', costPerKg: 1000, minPercent: 0.5, maxPercent: 5, ...part },
});

describe('an answer held against its demand', () => {
  const level = (who: Candidate, percent: number): Level => ({
    player: {
      one: who,
      described: who.hlb !== null && who.charge === 'non-ionic',
      groups: groupsOf(who, 'o/w'),
    } as Player,
    percent,
  });
  const asked = (part: Partial<Demand> = {}): Demand => ({
    ...{
      emulsionType: 'o/w',
      targetHlb: 10,
      tolerance: 0.5,
      totalMinPercent: 4,
      totalMaxPercent: 6,
      atMost: 2,
    },
    ...{
      pinned: [],
      excluded: [],
      objective: 'least cost',
      rules: ['one sign of charge'],
      alternatives: 0,
      ...part,
    },
  });
  const [high, low] = [one('high', { hlb: 15, costPerKg: 2000 }), one('low', { hlb: 5, costPerKg: 1000 })];
  const even = [level(high, 2.5), level(low, 2.5)];

  it('breaks nothing where all holds, and names the one thing that does not', () => {
    expect(brokenDemands(even, asked())).toEqual([]);
    for (const [part, broken] of [
      [{ totalMinPercent: 5.1 }, 'total'],
      [{ totalMaxPercent: 4.9 }, 'total'],
      [{ atMost: 1 }, 'number of materials'],
      [{ pinned: ['other'] }, 'pins'],
      [{ excluded: ['low'] }, 'exclusions'],
      [{ targetHlb: 10.6 }, 'HLB'],
      [{ rules: ['a cationic'] }, 'a cationic'],
    ] as [Partial<Demand>, string][])
      expect(brokenDemands(even, asked(part)), broken).toEqual([broken]);
    expect(brokenDemands([level({ ...high, maxPercent: 2 }, 2.5), level(low, 2.5)], asked())).toEqual([
      'usage range',
    ]);
    expect(brokenDemands([], asked({ targetHlb: null, totalMinPercent: 0 }))).toContain(
      'number of materials',
    );
  });

  it('counts HLB over what the mean describes, which must be half of it at least', () => {
    const ionic = one('ionic', { hlb: null, charge: 'anionic' });
    expect(brokenDemands([level(one('ten', { hlb: 10 }), 2.5), level(ionic, 2.5)], asked())).toEqual([]);
    expect(brokenDemands([level(one('ten', { hlb: 10 }), 2), level(ionic, 3)], asked())).toEqual(['HLB']);
    expect(brokenDemands([level(ionic, 5)], asked())).toEqual(['HLB']);
    expect(brokenDemands([level(ionic, 5)], asked({ targetHlb: null }))).toEqual([]);
  });

  it('is shown largest first, with mean and cost by hand', () => {
    // 1 of HLB 15 at 20 € with 3 of HLB 5 at 10 €: mean 7.5; 0.01 × 20 + 0.03 × 10 is 0.50 € in a kg.
    const shown = choiceOf([level(high, 1), level(low, 3)], asked());
    expect(shown.lines.map(({ id }) => id)).toEqual(['low', 'high']);
    expect(shown).toMatchObject({ totalPercent: 4, hlb: 7.5, costPerKg: 50, objective: 50 });
    expect(
      choiceOf([level({ ...high, costPerKg: null }, 1)], asked({ objective: 'fewest materials' })),
    ).toMatchObject({ costPerKg: null, objective: 1 });
    expect(choiceOf(even, asked({ objective: 'nearest HLB' })).objective).toBe(0);
  });

  it.each<[Partial<Demand>, RegExp]>([
    [{ totalMinPercent: 7 }, /lowest total is above the highest/],
    [{ totalMinPercent: 0, totalMaxPercent: 0 }, /above 0 %/],
    [{ targetHlb: null, objective: 'nearest HLB' }, /needs a target HLB/],
    [{ atMost: 0 }, /one material/],
    [{ atMost: 11 }, /Ten materials/],
    [{ tolerance: -1 }, /cannot be negative/],
    [{ targetHlb: 41 }, /between 0 and 40/],
  ])('refuses %o as a demand', (part, message) => {
    expect(demand.safeParse({ ...asked(), ...part }).error?.issues[0]?.message).toMatch(message);
    expect(demand.safeParse(asked()).success).toBe(true);
    expect(candidate.safeParse({ ...high, minPercent: 6 }).success).toBe(false);
  });
});
