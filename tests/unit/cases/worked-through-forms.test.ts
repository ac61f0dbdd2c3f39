import { runCase } from '@core/cases/run-case';
import { describe, expect, it } from 'vitest';

type Row = readonly [kind: string, inputs: Record<string, unknown>, expected: unknown, byHand: string];

const fig = (value: number) => ({ value, unit: '', tolerance: Math.max(1e-9, Math.abs(value) * 1e-3) });
const organism = (type: string, ...logs: number[]) => ({
  organism: `one of the ${type}`,
  type,
  logReductions: Object.fromEntries(logs.map((log, at) => [String([7, 14, 28][at]), log])),
});

/** Kinds that run a form of the screens or a law of the rooms beside; worked with paper. */
const BY_HAND: readonly Row[] = [
  // USP 41: 2 s / 0.1 %, s not below 0.41 of the readability.
  ['minimum-weight', { standardDeviation: 0.1, readability: 0.1, limitPercent: 0.1 }, 200, '2 × 0.1 / 0.001'],
  ['minimum-weight', { standardDeviation: 0, readability: 0.1, limitPercent: 0.1 }, 82, '2 × 0.041 / 0.001'],
  ['minimum-weight', { standardDeviation: 0.1, readability: 0.1, limitPercent: 1 }, 20, '2 × 0.1 / 0.01'],
  [
    'readability-sd',
    { readability: 1 },
    0.408248,
    'two roundings of d / √12: d / √6, which USP 41 prints as 0.41 d',
  ],
  // Directive 76/211/EEC, Annex I, from memory.
  ['prepackage-tne', { nominal: 30 }, 2.7, '9 % up to 50'],
  ['prepackage-tne', { nominal: 50 }, 4.5, '9 % of 50'],
  ['prepackage-tne', { nominal: 75 }, 4.5, '4.5 from 50 to 100'],
  ['prepackage-tne', { nominal: 150 }, 6.8, '4.5 % from 100 to 200, rounded up to a tenth'],
  ['prepackage-tne', { nominal: 250 }, 9, '9 from 200 to 300'],
  ['prepackage-tne', { nominal: 400 }, 12, '3 % from 300 to 500'],
  ['prepackage-tne', { nominal: 750 }, 15, '15 from 500 to 1000'],
  ['prepackage-limits', { nominal: 75 }, { t1: 70.5, t2: 66 }, '75 − 4.5, 75 − 9'],
  ['prepackage-limits', { nominal: 250 }, { t1: 241, t2: 232 }, '250 − 9, 250 − 18'],
  ['sample-sd', { values: [9.8, 10, 10.2] }, { mean: 10, standardDeviation: 0.2 }, '√(0.08 / 2)'],
  ['sample-sd', { values: [1, 2, 3, 4] }, { mean: 2.5, standardDeviation: 1.29099 }, '√(5 / 3)'],
  ['log-reduction', { initial: 1e6, final: 1e3 }, 3, 'log 1000'],
  ['log-reduction', { initial: 5e5, final: 50 }, 4, 'log 10,000'],
  ['log-to-percent', { logReduction: 1 }, 90, '100 (1 − 1/10)'],
  ['log-to-percent', { logReduction: 3 }, 99.9, '100 (1 − 1/1000)'],
  ['density-from-mass', { mass: 92, volume: 100 }, 0.92, '92 / 100'],
  ['volume-from-mass', { mass: 92, density: 0.92 }, 100, '92 / 0.92'],
  ['pycnometer', { empty: 20, withWater: 70, withLiquid: 66 }, 0.92, '46 / 50'],
  ['displacement-specific-gravity', { inAir: 30, inWater: 20, inLiquid: 20.8 }, 0.92, '9.2 / 10'],
  ['buffer-ph', { pKa: 4.76, acid: 0.1, salt: 1 }, 5.76, '4.76 + log 10'],
  ['buffer-ratio', { pKa: 4.76, pH: 5.76 }, 10, '10^1'],
  ['buffer-capacity', { totalConcentration: 0.1, pKa: 5, pH: 5 }, 0.05756, '2.3026 × 0.1 / 4'],
  ['weak-acid-ph', { ka: 1e-5, concentration: 0.1 }, 3.002, '√(1e-6), with the quadratic'],
  [
    'ionic-strength',
    {
      ions: [
        { concentration: 0.1, charge: 2 },
        { concentration: 0.1, charge: -2 },
      ],
    },
    0.4,
    '(0.4 + 0.4) / 2',
  ],
  ['water-activity-norrish', { k: 0, molality: 55.51 }, 0.5, '55.51 / 111.02'],
  ['product-exposure', { amount: 18.67, retention: 0.01 }, 0.1867, '18.67 × 0.01'],
  ['aggregate-exposure', { exposures: [1.5, 0.25, 0.25] }, 2, '1.5 + 0.25 + 0.25'],
  ['hansen-total', { d: 3, p: 4, h: 12 }, 13, '√(9 + 16 + 144)'],
  // 4 (Δd)² + (Δp)² + (Δh)².
  ['hansen-distance', { a: { d: 16, p: 4, h: 8 }, b: { d: 15, p: 4, h: 8 } }, 2, '√4'],
  ['hansen-distance', { a: { d: 16, p: 4, h: 8 }, b: { d: 16, p: 7, h: 12 } }, 5, '√(9 + 16)'],
  [
    'hansen-red',
    { solute: { d: 16, p: 4, h: 8 }, radius: 10, solvent: { d: 16, p: 7, h: 12 } },
    0.5,
    '5 / 10',
  ],
  [
    'hansen-blend',
    {
      components: [
        { volumeFraction: 0.5, d: 16, p: 0, h: 0 },
        { volumeFraction: 0.5, d: 16, p: 8, h: 20 },
      ],
    },
    { d: 16, p: 4, h: 10 },
    'means',
  ],
  ['pit-salt-shift', { b: 0.13, cT: 0.06, salinityPercent: 6 }, -13, '−0.13 × 6 / 0.06'],
];

