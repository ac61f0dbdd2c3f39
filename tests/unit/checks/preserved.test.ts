import { describe, expect, it } from 'vitest';
import { blankTarget } from '@core/formulas/formula';
import { bindingByEthoxylates, freeInWater } from '@core/preservation/free-in-water';
import { agentOf } from '@core/preservation/agents';
import { activityOfWater } from '@core/solutions/humectants';
import { figure, findingsOf, make, type Row } from './build';
import * as shelf from './materials';

const atPh = (phLow: number, phHigh: number) => ({ target: { ...blankTarget(), phLow, phHigh } });
const keeps = (inci: string | string[]) => make('Keeps', inci, { functions: ['preservative'] });

describe('what of a preservative is left free in the water', () => {
  // J. Soc. Cosmet. Chem. 23, 716 (1972), Table VIII: methyl paraben beside liquid paraffin (K 0.02) and soya oil (K 80).
  it.each([
    [0.1, 0.11, 0.02, 0.11],
    [0.1, 0.25, 0.02, 0.12],
    [0.1, 0.43, 0.02, 0.14],
    [0.1, 0.66, 0.02, 0.16],
    [0.1, 1, 0.02, 0.2],
    [0.2, 0.25, 80, 0.012],
    [0.2, 0.43, 80, 0.008],
    [0.2, 0.66, 80, 0.006],
    [0.2, 1, 80, 0.005],
  ])('%f %% at oil to water %f, K %f: %f %%', (total, oilToWater, partition, free) => {
    const got = freeInWater({
      ...{ total, oilToWater, partition, binding: 0, ethoxylates: 0 },
      undissociated: 1,
    }).value;
    expect(Math.abs(got - free)).toBeLessThan(free < 0.05 ? 0.0006 : 0.0067);
  });

  it('5 % of polysorbate 80 leave 22 % of methylparaben and 4.5 % of propylparaben (Patel and Kostenbauder 1958, from memory)', () => {
    const free = (logP: number) =>
      freeInWater({
        ...{ total: 100, oilToWater: 0, partition: 0, binding: bindingByEthoxylates(logP), ethoxylates: 5 },
        undissociated: 1,
      }).value;
    expect(free(1.96)).toBeCloseTo(22, 6);
    expect(free(3.04)).toBeCloseTo(4.5, 6);
    expect(free(1.16)).toBeGreaterThan(22);
  });

  it('an acid divides itself as far as it is undissociated, and only that counts', () => {
    const at = (undissociated: number) =>
      freeInWater({
        ...{ total: 0.3, oilToWater: 0.5, partition: 4, binding: 0.5, ethoxylates: 4 },
        undissociated,
      }).value;
    // By hand at one half: 0.3 · 1.5 / (4 · 0.5 · 0.5 + 1 + 0.5 · 4 · 0.5) = 0.15, of it half.
    expect(at(0.5)).toBeCloseTo(0.075, 10);
    expect(at(0.1)).toBeLessThan(at(0.5));
  });

  const polysorbate = make('Hold', 'Polysorbate 80', {
    functions: ['emulsifier'],
    figures: { hlb: figure(15) },
  });
  const seed = make('Sun', 'Helianthus Annuus Seed Oil', { functions: ['emollient'], phaseOfUse: 'oil' });
  const cream = (preservative: Row, oil: Row): Row[] => [
    [shelf.water(), 70],
    oil,
    [polysorbate, 5],
    preservative,
  ];
  it('warns of methylparaben beside seed oil and polysorbate, with its working; not beside water alone', () => {
    const [found] = findingsOf('preservative-free', cream([keeps('Methylparaben'), 0.2], [seed, 20]));
    expect(found).toMatchObject({ severity: 'warn' });
    // By hand: φ = 20/70; S = 5/70 %; R = 1 + 0.709 · 7.143 = 6.06; 0.2 · 1.2857 / (7.5 · 0.2857 + 6.06) = 0.0313.
    expect(found?.title).toContain('0.0313 % of methylparaben of 0.2 %');
    expect(found?.working?.steps.length).toBe(2);
    expect(
      findingsOf('preservative-free', [
        [shelf.water(), 99],
        [keeps('Methylparaben'), 0.2],
      ]),
    ).toEqual([]);
  });
  it('is silent of enough, and of a preservative whose division it does not know', () => {
    expect(
      findingsOf('preservative-free', cream([keeps('Phenoxyethanol'), 1], [shelf.mineralOil(), 10])),
    ).toEqual([]);
    expect(findingsOf('preservative-free', cream([keeps('Chlorphenesin'), 0.01], [seed, 20]))).toEqual([]);
  });
});

