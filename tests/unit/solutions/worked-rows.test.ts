import { baseToPh, amineUptake } from '@core/solutions/base-to-ph';
import { bufferCapacity, bufferPh, bufferRatio } from '@core/solutions/buffer';
import { ionicStrength } from '@core/solutions/ionic-strength';
import type { Solution } from '@core/solutions/solution';
import { solutionPh } from '@core/solutions/solution-ph';
import { waterActivity, waterActivityOfPercent } from '@core/solutions/water-activity';
import { describe, expect, it } from 'vitest';
import { refusal } from '../working/refusal';

const ph = (part: Partial<Solution>): number =>
  solutionPh({
    protolytes: [],
    strongCation: 0,
    strongAnion: 0,
    temperature: 25,
    activities: 'none',
    ...part,
  }).pH.value;
const acid = (concentration: number, ...pKas: number[]) => [{ name: 'acid', pKas, charge: 0, concentration }];

describe('the pH of a solution, as students work it', () => {
  it.each([
    // √(Ka C), solved with the quadratic where that is too rough; pKas of the CRC Handbook, from memory.
    ['acetic acid 0.1 mol/L', acid(0.1, 4.756), 0, 2.88],
    ['acetic acid 0.001 mol/L', acid(0.001, 4.756), 0, 3.91],
    ['lactic acid 0.1 mol/L', acid(0.1, 3.86), 0, 2.44],
    ['citric acid 0.1 mol/L', acid(0.1, 3.13, 4.76, 6.4), 0, 2.08],
    ['benzoic acid 0.01 mol/L', acid(0.01, 4.2), 0, 3.12],
    ['half neutralised acetic acid: its pKa', acid(0.1, 4.756), 0.05, 4.757],
    ['sodium acetate 0.1 mol/L', acid(0.1, 4.756), 0.1, 8.88],
    ['sodium benzoate 0.1 mol/L', acid(0.1, 4.2), 0.1, 8.6],
    ['disodium citrate of 0.1 mol/L: between its pKas', acid(0.1, 3.13, 4.76, 6.4), 0.2, 5.58],
  ] as const)('%s', (_, protolytes, strongCation, expected) =>
    expect(ph({ protolytes: [...protolytes], strongCation })).toBeCloseTo(expected, 1),
  );

  it('of an amine: 0.1 mol/L of triethanolamine, pKa 7.76, is at 10.4', () => {
    // √(Kb C): pOH = (6.24 + 1) / 2 = 3.62.
    const amine = [{ name: 'amine', pKas: [7.76], charge: 1, concentration: 0.1 }];
    expect(ph({ protolytes: amine })).toBeCloseTo(10.38, 1);
    // Half of it as its salt: its pKa.
    expect(ph({ protolytes: amine, strongAnion: 0.05 })).toBeCloseTo(7.76, 2);
  });

  it('warms towards acid: neutral water is below 7 above 25 °C, and above it in the cold', () => {
    // pKw 13.26 at 50 °C and 14.94 at 0 °C, CRC Handbook, from memory.
    expect(ph({ temperature: 50 })).toBeCloseTo(6.63, 1);
    expect(ph({ temperature: 0 })).toBeCloseTo(7.47, 1);
  });
});

describe('a buffer by its equation', () => {
  it.each([
    [4.76, 0.1, 0.1, 4.76],
    [4.76, 0.1, 1, 5.76],
    [4.76, 1, 0.1, 3.76],
    [3.86, 0.2, 0.1, 3.559],
    [7.2, 0.04, 0.06, 7.376],
  ])('pKa %d, %d acid and %d salt: pH %d, and back', (pKa, acidic, salt, expected) => {
    expect(bufferPh(pKa, acidic, salt).value).toBeCloseTo(expected, 3);
    expect(bufferRatio(pKa, bufferPh(pKa, acidic, salt).value).value).toBeCloseTo(salt / acidic, 9);
  });

  it.each([
    // Van Slyke: 2.303 C K h / (K + h)²; half and half holds most, 0.576 C.
    [0.1, 5, 5, 0.05756],
    [0.1, 5, 6, 0.01903],
    [0.1, 5, 4, 0.01903],
    [0.2, 5, 5, 0.11513],
  ])('%d mol/L, pKa %d at pH %d holds %d', (total, pKa, at, capacity) =>
    expect(bufferCapacity(total, pKa, at).value).toBeCloseTo(capacity, 3),
  );

  it.each([
    ['no acid', () => bufferPh(4.76, 0, 0.1), /Acid is 0/],
    ['no salt', () => bufferPh(4.76, 0.1, 0), /Salt is 0/],
    ['a pKa that is none', () => bufferPh(25, 0.1, 0.1), /pKa is 25/],
    ['a pH that is none', () => bufferRatio(4.76, 15), /pH is 15/],
    ['nothing to buffer', () => bufferCapacity(0, 4.76, 5), /Acid and salt together is 0/],
  ] as const)('is refused for %s', (_, attempt, says) => {
    refusal(attempt, says);
  });
});

