import type { Material } from '@core/materials/material';
import { describe, expect, it } from 'vitest';
import { figure, range } from '../checks/build';
import { EXAMPLES } from '../limits/law';
import { ask, best, offer, over, raw, shareOf, type Facts } from './small-shelf';

/** Every expected share and distance below is worked out by hand in its comment. Costs in cents per kg. */
const water = raw('Pump water', 'Aqua', ['solvent'], { cost: 0 });
const humectant = (name: string, facts: Facts): Material =>
  raw(name, name, ['humectant'], { use: [0, 40], ...facts });

describe('the cost', () => {
  const dear = humectant('Propanediol', { cost: 900 });
  const cheap = humectant('Glycerin', { cost: 300 });
  const formula = over(water, [
    [dear, 10],
    [cheap, 10],
  ]);

  it('is met with the least that has to move: the dearest gives way to water', async () => {
    // 10 % at 9.00 and 10 % at 3.00 are 120 cents; 15 cents less are 15/9 of a per cent.
    const found = await best(formula, [water, dear, cheap], { costAtMost: 105 });
    expect(found.distance).toBeCloseTo(15 / 9, 4);
    expect(shareOf(found, dear)).toBeCloseTo(10 - 15 / 9, 1);
    expect(shareOf(found, cheap)).toBe(10);
    expect(found.costPerKg).toBeLessThanOrEqual(105);
    expect(found.binds.map(({ demand }) => demand)).toContain('the cost');
  });

  it('is met within the room of the group: below that the cheap one takes the place of the dear one', async () => {
    // The group may go down to 15 %. 75 cents: 9d + 3e = 45 with d + e = 5 gives d = 5; 60 cents: d = 7.5, e = −2.5.
    const found = await best(formula, [water, dear, cheap], { costAtMost: 60 });
    expect(found.distance).toBeCloseTo(7.5, 4);
    expect([shareOf(found, dear), shareOf(found, cheap)]).toEqual([2.5, 12.5]);
    const bound = found.binds.map(({ demand }) => demand);
    expect(bound).toEqual(expect.arrayContaining(['the cost', 'the room of each group']));
  });

  it('lets no share rise that has no price, and brings none of those in', async () => {
    const unpriced = humectant('Butylene Glycol', {});
    const other = humectant('Sorbitol', {});
    const shelf = [water, dear, unpriced, other];
    const both = over(water, [
      [dear, 10],
      [unpriced, 10],
    ]);
    const found = await best(both, shelf, { costAtMost: 60, groupsWithin: 40 });
    expect(shareOf(found, unpriced)).toBeLessThanOrEqual(10);
    expect(found.come).toEqual([]);
    // 90 cents are to be 60: 10/3 of a per cent of the only one that costs anything.
    expect(found.distance).toBeCloseTo(10 / 3, 4);
    const result = await ask(both, shelf, { costAtMost: 60, groupsWithin: 40 });
    expect(result.cautions.join()).toContain(
      'Without a price, and not counted in the cost: Butylene Glycol.',
    );
  });

  it('counts the newest price of the suppliers that may be bought from', async () => {
    const two = humectant('Propanediol', {
      parts: {
        offers: [offer(900, 'Fenwick & Daughters'), { ...offer(200, 'Lowmoor'), date: '2026-06-01' }],
      },
    });
    const formula = over(water, [[two, 10]]);
    const now = await best(formula, [water, two], { costAtMost: 20 });
    expect(now.distance).toBeCloseTo(0, 6);
    // Without Lowmoor it costs 9.00 again: 90 cents for 10 %, so of 85 it may be 9.444 %.
    const without = await best(formula, [water, two], { costAtMost: 85, withoutSuppliers: ['Lowmoor'] });
    expect(without.distance).toBeCloseTo(10 - 85 / 9, 4);
  });
});