describe('bacteria, yeasts and moulds', () => {
  const at = (rows: Row[], low = 4.8, high = 5.2) =>
    findingsOf('preservative-spectrum', [[shelf.water(), 90], ...rows], atPh(low, high));
  it('each need something at a dose that acts', () => {
    expect(at([[keeps('Iodopropynyl Butylcarbamate'), 0.01]])[0]).toMatchObject({ severity: 'warn' });
    expect(at([[keeps('Iodopropynyl Butylcarbamate'), 0.01]])[0]?.title).toContain(
      'Gram-positive bacteria and Gram-negative bacteria',
    );
    const both: Row[] = [
      [keeps('Iodopropynyl Butylcarbamate'), 0.01],
      [keeps('2-Bromo-2-Nitropropane-1,3-Diol'), 0.05],
    ];
    expect(at(both)).toEqual([]);
  });
  it('an acid counts by its undissociated dose: benzoate with sorbate at pH 5, not at pH 6.5', () => {
    const pair: Row[] = [
      [keeps('Sodium Benzoate'), 0.4],
      [keeps('Potassium Sorbate'), 0.3],
    ];
    expect(at(pair)[0]?.severity).toBe('note');
    const [weak] = at(pair, 6, 6.5);
    expect(weak?.severity).toBe('warn');
    expect(weak?.advice).toContain('undissociated at pH 6.5');
  });
  it('a booster lifts a weak preservative; one that is not known is not judged', () => {
    const booster = make('Lift', 'Caprylyl Glycol', { functions: ['preservative booster'] });
    expect(at([[keeps('Phenoxyethanol'), 0.8]])[0]?.severity).toBe('note');
    expect(
      at([
        [keeps('Phenoxyethanol'), 0.8],
        [booster, 0.3],
      ]),
    ).toEqual([]);
    expect(at([[keeps('Something New'), 0.8]])).toEqual([]);
  });
  it('knows whole names only', () => {
    expect(agentOf('Ethylhexyl Salicylate')).toBeNull();
    expect(agentOf('Sodium Benzoate')?.name).toBe('benzoic acid');
    expect(agentOf('Sodium Benzotriazolyl Butylphenol Sulfonate')).toBeNull();
  });
});

describe('water activity', () => {
  const glycerin = make('Sweet', 'Glycerin');
  it('is told with what still grows, from the point where something stops', () => {
    // Scott 1957, from memory: glycerol at 3.32 mol/kg has 0.94. 30.6 g in 100 g of water.
    const [found] = findingsOf('water-activity', [
      [shelf.water(), 75],
      [glycerin, 25],
    ]);
    expect(found?.title).toMatch(/^Water activity about 0.93: Pseudomonas/);
    expect(
      findingsOf('water-activity', [
        [shelf.water(), 85],
        [glycerin, 15],
      ]),
    ).toEqual([]);
    expect(findingsOf('water-activity', [[glycerin, 100]])).toEqual([]);
  });
  it('multiplies what each solute leaves (Ross), and counts both ions of salt', () => {
    const dose = (inci: string, ppm: number) => ({ material: make(inci, inci), ppm });
    const both = [dose('Glycerin', 100_000), dose('Sodium Chloride', 50_000)];
    const of = (lines: typeof both) => activityOfWater(lines, 85)?.value ?? 1;
    expect(of(both)).toBeCloseTo(of([both[0]!]) * of([both[1]!]), 12);
    // Scott 1957, from memory: sodium chloride at 1.20 mol/kg has 0.96; 5 g in 85 g of water are 1.007 mol/kg.
    expect(of([both[1]!])).toBeGreaterThan(0.96);
    expect(of([both[1]!])).toBeLessThan(0.98);
  });
});
