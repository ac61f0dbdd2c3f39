import { runCase } from '@core/cases/run-case';
import { describe, expect, it } from 'vitest';

type Row = readonly [kind: string, inputs: Record<string, unknown>, value: number, byHand: string];

/** One of each kind, worked with paper and a table of logarithms; the formulas are those of the sources the laws name. */
const BY_HAND: readonly Row[] = [
  ['hlb-ethoxylate', { oxyethylenePercent: 85 }, 17, '85 / 5'],
  ['hlb-ethoxylate', { oxyethylenePercent: 0 }, 0, '0 / 5'],
  [
    'hlb-ester',
    { saponificationNumber: 45.5, acidNumber: 276 },
    16.7029,
    '20 (1 − 0.164855), Griffin 1954: 16.7',
  ],
  [
    'hlb-ester',
    { saponificationNumber: 161, acidNumber: 198 },
    3.7374,
    '20 (1 − 0.813131), Griffin 1954: 3.8',
  ],
  ['hlb-mass', { hydrophilicMolarMass: 176.2, molarMass: 352.4 }, 10, '20 × 1/2'],
  ['hlb-davies', { groups: { hydroxyl: 1, carbon: 16 } }, 1.3, '7 + 1.9 − 7.6, cetyl alcohol'],
  [
    'hlb-davies',
    { groups: { 'carboxylate-k': 1, carbon: 17 } },
    20.025,
    '7 + 21.1 − 8.075, potassium oleate',
  ],
  ['hlb-davies', { groups: { 'carboxylate-na': 1, carbon: 17 } }, 18.025, '7 + 19.1 − 8.075, sodium oleate'],
  [
    'required-hlb',
    {
      oils: [
        { mass: 30, requiredHlb: 12 },
        { mass: 10, requiredHlb: 8 },
      ],
    },
    11,
    '(360 + 80) / 40',
  ],
  [
    'blend-hlb',
    {
      emulsifiers: [
        { mass: 7, hlb: 4.7 },
        { mass: 3, hlb: 14.9 },
      ],
    },
    7.76,
    '3.29 + 4.47',
  ],
  ['blend-share', { targetHlb: 10, lowHlb: 4.3, highHlb: 15 }, 53.271, '100 × 5.7 / 10.7'],
  [
    'eacn-mix',
    {
      oils: [
        { fraction: 0.25, eacn: 6 },
        { fraction: 0.75, eacn: 10 },
      ],
    },
    9,
    '1.5 + 7.5',
  ],
  [
    'cc-mix',
    {
      surfactants: [
        { moleFraction: 0.25, cc: -2 },
        { moleFraction: 0.75, cc: 2 },
      ],
    },
    1,
    '−0.5 + 1.5',
  ],
  [
    'hld-ionic',
    { salinityPercent: 5, eacn: 8, temperature: 35, cc: -2, alcoholTerm: 0, k: 0.17, alphaT: 0.01 },
    -1.85056,
    '1.60944 − 1.36 − 0.1 − 2',
  ],
  [
    'hld-nonionic',
    { salinityPercent: 2, eacn: 6, temperature: 40, cc: 1, alcoholTerm: 0, k: 0.15, b: 0.13, cT: 0.06 },
    1.26,
    '0.26 − 0.9 + 0.9 + 1',
  ],
  [
    'hld-zero-temperature',
    { salinityPercent: 2, eacn: 6, cc: 1, alcoholTerm: 0, k: 0.15, b: 0.13, cT: 0.06 },
    19,
    '25 − 0.36 / 0.06',
  ],
  [
    'hld-zero-salinity',
    { eacn: 8, temperature: 35, cc: -2, alcoholTerm: 0, k: 0.17, alphaT: 0.01 },
    31.817,
    'e^3.46 = 20.0855 × 1.58407',
  ],
  [
    'neutralisation',
    {
      acidMass: 100,
      acidValue: 200,
      baseMolarMass: 39.997,
      baseEquivalents: 1,
      baseConcentrationPercent: 10,
      fraction: 0.5,
    },
    71.29,
    '100 × 200 / 56.105 × 0.5 = 178.24 mmol; × 39.997 = 7.129 g; / 0.1',
  ],
  ['undissociated-percent', { pKa: 4.76, pH: 5.76 }, 9.0909, '100 / 11'],
  ['undissociated-amount', { pKa: 4.76, pH: 5.76, totalPercent: 0.5 }, 0.045455, '0.5 / 11'],
  ['rcf', { radiusCm: 10, rpm: 3000 }, 1006.2, '1.118e-5 × 10 × 9e6'],
  ['accelerated-ageing', { realTemperature: 25, testTemperature: 45, q10: 2, realTime: 12 }, 3, '12 / 2^2'],
  ['q10-shelf-life', { q10: 2, knownTemperature: 45, knownTime: 3, temperature: 25 }, 12, '3 × 2^2'],
  [
    'suspension-viscosity',
    { phi: 0.3, phiMax: 0.6, intrinsicViscosity: 2.5, mediumViscosity: 1 },
    2.828427,
    '0.5^−1.5 = √8',
  ],
  ['molar-mass', { formula: 'C6H8O7·H2O' }, 210.138, '192.123 + 18.015'],
  ['molar-mass', { smiles: 'CCO' }, 46.069, '24.022 + 6.048 + 15.999'],
  ['dilution', { c1: 10, v1: 5, c2: 2 }, 25, '10 × 5 / 2'],
  ['density-fill', { volume: 50, density: 0.95 }, 47.5, '50 × 0.95'],
  [
    'pit-mix',
    {
      oils: [
        { volumeFraction: 0.25, pit: 60 },
        { volumeFraction: 0.75, pit: 80 },
      ],
    },
    75,
    '15 + 60',
  ],
  ['refutas-index', { viscosity: 10 }, 23.575, '14.534 × ln(ln 10.8) + 10.975 = 14.534 × 0.86691 + 10.975'],
  [
    'viscosity-log-mix',
    {
      components: [
        { fraction: 0.5, viscosity: 10 },
        { fraction: 0.5, viscosity: 1000 },
      ],
    },
    100,
    '√(10 × 1000)',
  ],
  [
    'viscosity-cube-root',
    {
      components: [
        { fraction: 0.5, viscosity: 1 },
        { fraction: 0.5, viscosity: 1000 },
      ],
    },
    166.375,
    '(0.5 + 5)³',
  ],
  [
    'viscosity-two-temperatures',
    { temperature1: 20, viscosity1: 100, temperature2: 40, viscosity2: 25, temperature: 20 },
    100,
    'one of the two itself',
  ],
];