describe('the natural origin', () => {
  const synthetic = humectant('Butylene Glycol', { origin: 0 });
  const natural = humectant('Glycerin', { origin: 1 });
  const formula = over(water, [
    [synthetic, 10],
    [natural, 10],
  ]);

  it('counts the water or not, as asked', async () => {
    // With water 90 % of 100; 94 % asks that 4 % of the synthetic go. The rest is the same formula.
    const withWater = await best(formula, [water, synthetic, natural], { originAtLeast: 94 });
    expect(withWater.distance).toBeCloseTo(4, 4);
    expect(withWater.originPercent).toBeCloseTo(94, 2);
    // Without water 10 of 20 is 50 %. 60 %: n = 1.5 s; taking from s alone, s = 6.667, moves 3.333; putting x of one in
    // the place of the other, (10 + x)/20 = 0.6, moves 2.
    const dry = await best(formula, [water, synthetic, natural], {
      ...{ originAtLeast: 60, originWithWater: false },
    });
    expect(dry.distance).toBeCloseTo(2, 4);
    expect(dry.originPercent).toBeCloseTo(60, 2);
  });

  it('counts what is not known at its lower end', async () => {
    const derived = humectant('Sorbitol', { parts: { origin: 'naturally derived' } });
    const open = humectant('Inositol', {});
    const formula = over(water, [
      [derived, 10],
      [open, 10],
    ]);
    // 80 of water and 5 of the derived one (0.5 to 1 by its origin); nothing of the one that says none.
    expect((await best(formula, [water, derived, open], {})).originPercent).toBeCloseTo(85, 6);
  });
});

