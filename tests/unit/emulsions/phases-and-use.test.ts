import fc from 'fast-check';
import { climateOutlook } from '@core/emulsions/climate/climate';
import { internalPhase } from '@core/emulsions/internal-phase';
import { assumedUseCaution, usageRange } from '@core/emulsions/usage-range';
import { outsideWorkingPh, soapAtPh } from '@core/emulsions/working-ph';
import type { Material, MaterialContent } from '@core/materials/material';
import { describe, expect, it } from 'vitest';
import { figure, make, range } from '../checks/build';

const AQUA = make('Water', 'Aqua', { figures: { density: figure(1) } });
const oil = (density: number | null): Material =>
  make('Oil', 'Squalane', {
    functions: ['emollient'],
    phaseOfUse: 'oil',
    ...(density === null ? {} : { figures: { density: figure(density) } }),
  });
const dosed = (...rows: [Material, number][]) =>
  rows.map(([material, percent], at) => ({ lineId: `line ${at}`, material, ppm: percent * 10_000 }));

describe('the inner phase of an emulsion', () => {
  it.each([
    // % of oil at its density, % of water at 1: volume of oil in that of both.
    [20, 0.8, 80, 100 * (25 / 105)],
    [50, 0.5, 50, 100 * (100 / 150)],
    [30, 0.9, 70, 100 * (100 / 3 / (100 / 3 + 70))],
    [80, 1, 20, 80],
  ])('%d %% of oil of %d g/mL beside %d %% of water', (percent, density, water, volume) => {
    const lines = dosed([oil(density), percent], [AQUA, water]);
    const ow = internalPhase(lines, 'o/w');
    const wo = internalPhase(lines, 'w/o');
    expect([ow?.inner, wo?.inner]).toEqual(['oil', 'water']);
    expect(ow?.worked.value).toBeCloseTo(volume, 6);
    expect((ow?.worked.value ?? 0) + (wo?.worked.value ?? 0)).toBeCloseTo(100, 6);
    expect([ow?.lines, wo?.lines]).toEqual([['line 0'], ['line 1']]);
  });

  it('takes 0.9 for an oil without a density, and says for how much of the mass', () => {
    const known = internalPhase(dosed([oil(0.9), 30], [AQUA, 70]), 'o/w');
    const assumed = internalPhase(dosed([oil(null), 30], [AQUA, 70]), 'o/w');
    expect(assumed?.worked.value).toBeCloseTo(known?.worked.value ?? 0, 9);
    expect(known?.worked.cautions).toEqual([]);
    expect(assumed?.worked.cautions.join(' ')).toMatch(
      /^For 30 % of the mass no density is recorded: 0\.9 g\/mL/,
    );
  });

  it('is none where a phase is missing; water that no line tells of counts', () => {
    expect(internalPhase(dosed([oil(0.9), 100]), 'o/w')).toBeNull();
    expect(internalPhase(dosed([AQUA, 100]), 'w/o')).toBeNull();
    expect(internalPhase([], 'o/w')).toBeNull();
    expect(internalPhase(dosed([oil(0.8), 20]), 'o/w', 800_000)?.worked.value).toBeCloseTo(
      100 * (25 / 105),
      6,
    );
  });

  it('does not hang on the size of the batch or the order of its lines', () => {
    const rows = fc.array(fc.tuple(fc.boolean(), fc.integer({ min: 1, max: 40 })), {
      minLength: 2,
      maxLength: 6,
    });
    fc.assert(
      fc.property(rows, (all) => {
        const lines = dosed(
          ...all.map(([oily, percent]): [Material, number] => [oily ? oil(0.85) : AQUA, percent]),
        );
        const whole = internalPhase(lines, 'o/w')?.worked.value ?? -1;
        const halved = lines.map((one) => ({ ...one, ppm: one.ppm / 2 }));
        expect(internalPhase(halved, 'o/w')?.worked.value ?? -1).toBeCloseTo(whole, 9);
        expect(internalPhase([...lines].reverse(), 'o/w')?.worked.value ?? -1).toBeCloseTo(whole, 9);
      }),
      { numRuns: 40 },
    );
  });
});