const figure = (value: number) => ({ value, unit: '', tolerance: Math.max(1e-9, Math.abs(value) * 2e-4) });
const run = (kind: string, inputs: unknown, value: number) =>
  runCase({ id: kind, kind, inputs, expect: figure(value) }, '');

describe('a worked example by hand', () => {
  it.each(BY_HAND)('%s of %j is %d: %s', (kind, inputs, value, _) => {
    expect(run(kind, inputs, value)).toMatchObject({ passed: true, why: '' });
    // The same with the figure a thousandth off does not pass: the comparison compares.
    expect(run(kind, inputs, value === 0 ? 1 : value * 1.001).passed).toBe(false);
  });

  it.each(BY_HAND)('%s without one of its inputs says which is missing', (kind, inputs, value, _) => {
    for (const left of Object.keys(inputs)) {
      if (left === 'alcoholTerm') continue;
      const rest = Object.fromEntries(Object.entries(inputs).filter(([key]) => key !== left));
      const { passed, why } = run(kind, rest, value);
      expect(passed, left).toBe(false);
      expect(why, left).toMatch(/^inputs: /);
      expect(why, left).toContain(left);
    }
  });

  it.each(BY_HAND)('%s takes no text, list or nothing for a number', (kind, inputs, value, _) => {
    for (const [name, given] of Object.entries(inputs))
      for (const wrong of ['12', [], {}, true]) {
        if (typeof given !== 'number') continue;
        const { passed, why } = run(kind, { ...inputs, [name]: wrong }, value);
        expect(passed, name).toBe(false);
        expect(why, name).toContain(name);
      }
  });

  it.each(BY_HAND)('%s ignores what it does not ask for', (kind, inputs, value, _) => {
    expect(run(kind, { ...inputs, remark: 'from a book', page: 12 }, value).passed).toBe(true);
  });
});

describe('what a law cannot compute is refused, not computed', () => {
  it.each([
    ['hlb-ethoxylate', { oxyethylenePercent: 100.5 }, /Oxyethylene is 100\.5 %/],
    ['hlb-ester', { saponificationNumber: 1, acidNumber: 0 }, /more than zero/],
    ['hlb-mass', { hydrophilicMolarMass: 2, molarMass: 1 }, /heavier than the whole/],
    ['hlb-davies', { groups: {} }, /no groups/],
    ['hlb-davies', { groups: { phosphate: 1 } }, /phosphate/],
    ['required-hlb', { oils: [] }, /no oils/],
    ['required-hlb', { oils: [{ mass: 0, requiredHlb: 10 }] }, /weigh nothing/],
    ['blend-hlb', { emulsifiers: [] }, /at least one emulsifier/],
    ['blend-share', { targetHlb: 16, lowHlb: 4, highHlb: 15 }, /1 above what this pair reaches/],
    ['blend-share', { targetHlb: 3, lowHlb: 4, highHlb: 15 }, /1 below what this pair reaches/],
    ['blend-share', { targetHlb: 3, lowHlb: 4, highHlb: 4 }, /any ratio gives 4/],
    ['eacn-mix', { oils: [{ fraction: 0.5, eacn: 8 }] }, /sum to 0\.5, not to 1/],
    ['eacn-mix', { oils: [{ fraction: 50, eacn: 8 }] }, /between 0 and 1/],
    ['cc-mix', { surfactants: [] }, /no surfactant/],
    [
      'hld-ionic',
      { salinityPercent: 0, eacn: 8, temperature: 25, cc: 0, k: 0.17, alphaT: 0.01 },
      /Salinity is 0/,
    ],
    [
      'hld-zero-temperature',
      { salinityPercent: 0, eacn: 8, cc: 0, k: 0.17, b: 0.1, cT: 0 },
      /does not change with temperature/,
    ],
    ['undissociated-percent', { pKa: 4, pH: 14.5 }, /pH is 14\.5/],
    ['undissociated-amount', { pKa: 4, pH: 4, totalPercent: 101 }, /Dose of the acid/],
    ['dilution', { c1: 0, v1: 1, c2: 1 }, /Concentration now is 0/],
    ['molar-mass', { formula: 'Xx2' }, /not an element/],
    ['molar-mass', { smiles: 'C(' }, /brackets do not pair/],
  ] as const)('%s of %j', (kind, inputs, says) => {
    const refused = runCase({ id: kind, kind, inputs, expect: 'refused' }, '');
    expect(refused).toMatchObject({ passed: true, got: 'refused' });
    expect(refused.why).toMatch(says);
    expect(run(kind, inputs, 1).passed).toBe(false);
  });
});