describe('HLB', () => {
  const emulsifier = (name: string, hlb: number, facts: Facts): Material =>
    raw(name, name, ['emulsifier'], {
      use: [0, 10],
      figures: { hlb: figure(hlb) },
      parts: { charge: 'non-ionic', architecture: 'classic', emulsionType: 'o/w' },
      ...facts,
    });
  const high = emulsifier('Polysorbate 60', 15, { cost: 2000 });
  const low = emulsifier('Sorbitan Stearate', 5, { cost: 500 });
  const oil = raw('Squalane', 'Squalane', ['emollient'], {
    ...{ cost: 0, use: [0, 60], figures: { requiredHlbOw: figure(10) }, parts: { phaseOfUse: 'oil' } },
  });
  const formula = over(
    water,
    [
      [high, 2],
      [low, 2],
      [oil, 20],
    ],
    { productType: 'o/w emulsion' },
  );
  const shelf = [water, high, low, oil];

  it('holds the offered HLB in its band: it takes of both emulsifiers where one alone would leave it', async () => {
    // 50 cents are to be 45: 20d + 5e = 5. 0.25 of the high one alone leaves (26.25 + 10)/3.75 = 9.67, below 9.8. With
    // the mean at 9.8, 5.2 (2 − d) = 4.8 (2 − e): e = 1.92308/23.46154 = 0.081967, d = 0.229508, together 0.311475.
    const found = await best(formula, shelf, { costAtMost: 45, hlbWithin: 0.2 });
    expect(found.distance).toBeCloseTo(0.311475, 5);
    const [h, l] = [shareOf(found, high), shareOf(found, low)];
    expect((15 * h + 5 * l) / (h + l)).toBeGreaterThanOrEqual(9.8 - 0.005);
    expect(found.binds.map(({ demand }) => demand)).toContain('the HLB band');
    expect((await best(formula, shelf, { costAtMost: 45, hlbWithin: 1 })).distance).toBeCloseTo(0.25, 5);
    expect((await best(formula, shelf, { costAtMost: 45, hlbWithin: null })).distance).toBeCloseTo(0.25, 5);
  });

  it('holds the required HLB too: an oil that asks for another HLB comes in only as far as the mean allows', async () => {
    const other = raw('Isohexadecane', 'Isohexadecane', ['emollient'], {
      ...{ cost: 0, use: [0, 60], parts: { phaseOfUse: 'oil' } },
      figures: { requiredHlbOw: figure(16) },
    });
    const dear = { ...oil, offers: [offer(1000)] };
    const emulsifiers = formula.phases[0]?.lines.slice(0, 2).map(({ id }) => id) ?? [];
    // Locked emulsifiers cost 50 cents, the oil 200. Of 190 it may be 14 %, and the group 15 % at the least: one per
    // cent of the other comes, 5 % go to the water. The mean is then (140 + 16)/15 = 10.4.
    const shelf = [water, high, low, dear, other];
    const found = await best(formula, shelf, { costAtMost: 190, locked: emulsifiers });
    expect([shareOf(found, dear), shareOf(found, other)]).toEqual([14, 1]);
    expect(found.distance).toBeCloseTo(6 + 0.5, 4);
    // Of 170 it may be 12 %, and 3 % of the other would ask for (120 + 48)/15 = 11.2.
    const result = await ask(formula, shelf, { costAtMost: 170, locked: emulsifiers });
    if (result.status !== 'none') throw new Error('The required HLB left its band.');
    expect(result.conflict).toContain('the HLB band');
    const wider = await ask(formula, shelf, { costAtMost: 170, locked: emulsifiers, hlbWithin: 1.2 });
    expect(wider.status).toBe('found');
  });

  it('keeps an oil that has a required HLB: a band around nothing would hold nothing', async () => {
    const unknown = raw('Marula oil', 'Sclerocarya Birrea Seed Oil', ['emollient'], {
      ...{ cost: 0, use: [0, 60], parts: { phaseOfUse: 'oil' } },
    });
    const two = over(
      water,
      [
        [high, 2],
        [low, 2],
        [oil, 5],
        [unknown, 15],
      ],
      { productType: 'o/w emulsion' },
    );
    const result = await ask(two, [...shelf, unknown], { withoutSubstances: ['Squalane'], groupsWithin: 50 });
    expect(result.status).toBe('none');
    if (result.status === 'none') expect(result.conflict).toContain('the HLB band');
    const free = { withoutSubstances: ['Squalane'], groupsWithin: 50, hlbWithin: null };
    expect((await ask(two, [...shelf, unknown], free)).status).toBe('found');
  });

  it('brings no emulsifier in of which no HLB is known, and none of the other type of emulsion', async () => {
    const unknown = emulsifier('Sucrose Stearate', 0, { figures: {} });
    const other = emulsifier('Sorbitan Isostearate', 9.9, {
      parts: { charge: 'non-ionic', architecture: 'classic', emulsionType: 'w/o' },
    });
    const fits = emulsifier('Ceteareth-20', 15, {});
    const wish = { withoutSubstances: ['Polysorbate 60'] };
    expect((await ask(formula, [...shelf, unknown, other], wish)).status).toBe('none');
    const found = await best(formula, [...shelf, unknown, other, fits], wish);
    expect(found.come).toEqual([fits.id]);
  });
});

describe('acid and base', () => {
  const citric = raw('Citric acid', 'Citric Acid', ['acid'], { use: [0, 2] });
  const lactic = raw('Lactic acid', 'Lactic Acid', ['acid'], { use: [0, 5] });
  const formula = over(water, [[citric, 0.5]]);
  const wish = { withoutSubstances: ['Citric Acid'], groupsWithin: 100 };

  it('stay in balance: another acid comes in by its equivalents', async () => {
    // 0.5 g of citric acid, 192.123 g/mol with three groups, are 7.8075 mmol; lactic acid, 90.078 g/mol, has one.
    const mmol = (3 * 500) / 192.123;
    const exact = await best(formula, [water, citric, lactic], { ...wish, phWithin: 0 });
    expect(shareOf(exact, lactic)).toBeCloseTo((mmol * 90.078) / 1000, 3);
    // With 0.2 mmol of room the least of it is the nearest.
    const near = await best(formula, [water, citric, lactic], { ...wish, phWithin: 0.2 });
    expect(shareOf(near, lactic)).toBeCloseTo(((mmol - 0.2) * 90.078) / 1000, 2);
    expect(near.distance).toBeCloseTo(((mmol - 0.2) * 90.078) / 1000 + 1, 3);
  });

  it('clash with the room of the group where the other acid is weaker by mass', async () => {
    const result = await ask(formula, [water, citric, lactic], { ...wish, groupsWithin: 25, phWithin: 0 });
    if (result.status !== 'none') throw new Error('0.703 % is more than 0.625 %.');
    expect([...result.conflict].sort()).toEqual(
      ['the balance of acid and base', 'the room of each group', 'without Citric Acid'].sort(),
    );
    expect(result.eased.map(({ demand }) => demand).sort()).toEqual([...result.conflict].sort());
  });
});