describe('ionic strength', () => {
  const of = (...ions: [number, number][]) =>
    ionicStrength(ions.map(([concentration, charge]) => ({ concentration, charge })));

  it.each([
    [
      'sodium chloride 0.1',
      [
        [0.1, 1],
        [0.1, -1],
      ],
      0.1,
    ],
    [
      'magnesium sulfate 0.1',
      [
        [0.1, 2],
        [0.1, -2],
      ],
      0.4,
    ],
    [
      'calcium chloride 0.1',
      [
        [0.1, 2],
        [0.2, -1],
      ],
      0.3,
    ],
    [
      'sodium sulfate 0.1',
      [
        [0.2, 1],
        [0.1, -2],
      ],
      0.3,
    ],
    [
      'aluminium sulfate 0.1',
      [
        [0.2, 3],
        [0.3, -2],
      ],
      1.5,
    ],
    [
      'trisodium citrate 0.1',
      [
        [0.3, 1],
        [0.1, -3],
      ],
      0.6,
    ],
  ] as const)('of %s mol/L', (_, ions, strength) =>
    expect(of(...ions.map(([c, z]): [number, number] => [c, z])).value).toBeCloseTo(strength, 9),
  );

  it.each([
    ['no ions', () => of(), /There is no ion/],
    ['no charge', () => of([0.1, 0]), /./],
    ['half a charge', () => of([0.1, 0.5]), /./],
    ['a concentration below zero', () => of([-0.1, 1]), /Concentration of an ion/],
    ['a charge of seven', () => of([0.1, 7]), /Charge of an ion is 7/],
  ] as const)('is refused for %s', (_, attempt, says) => {
    refusal(attempt, says);
  });
});

describe('base to a pH', () => {
  const lactic = { pKas: [3.86], concentration: 0.1 };

  it.each([
    // Share of the acid group by Henderson–Hasselbalch, and what the free protons take off it.
    [3.86, 0.5],
    [4.86, 10 / 11],
    [5.86, 100 / 101],
  ])('lactic acid to pH %d takes about %d of its group', (at, share) =>
    expect(baseToPh(lactic, at, null).perGroup.value).toBeCloseTo(share, 2),
  );

  it.each([
    [7.76, 7.76, 0.5],
    [7.76, 6.76, 10 / 11],
    [7.76, 5.76, 100 / 101],
    [9.69, 7, 0.99796],
  ])('an amine of pKa %d takes up acid at pH %d by %d of it', (pKa, at, share) => {
    expect(amineUptake(pKa, at).value).toBeCloseTo(share, 4);
    expect(baseToPh(lactic, 5, pKa).uptake?.value).toBeCloseTo(amineUptake(pKa, 5).value, 9);
  });

  it('of an alkali all takes up acid', () => expect(baseToPh(lactic, 5, null).uptake).toBeNull());

  it.each([
    ['a pH below the acid’s own', () => baseToPh(lactic, 1.5, null), /./],
    ['a pH that is none', () => baseToPh(lactic, 15, null), /pH to reach is 15/],
    ['no acid', () => baseToPh({ pKas: [3.86], concentration: -1 }, 5, null), /Concentration of the acid/],
    ['pKas that fall', () => baseToPh({ pKas: [5, 3], concentration: 0.1 }, 6, null), /./],
  ] as const)('is refused for %s', (_, attempt, says) => {
    refusal(attempt, says);
  });
});

describe('water activity', () => {
  it.each([
    // Raoult: 55.51 / (55.51 + molality); molalities by hand.
    [0, 1],
    [1, 0.98231],
    [5.551, 0.90909],
    [55.51, 0.5],
  ])('of an ideal solute at %d mol/kg is %d', (molality, activity) =>
    expect(waterActivity({ molality, k: 0 }).value).toBeCloseTo(activity, 4),
  );

  it('glycerin lowers it beyond Raoult, more the more there is', () => {
    for (const percent of [10, 30, 50, 70]) {
      const real = waterActivityOfPercent(percent, 92.09, 1.16).value;
      expect(real).toBeLessThan(waterActivityOfPercent(percent, 92.09, 0).value);
      expect(real).toBeGreaterThan(waterActivityOfPercent(percent + 5, 92.09, 1.16).value);
    }
    expect(waterActivityOfPercent(0, 92.09, 1.16).value).toBe(1);
  });

  it.each([
    ['all solute', () => waterActivityOfPercent(100, 92.09, 0), /Solute is 100/],
    ['less than nothing', () => waterActivityOfPercent(-1, 92.09, 0), /Solute is −1/],
    ['no molar mass', () => waterActivityOfPercent(10, 0, 0), /Molar mass of the solute is 0/],
  ] as const)('is refused for %s', (_, attempt, says) => {
    refusal(attempt, says);
  });
});
