import { runCase } from '@core/cases/run-case';
import { describe, expect, it } from 'vitest';

type Row = readonly [kind: string, inputs: Record<string, unknown>, expected: unknown, byHand: string];

const figure = (value: number) => ({ value, unit: '', tolerance: Math.max(1e-9, Math.abs(value) * 1e-3) });
const expectedOf = (expected: unknown): unknown => {
  if (typeof expected === 'number') return figure(expected);
  if (typeof expected !== 'object' || expected === null || Array.isArray(expected)) return expected;
  return Object.fromEntries(
    Object.entries(expected).map(([name, value]) => [
      name,
      typeof value === 'number' ? figure(value) : value,
    ]),
  );
};
const run = (kind: string, inputs: unknown, expected: unknown) =>
  runCase({ id: kind, kind, inputs, expect: expectedOf(expected) }, '');

const user = { amountGramsPerDay: 10, bodyWeight: 60, concentrationPercent: 1, absorptionPercent: 50 };
const LINE = { times: [0, 3, 6], values: [100, 97, 94] };

const BY_HAND: readonly Row[] = [
  // SCCS Notes of Guidance: SED = amount × concentration × absorption / body weight; margin = point of departure / SED.
  ['sed', user, 0.833333, '10,000 mg / 60 kg × 1 % × 50 %'],
  ['sed', { ...user, retention: 0.01 }, 0.00833333, 'a hundredth stays on: rinsed off'],
  ['margin-of-safety', { ...user, pod: 100 }, 120, '100 / 0.83333'],
  ['margin-of-safety', { ...user, pod: 100, oralBioavailabilityPercent: 50 }, 60, '50 / 0.83333'],
  [
    'margin-of-safety',
    { pod: 10, absorbedPerArea: 10, area: 600, applicationsPerDay: 1, bodyWeight: 60 },
    100,
    '10 µg × 600 cm² / 60 kg = 0.1 mg/kg; 10 / 0.1',
  ],
  [
    'margin-of-safety',
    { pod: 10, absorbedPerArea: 10, area: 600, applicationsPerDay: 2, bodyWeight: 60 },
    50,
    'twice a day',
  ],
  [
    'max-concentration-for-mos',
    { pod: 100, amountGramsPerDay: 10, bodyWeight: 60, absorptionPercent: 50, mos: 100 },
    1.2,
    '120 at 1 %, so 100 at 1.2 %',
  ],
  ['ttc-dose', { ttcPerKg: 30, bodyWeight: 60 }, 1800, 'Cramer class I: 30 µg/kg × 60 kg'],
  ['ttc-dose', { ttcPerKg: 1.5, bodyWeight: 60 }, 90, 'Cramer class III: 90 µg a day (Munro 1996)'],
  // ISO 16128-2: natural mass over total mass; of a product the mean by mass, with and without its water.
  ['natural-origin-index', { naturalMass: 3, totalMass: 4 }, 0.75, '3 / 4'],
  [
    'natural-origin-content',
    {
      countFormulationWater: true,
      lines: [
        { percent: 70, index: 1, formulationWater: true },
        { percent: 20, index: 1 },
        { percent: 10, index: 0.5 },
      ],
    },
    95,
    '70 + 20 + 5',
  ],
  [
    'natural-origin-content',
    {
      countFormulationWater: false,
      lines: [
        { percent: 70, index: 1, formulationWater: true },
        { percent: 20, index: 1 },
        { percent: 10, index: 0.5 },
      ],
    },
    83.3333,
    '25 / 30',
  ],
  [
    'expressed-as',
    { percent: 0.5, formula: 'C7H5NaO2', referenceFormula: 'C7H6O2', referencePerMole: 1 },
    0.423729,
    '0.5 × 122.123 / 144.105: sodium benzoate as the acid',
  ],
  [
    'expressed-as',
    { percent: 1, formula: 'C12H22CaO14', referenceFormula: 'C6H12O7', referencePerMole: 2 },
    0.91155,
    '392.306 / 430.373: two of gluconic acid in its calcium salt',
  ],
  [
    'allergen-amount',
    { fragrancePercent: 0.5, sharePercent: 0.2 },
    0.001,
    '0.5 × 0.2 / 100: the leave-on limit itself',
  ],
  ['kunieda-hlb-temperature', { k: 17, nHlb: 10, nOil: 7 }, 51, '17 × 3'],
  // CRC Handbook, glycerol at 20 °C, from memory: 6.00 mPa·s at 50 %.
  ['glycerol-viscosity', { percent: 50, temperature: 20 }, 6.0, 'CRC Handbook'],
  [
    'viscosity-refutas',
    {
      components: [
        { massFraction: 0.5, viscosity: 10 },
        { massFraction: 0.5, viscosity: 100 },
      ],
    },
    26.66,
    'indices 23.575 and 33.196, mean 28.386; e^(e^1.19792) − 0.8',
  ],
  [
    'linear-regression',
    { x: [1, 2, 3], y: [1, 2, 4] },
    {
      slope: 1.5,
      intercept: -0.666667,
      slopeSe: 0.288675,
      interceptSe: 0.62361,
      residualSd: 0.408248,
      rSquared: 0.964286,
    },
    'squares left 1/6 of 14/3',
  ],
  ['stability-crossing', { ...LINE, limit: 90 }, 10, 'a per cent a month from 100'],
  [
    'stability-shelf-life',
    { ...LINE, limit: 90, confidence: 0.95, direction: 'decreasing' },
    10,
    'without spread the confidence limit is the line',
  ],
  // ICH Q1E, from memory: no significant change, analysed: twice, 12 months more at most; not analysed 1.5 times, 6 more.
  [
    'q1e-extrapolation',
    { longTermMonths: 12, accelerated: 'no significant change', statistics: true },
    24,
    '2 × 12',
  ],
  [
    'q1e-extrapolation',
    { longTermMonths: 18, accelerated: 'no significant change', statistics: true },
    30,
    '18 + 12',
  ],
  [
    'q1e-extrapolation',
    { longTermMonths: 12, accelerated: 'no significant change', statistics: false },
    18,
    '1.5 × 12',
  ],
  [
    'activation-energy',
    { q10: 2, temperature1: 25, temperature2: 35 },
    52.949,
    'R ln 2 / (1/298.15 − 1/308.15), kJ/mol',
  ],
  [
    'arrhenius-energy',
    {
      points: [
        { temperature: 25, rate: 1 },
        { temperature: 35, rate: 2 },
      ],
    },
    52.949,
    'the same, from two rates',
  ],
  [
    'arrhenius-rate',
    { rate1: 1, temperature1: 25, temperature2: 35, activationEnergy: 52.949 },
    2,
    'and back',
  ],
  // OIML R 76: class III, 0.5 e to 500 e, 1 e to 2,000 e, 1.5 e to 10,000 e.
  ['scale-mpe', { accuracyClass: 'III', e: 1, load: 500 }, 0.5, '0.5 e'],
  ['scale-mpe', { accuracyClass: 'III', e: 1, load: 501 }, 1, '1 e'],
  ['scale-mpe', { accuracyClass: 'III', e: 5, load: 15_000 }, 7.5, '3,000 e: 1.5 × 5'],
  // Directive 76/211/EEC, Annex II: 0.640 for 20, 0.503 for 30, 0.379 for 50.
  ['mean-acceptance-factor', { sampleSize: 20, confidence: 0.995 }, 0.6397, 't 2.861 / √20'],
  ['mean-acceptance-factor', { sampleSize: 50, confidence: 0.995 }, 0.379, 't 2.680 / √50'],
  ['prepackage-min-mean', { nominal: 100, standardDeviation: 2, sampleSize: 30 }, 98.994, '100 − 0.503 × 2'],
  ['us-mav', { labelGrams: 100 }, 7.2, 'NIST Handbook 133, table 2-5'],
  ['us-mav', { labelGrams: 30 }, 3, '10 % of small ones'],
  ['us-sample-correction-factor', { sampleSize: 12 }, 0.63537, 't 2.200985 / √12'],
  [
    'stokes-velocity',
    { radius: 1e-6, densityDifference: 100, viscosity: 1e-3 },
    2.17926e-7,
    '2 × 10⁻¹² × 100 × 9.80665 / 0.009',
  ],
  [
    'buffer-ph-activity',
    { acids: [{ pKa: [4.76], concentration: 0.1 }], strongCation: 0.05, temperature: 25 },
    4.675,
    '4.76 − 0.5085 (0.2236 / 1.2236 − 0.015): half neutralised, ionic strength 0.05',
  ],
  [
    'water-activity-norrish',
    { k: 0, solutePercent: 50, soluteMolarMass: 18.0153 },
    0.5,
    'as many moles as of water',
  ],
];

describe('a worked example of a standard or a law', () => {
  it.each(BY_HAND)('%s of %j is %j: %s', (kind, inputs, expected, _) => {
    expect(run(kind, inputs, expected)).toMatchObject({ passed: true, why: '' });
  });

  it.each(BY_HAND.filter(([, , expected]) => typeof expected === 'number'))(
    '%s of %j, a hundredth off, does not pass',
    (kind, inputs, expected, _) => {
      for (const by of [0.99, 1.01]) expect(run(kind, inputs, (expected as number) * by).passed).toBe(false);
    },
  );

  const OPTIONAL = ['oralBioavailabilityPercent', 'retention'];
  it.each(BY_HAND)('%s of %j asks for each thing that is left out', (kind, inputs, expected, _) => {
    for (const left of Object.keys(inputs).filter((key) => !OPTIONAL.includes(key))) {
      const rest = Object.fromEntries(Object.entries(inputs).filter(([key]) => key !== left));
      const { passed, why } = run(kind, rest, expected);
      expect([left, passed]).toEqual([left, false]);
      expect(why, left).not.toBe('');
    }
  });
});