describe('between which levels a material may be used', () => {
  const use = (minPpm: number | null, maxPpm: number | null) => usageRange({ usage: { minPpm, maxPpm } });

  it.each([
    ['both ends', use(20_000, 60_000), { minPercent: 2, maxPercent: 6, maxAssumed: false }],
    ['no least', use(null, 60_000), { minPercent: 0, maxPercent: 6, maxAssumed: false }],
    ['no most', use(20_000, null), { minPercent: 2, maxPercent: 8, maxAssumed: true }],
    [
      'a least above what is assumed',
      use(100_000, null),
      { minPercent: 10, maxPercent: 10, maxAssumed: true },
    ],
    ['neither', use(null, null), { minPercent: 0, maxPercent: 8, maxAssumed: true }],
    ['nothing', usageRange({ usage: null }), { minPercent: 0, maxPercent: 8, maxAssumed: true }],
    ['a most of nothing', use(null, 0), { minPercent: 0, maxPercent: 0, maxAssumed: false }],
  ] as const)('with %s recorded', (_, found, expected) => expect(found).toEqual(expected));

  it('what is assumed is named, and nothing where nothing is', () => {
    expect(assumedUseCaution([])).toEqual([]);
    expect(assumedUseCaution(['Brackwater GS', 'Old Wax'])[0]).toMatch(
      /^No highest use is recorded for Brackwater GS, Old Wax: 8 % of the formula is assumed/,
    );
  });
});

describe('the pH at which emulsifiers work', () => {
  const window = (low: number | null, high: number | null) => ({ figures: { workingPh: range(low, high) } });

  it.each([
    [window(4, 8), 5, 6, false],
    [window(4, 8), 4, 8, false],
    [window(4, 8), 3.9, 6, true],
    [window(4, 8), 5, 8.1, true],
    [window(4, null), 5, 14, false],
    [window(4, null), 3, 14, true],
    [window(null, 8), 0, 8, false],
    [window(null, 8), 0, 9, true],
    [{ figures: {} }, 0, 14, false],
  ])('%j at pH %d to %d: outside is %s', (material, low, high, outside) =>
    expect(outsideWorkingPh(material, { low, high })).toBe(outside),
  );

  it.each([
    [8, null],
    [9.5, null],
    [7.5, { strength: 0.25, fails: false }],
    [7, { strength: 0.5, fails: false }],
    [6.9, { strength: expect.closeTo(0.55, 9), fails: true }],
    [6, { strength: 1, fails: true }],
    [4, { strength: 1, fails: true }],
  ])('soap at pH %d: %j', (low, answer) => expect(soapAtPh({ low, high: 10 })).toEqual(answer));
});

describe('what frost and heat do', () => {
  const emulsifier = (inci: string, parts: Partial<Omit<MaterialContent, 'figures'>>): Material =>
    make(inci, inci, { functions: ['emulsifier'], architecture: 'classic', ...parts });
  const ceteareth = emulsifier('Ceteareth-20', { charge: 'non-ionic' });
  const glucoside = emulsifier('Cetearyl Glucoside', { charge: 'non-ionic' });
  const cetyl = emulsifier('Potassium Cetyl Phosphate', { charge: 'anionic' });
  const quat = emulsifier('Behentrimonium Methosulfate', { charge: 'cationic' });
  const soap = make('Soap', 'Sodium Stearate');

  it.each([
    ['an ethoxylate', [ceteareth], 'non-ionic only', 'low', 'possible', ['heat']],
    ['a sugar ether', [glucoside], 'non-ionic without oxyethylene', 'low', 'low', ['heat']],
    ['both of them', [ceteareth, glucoside], 'non-ionic only', 'low', 'possible', ['heat']],
    ['an anionic', [cetyl], 'ionic only', 'likely', 'low', ['freeze–thaw cycles']],
    ['a cationic', [quat], 'ionic only', 'likely', 'low', ['freeze–thaw cycles']],
    ['soap', [soap], 'ionic only', 'likely', 'low', ['freeze–thaw cycles']],
    [
      'an anionic with an ethoxylate',
      [cetyl, ceteareth],
      'mixed',
      'low',
      'low',
      ['freeze–thaw cycles', 'heat'],
    ],
    [
      'a cationic with a sugar ether',
      [quat, glucoside],
      'mixed',
      'low',
      'low',
      ['freeze–thaw cycles', 'heat'],
    ],
    ['oil and water alone', [oil(0.9), AQUA], 'none', 'unknown', 'unknown', []],
    ['nothing', [], 'none', 'unknown', 'unknown', []],
  ] as const)('to %s', (_, materials, system, frost, heat, tests) => {
    const outlook = climateOutlook(dosed(...materials.map((one): [Material, number] => [one, 3])));
    expect(outlook.system).toBe(system);
    expect([outlook.frost.risk, outlook.heat.risk]).toEqual([frost, heat]);
    expect(outlook.tests.map(({ stress }) => stress)).toEqual(tests);
    for (const { conditions, source } of outlook.tests)
      expect(`${conditions}${source.text}`).toMatch(/\d+ °C|4 °C/);
  });
});