describe('law', () => {
  const kept = raw('Phenoxyethanol', 'Phenoxyethanol', ['preservative'], { use: [0, 5] });
  const going = raw('Benzyl alcohol', 'Benzyl Alcohol', ['preservative'], { use: [0, 5] });
  const formula = over(water, [
    [kept, 0.9],
    [going, 0.6],
  ]);
  const wish = { withoutSubstances: ['Benzyl Alcohol'], groupsWithin: 10 };

  it('is no way out: phenoxyethanol does not pass 1 % to fill the place of another (Annex V, entry 29)', async () => {
    // The preservatives may come to 1.35 % at the least, and phenoxyethanol to 1 % at the most.
    const result = await ask(formula, [water, kept, going], wish, EXAMPLES);
    if (result.status !== 'none') throw new Error('1.35 % is more than 1 %.');
    expect(result.conflict).toContain('the limits of law');
    expect(result.eased.map(({ demand }) => demand)).not.toContain('the limits of law');
  });

  it('gives way only when it is told to', async () => {
    const found = await best(formula, [water, kept, going], { ...wish, keepLaw: false }, EXAMPLES);
    // 0.6 % go; whether water or phenoxyethanol takes their place is as near, from 1.35 % on.
    expect(found.distance).toBeCloseTo(0.6 + 0.5, 5);
    expect(shareOf(found, kept)).toBeGreaterThanOrEqual(1.35);
  });

  it('mends a formula that breaks it', async () => {
    const over1 = over(water, [[kept, 1.3]]);
    const found = await best(over1, [water, kept], { groupsWithin: 50 }, EXAMPLES);
    expect(shareOf(found, kept)).toBeLessThanOrEqual(1);
    expect(shareOf(found, kept)).toBeGreaterThan(0.998);
  });
});

