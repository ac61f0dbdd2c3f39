import { demand as demandSchema, type Candidate, type Demand } from '@core/emulsions/optimise/demand';
import { LEAST_USE_PERCENT, prepare, refuseContradictions } from '@core/emulsions/optimise/prepare';
import { describe, expect, it } from 'vitest';
import { refusal } from '../working/refusal';

const one = (id: string, part: Partial<Candidate> = {}): Candidate => ({
  ...{ id, name: `Material ${id}`, hlb: 12, charge: 'non-ionic', architecture: 'classic' },
  ...{ emulsionType: 'o/w', character: 'waxy', costPerKg: 1000, minPercent: 0.5, maxPercent: 5, ...part },
});
const asked = (part: Partial<Demand> = {}): Demand => ({
  ...{ emulsionType: 'o/w', targetHlb: 10, tolerance: 0.5, totalMinPercent: 3, totalMaxPercent: 6 },
  ...{ atMost: 3, pinned: [], excluded: [], objective: 'least cost', rules: [], alternatives: 5, ...part },
});
const why = (candidate: Candidate, part: Partial<Demand> = {}): string | null => {
  const { leftOut } = prepare([candidate, one('other'), one('third', { hlb: 4 })], asked(part));
  return leftOut.find(({ id }) => id === candidate.id)?.why ?? null;
};

describe('a candidate is left out, with why', () => {
  it.each([
    ['never used', { maxPercent: 0, minPercent: 0 }, 'its highest use is 0 %'],
    ['without a price', { costPerKg: null }, 'it has no price in this currency'],
    ['without an HLB', { hlb: null }, 'it has no HLB'],
    ['without a charge', { charge: null }, 'it has no charge recorded, so its HLB cannot be trusted'],
    ['anionic', { charge: 'anionic' }, /^a mean HLB does not describe anionic emulsifiers/],
    ['a polymer', { architecture: 'polymeric' }, /^a mean HLB does not describe polymeric emulsifiers/],
    ['particles', { architecture: 'particulate' }, /^a mean HLB does not describe particulate emulsifiers/],
  ] as const)('%s', (_, part, says) => {
    expect(why(one('odd', part))).toMatch(says);
  });

  it('not for a price that is not asked for, nor for an HLB that nothing is chosen by', () => {
    expect(why(one('odd', { costPerKg: null }), { objective: 'fewest materials' })).toBeNull();
    expect(why(one('odd', { hlb: null }), { targetHlb: null })).toBeNull();
    expect(why(one('odd', { charge: 'anionic', hlb: null }), { targetHlb: null })).toBeNull();
  });

  it('not for a charge that a rule asks for, and then only that charge', () => {
    const anionic = one('odd', { charge: 'anionic' });
    const cationic = one('odd', { charge: 'cationic' });
    expect(why(anionic, { rules: ['ionic with a non-ionic'] })).toBeNull();
    expect(why(cationic, { rules: ['ionic with a non-ionic'] })).toBeNull();
    expect(why(cationic, { rules: ['a cationic'] })).toBeNull();
    expect(why(anionic, { rules: ['a cationic'] })).toMatch(/mean HLB does not describe anionic/);
  });

  it('by what a balance shows: a trace is no use, its least is', () => {
    expect(why(one('odd', { maxPercent: LEAST_USE_PERCENT, minPercent: 0 }))).toBeNull();
    expect(why(one('odd', { maxPercent: LEAST_USE_PERCENT / 2, minPercent: 0 }))).not.toBeNull();
  });
});

describe('who takes part', () => {
  it('keeps the order of the shelf, each with names of its own, and knows what the mean describes', () => {
    const shelf = [one('a'), one('b', { costPerKg: null }), one('c', { charge: 'anionic' }), one('d')];
    const { players } = prepare(shelf, asked({ pinned: ['c'], excluded: ['d'] }));
    expect(players.map(({ one: { id } }) => id)).toEqual(['a', 'c', 'd']);
    expect(players.map(({ x, y }) => [x, y])).toEqual([
      ['x0', 'y0'],
      ['x1', 'y1'],
      ['x2', 'y2'],
    ]);
    expect(players.map(({ described, pinned, excluded }) => [described, pinned, excluded])).toEqual([
      [true, false, false],
      [false, true, false],
      [true, false, true],
    ]);
  });

  it('refuses a shelf from which nothing can be chosen, and says what to do', () => {
    refusal(() => prepare([], asked()), /There are no emulsifiers to choose from/);
    const unpriced = [one('a', { costPerKg: null }), one('b', { costPerKg: null })];
    const refused = refusal(
      () => prepare(unpriced, asked()),
      /None of the 2 candidates can take part: Material a, for one, cannot because it has no price/,
    );
    expect(refused.facts.leftOut).toHaveLength(2);
  });

  it('refuses to choose among what no HLB describes by an HLB alone', () => {
    const ionics = [one('a', { charge: 'anionic' }), one('b', { charge: 'cationic' })];
    refusal(
      () => prepare(ionics, asked({ rules: ['ionic with a non-ionic'] })),
      /A target HLB alone cannot choose among ionic/,
    );
    expect(prepare(ionics, asked({ targetHlb: null })).players).toHaveLength(2);
  });

  it('never leaves out in silence what was pinned', () => {
    const refused = refusal(
      () => prepare([one('a', { costPerKg: null }), one('b')], asked({ pinned: ['a'] })),
      /Material a is pinned, but it has no price in this currency/,
    );
    expect(refused.facts.id).toBe('a');
  });
});

describe('demands that contradict each other', () => {
  it.each([
    ['one listed twice', [one('a'), one('a')], {}, /One candidate is listed twice/],
    ['a pin that is not there', [one('a')], { pinned: ['z'] }, /A pinned emulsifier is not among/],
    [
      'pinned and excluded',
      [one('a')],
      { pinned: ['a'], excluded: ['a'] },
      /Material a is both pinned and excluded/,
    ],
    [
      'more pinned than may be used',
      [one('a'), one('b')],
      { pinned: ['a', 'b'], atMost: 1 },
      /2 emulsifiers are pinned, but at most 1 may be used/,
    ],
  ] as const)('%s', (_, shelf, part, says) => {
    refusal(() => refuseContradictions(shelf, asked(part as Partial<Demand>)), says);
  });

  it('one pinned twice is pinned once', () => {
    expect(() => refuseContradictions([one('a')], asked({ pinned: ['a', 'a'], atMost: 1 }))).not.toThrow();
  });

  const refused = (part: object): string =>
    demandSchema.safeParse({ ...asked(), ...part }).error?.issues[0]?.message ?? '';
  it.each([
    [{ totalMinPercent: 7 }, 'The lowest total is above the highest.'],
    [{ totalMinPercent: 0, totalMaxPercent: 0 }, 'The highest total must be above 0 %.'],
    [{ targetHlb: null, objective: 'nearest HLB' }, '“Nearest HLB” needs a target HLB.'],
    [{ targetHlb: 41 }, 'The target HLB lies between 0 and 40.'],
    [{ tolerance: -0.1 }, 'A tolerance cannot be negative.'],
    [{ tolerance: 21 }, 'A tolerance above 20 asks for nothing.'],
    [{ atMost: 0 }, 'Use at least one material.'],
    [{ atMost: 2.5 }, 'Use a whole number of materials.'],
    [{ totalMaxPercent: 101 }, 'The highest total cannot be more than 100 %.'],
    [{ totalMaxPercent: Number.NaN }, 'The highest total must be a number of per cent.'],
  ])('%j: %s', (part, says) => expect(refused(part)).toBe(says));
});