const expectedOf = (expected: unknown): unknown =>
  typeof expected === 'number'
    ? fig(expected)
    : Object.fromEntries(
        Object.entries(expected as Record<string, number>).map(([name, value]) => [name, fig(value)]),
      );
const run = (kind: string, inputs: unknown, expected: unknown) =>
  runCase({ id: kind, kind, inputs, expect: expected }, '');

describe('a worked example by hand', () => {
  it.each(BY_HAND)('%s of %j is %j: %s', (kind, inputs, expected, _) => {
    expect(run(kind, inputs, expectedOf(expected))).toMatchObject({ passed: true, why: '' });
  });

  it.each(BY_HAND)('%s without one of its inputs is told, not computed', (kind, inputs, expected, _) => {
    for (const left of Object.keys(inputs)) {
      const rest = Object.fromEntries(Object.entries(inputs).filter(([key]) => key !== left));
      const { passed, why } = run(kind, rest, expectedOf(expected));
      expect(passed, left).toBe(false);
      expect(why, left).not.toBe('');
    }
  });

  it.each(BY_HAND)('%s never passes a refusal for inputs that can be computed', (kind, inputs, _, __) => {
    expect(run(kind, inputs, 'refused').passed).toBe(false);
  });
});

describe('a count against its limit', () => {
  // ISO 17516: 1,000 per g, 100 for products near the eye, for children under three, or mucous membranes; from memory.
  it('that is not a yes or a no is malformed', () => {
    const inputs = { productGroup: 'nobody', totalCount: 1, specifiedAbsent: true };
    expect(run('micro-limit', inputs, 'refused')).toMatchObject({ passed: false });
    expect(run('micro-limit', inputs, 'refused').why).toMatch(/productGroup must be/);
  });

  it('a challenge test of an unknown kind of organism is malformed', () => {
    const { passed, why } = run(
      'preservation-iso11930',
      { organisms: [organism('viruses', 3, 3, 3)] },
      'refused',
    );
    expect(passed).toBe(false);
    expect(why).toMatch(/must be /);
  });
});