describe('what may come in', () => {
  const now = humectant('Glycerin', { cost: 300 });
  const formula = over(water, [[now, 5]], {});
  const wish = { withoutSubstances: ['Glycerin'] };
  const reject = async (name: string, other: Material): Promise<void> =>
    expect((await ask(formula, [water, now, other], wish)).status, name).toBe('none');

  it('has the same role, a range of use, and is no archived record', async () => {
    expect((await best(formula, [water, now, humectant('Propanediol', {})], wish)).come).toHaveLength(1);
    await reject('a thickener', raw('Xanthan', 'Xanthan Gum', ['thickener'], { use: [0, 10] }));
    await reject('no range', raw('Propanediol', 'Propanediol', ['humectant']));
    await reject('archived', humectant('Propanediol', { parts: { status: 'archived' } }));
  });

  it('works at the pH that the formula is made to', async () => {
    const acid = over(water, [[now, 5]]);
    acid.target = { ...acid.target, phLow: 4.5, phHigh: 5 };
    const neutral = humectant('Propanediol', { figures: { workingPh: range(6, 8) } });
    const broad = humectant('Propanediol', { figures: { workingPh: range(3, 8) } });
    expect((await ask(acid, [water, now, neutral], wish)).status).toBe('none');
    expect((await ask(acid, [water, now, broad], wish)).status).toBe('found');
  });

  it('stays within its range; one beyond its own range already is not moved by force', async () => {
    const strong = humectant('Propanediol', { use: [0, 4] });
    const found = await best(formula, [water, now, strong], wish);
    expect(shareOf(found, strong)).toBeLessThanOrEqual(4);
    const beyond = humectant('Sorbitol', { use: [1, 3] });
    const same = await best(over(water, [[beyond, 6]]), [water, beyond], {});
    expect([same.distance, shareOf(same, beyond)]).toEqual([0, 6]);
  });

  it('is of the sign of charge that the formula has', async () => {
    const emulsifier = (inci: string, charge: Material['charge']): Material =>
      raw(inci, inci, ['emulsifier'], { use: [0, 10], parts: { charge, emulsionType: 'o/w' } });
    const anionic = emulsifier('Sodium Cetearyl Sulfate', 'anionic');
    const going = emulsifier('Ceteareth-20', 'non-ionic');
    const cationic = emulsifier('Behentrimonium Chloride', 'cationic');
    const plain = emulsifier('Steareth-21', 'non-ionic');
    const both = over(water, [
      [anionic, 1],
      [going, 2],
    ]);
    const without = { withoutSubstances: ['Ceteareth-20'], groupsWithin: 10 };
    const locked = { ...without, locked: [both.phases[0]?.lines[0]?.id ?? ''] };
    const none = await ask(both, [water, anionic, going, cationic], locked);
    if (none.status !== 'none') throw new Error('A cationic came in beside an anionic.');
    expect(none.conflict).toContain('one sign of charge');
    expect((await best(both, [water, anionic, going, cationic, plain], locked)).come).toEqual([plain.id]);
  });
});

describe('what stays', () => {
  const active = raw('Niacinamide', 'Niacinamide', ['active'], { cost: 5000, use: [1, 5] });
  const filler = humectant('Glycerin', { cost: 300 });

  it('is what the product is made for, however dear: at least its lowest use', async () => {
    const formula = over(water, [
      [active, 4],
      [filler, 5],
    ]);
    // 200 and 15 cents; the group of actives may fall by 25 %: 3 % at 50.00 are 150.
    const found = await best(formula, [water, active, filler], { costAtMost: 166 });
    expect(shareOf(found, active)).toBeGreaterThanOrEqual(3);
    const result = await ask(formula, [water, active, filler], { costAtMost: 20, groupsWithin: 100 });
    if (result.status !== 'none') throw new Error('The active went.');
    expect([...result.conflict].sort()).toEqual(
      ['keeping what the product is made for', 'the cost', 'the usage ranges'].sort(),
    );
    // Its lowest use, 1 %, costs 50 cents; the filler may go.
    expect(result.eased.find(({ demand }) => demand === 'the cost')?.reach).toBeCloseTo(50, 3);
  });

  it('is a locked line, to the ppm; and all lines of its material', async () => {
    const formula = over(water, [
      [filler, 5.4321],
      [active, 4],
    ]);
    const id = formula.phases[0]?.lines[0]?.id ?? '';
    const found = await best(formula, [water, active, filler], { costAtMost: 190, locked: [id] });
    expect(found.shares.find(({ materialId }) => materialId === filler.id)?.is).toBe(54_321);
  });

  it('is not a juice or flower water that stands for water: it has a range and a group like any other', async () => {
    const juice = raw('Aloe juice', 'Aloe Barbadensis Leaf Juice', ['active'], { cost: 1000, use: [5, 30] });
    const formula = over(water, [[juice, 20]]);
    // 200 cents are to be 180: at most 18 %. Its group may not fall below 15, and it must not go.
    expect(shareOf(await best(formula, [water, juice], { costAtMost: 180 }), juice)).toBeCloseTo(18, 2);
    expect((await ask(formula, [water, juice], { costAtMost: 140 })).status).toBe('none');
  });
});
