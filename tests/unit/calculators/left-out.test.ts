import type { calculate } from '@core/calculators/calculation';
import { calculationRequest } from '@core/calculators/calculation-request';
import { calculateHlb } from '@core/calculators/hlb';
import { BLANK_HLB, type HlbRequest } from '@core/calculators/hlb-request';
import { calculateHld } from '@core/calculators/hld';
import { BLANK_HLD, BLANK_LINE, type HldRequest } from '@core/calculators/hld-request';
import { calculateNeutralise } from '@core/calculators/neutralise';
import { BLANK_NEUTRALISE, type NeutraliseRequest } from '@core/calculators/neutralise-request';
import { calculatePreserve } from '@core/calculators/preserve';
import { BLANK_PRESERVE, type PreserveRequest } from '@core/calculators/preserve-request';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { refusal } from '../working/refusal';

const NONE = new Map();
const value = ({ results }: ReturnType<typeof calculate>, key: string): number =>
  results.find((one) => one.key === key)?.worked.value ?? NaN;

describe('an organic acid', () => {
  const preserve = (parts: Partial<PreserveRequest>) =>
    calculatePreserve({ ...BLANK_PRESERVE, ...parts }, NONE);
  const typed = { acid: '', pKa: 4.2 } as const;

  it('is half undissociated at its pKa, and a tenth of what is left for each pH more (Henderson and Hasselbalch)', () => {
    expect(value(preserve({ ...typed, pH: 4.2 }), 'share')).toBeCloseTo(50, 9);
    expect(value(preserve({ ...typed, pH: 5.2 }), 'share')).toBeCloseTo(100 / 11, 9);
    expect(value(preserve({ ...typed, pH: 6.2 }), 'share')).toBeCloseTo(100 / 101, 9);
    expect(value(preserve({ ...typed, pH: 3.2 }), 'share')).toBeCloseTo(1000 / 11, 9);
  });

  it('acts by its dose, and a salt by what of it is acid: 0.5 % of sodium benzoate at pH 5', () => {
    // 0.5 × 122.123 / 144.105 = 0.42373 % as acid.
    const salt = preserve({ dosePercent: 0.5, dosedAs: 'sodium salt' });
    expect(value(salt, 'dose')).toBeCloseTo(0.42373, 5);
    expect(value(salt, 'active')).toBeCloseTo((value(salt, 'share') / 100) * 0.42373, 5);
    expect(value(preserve({ dosePercent: 0.42373 }), 'active')).toBeCloseTo(value(salt, 'active'), 5);
  });

  it('falls with rising pH at every step of its table', () => {
    const { rows } = preserve({ dosePercent: 0.5 });
    rows.slice(1).forEach((row, at) => expect(row.percent).toBeLessThan(rows[at]!.percent));
    rows.forEach(({ low, percent, high }) => {
      expect(low).toBeLessThanOrEqual(percent);
      expect(high).toBeGreaterThanOrEqual(percent);
    });
  });

  it.each<[string, Partial<PreserveRequest>, RegExp]>([
    ['no pH', { pH: null }, /^pH is not entered yet/],
    ['no pKa', { acid: 'unknown acid' }, /^pKa is not entered yet/],
    [
      'a salt without its molar mass',
      { ...typed, dosePercent: 1, dosedAs: 'other salt', acidMolarMass: 122 },
      /Molar mass of the salt/,
    ],
    [
      'a salt without the acid’s',
      { ...typed, dosePercent: 1, dosedAs: 'sodium salt' },
      /Molar mass of the acid/,
    ],
    [
      'the two the wrong way round',
      { ...typed, dosePercent: 1, dosedAs: 'other salt', acidMolarMass: 144, saltMolarMass: 122 },
      /lighter than its acid/,
    ],
    ['a material that is gone', { materialId: 'gone' }, /no longer in the library/],
  ])('asks where there is %s', (_, parts, words) => {
    refusal(() => preserve(parts), words);
  });

  it('says that it is no proof, whatever it comes to', () => {
    expect(preserve({}).notes.join()).toMatch(/^Not proof of preservation/);
  });
});

describe('base for an acid', () => {
  const stearic: Partial<NeutraliseRequest> = {
    acidPercent: 5,
    acidValue: 200,
    baseMolarMass: 56.1,
    basePercent: 100,
    neutralisedPercent: 100,
  };
  const percent = (parts: Partial<NeutraliseRequest>): number =>
    value(calculateNeutralise({ ...BLANK_NEUTRALISE, ...stearic, ...parts }), 'percent');

  it('is what the acid value says: 200 mg KOH a gram are 1 % of a formula of 5 %', () => {
    // 5 g × 200 mg / g = 1,000 mg of potassium hydroxide; the same groups as 0.7131 g of sodium hydroxide.
    expect(percent({})).toBeCloseTo(1, 3);
    expect(percent({ baseMolarMass: 39.997 })).toBeCloseTo(0.713, 3);
    expect(percent({ basePercent: 10 })).toBeCloseTo(10, 2);
    expect(percent({ neutralisedPercent: 50 })).toBeCloseTo(0.5, 3);
    expect(percent({ neutralisedPercent: 0 })).toBe(0);
    expect(percent({ baseEquivalents: 2 })).toBeCloseTo(0.5, 3);
  });

  it('by molar mass: lactic acid 90 % with sodium hydroxide', () => {
    // 2 g × 0.9 / 90.078 = 0.019983 mol; × 39.997 = 0.79924 g
    const lactic = {
      acidKnownBy: 'molar mass',
      acidPercent: 2,
      acidActivePercent: 90,
      acidMolarMass: 90.078,
      acidEquivalents: 1,
      baseMolarMass: 39.997,
    } as const;
    expect(percent(lactic)).toBeCloseTo(0.79924, 4);
    const batch = calculateNeutralise({ ...BLANK_NEUTRALISE, ...stearic, ...lactic, batchGrams: 250 });
    expect(value(batch, 'mass')).toBeCloseTo(1.9981, 3);
  });

  it('goes with the acid, the share and the batch, and against its own strength', () => {
    const from = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    fc.assert(
      fc.property(
        from(0.1, 20),
        from(1, 100),
        from(5, 100),
        (acidPercent, neutralisedPercent, basePercent) => {
          const is = percent({ acidPercent, neutralisedPercent, basePercent });
          expect(percent({ acidPercent: 2 * acidPercent, neutralisedPercent, basePercent })).toBeCloseTo(
            2 * is,
            8,
          );
          expect(
            percent({ acidPercent, neutralisedPercent: neutralisedPercent / 2, basePercent }),
          ).toBeCloseTo(is / 2, 8);
          expect(percent({ acidPercent, neutralisedPercent, basePercent: basePercent / 2 })).toBeCloseTo(
            2 * is,
            8,
          );
        },
      ),
      { numRuns: 30 },
    );
  });

  it.each<[string, Partial<NeutraliseRequest>, RegExp]>([
    ['the acid', { acidPercent: null }, /is not entered yet/],
    ['the acid value', { acidValue: null }, /Acid value/],
    ['the base', { baseMolarMass: null }, /Molar mass of the base/],
    ['the strength of the base', { basePercent: null }, /Strength of the base/],
    ['the share', { neutralisedPercent: null }, /Share to neutralise/],
    ['the pH', { neutraliseTo: 'pH', acidPKas: [4.9] }, /pH to reach/],
    ['the pKa', { neutraliseTo: 'pH', pH: 6 }, /pKa of the acid/],
    ['water', { neutraliseTo: 'pH', pH: 6, acidPKas: [4.9], waterPercent: null }, /Water/],
  ])('asks for %s when it is left out', (_, parts, words) => {
    refusal(() => calculateNeutralise({ ...BLANK_NEUTRALISE, ...stearic, ...parts }), words);
  });

  it.each<[string, Partial<NeutraliseRequest>]>([
    ['more than all of the acid', { neutralisedPercent: 101 }],
    ['less than none of it', { neutralisedPercent: -1 }],
    ['a base of more than 100 %', { basePercent: 101 }],
    ['a base of no strength', { basePercent: 0 }],
    ['a base without mass', { baseMolarMass: 0 }],
    ['a batch of nothing', { batchGrams: 0 }],
    ['an acid value below none', { acidValue: -5 }],
  ])('refuses %s', (_, parts) => {
    refusal(() => calculateNeutralise({ ...BLANK_NEUTRALISE, ...stearic, ...parts }), /./);
  });

  it('holds a lot’s acid value against that of the pure acid: 56,106 / 284.48 for stearic acid', () => {
    const { results } = calculateNeutralise({
      ...BLANK_NEUTRALISE,
      ...stearic,
      acidKnownBy: 'molar mass',
      acidMolarMass: 284.48,
      acidActivePercent: 100,
    });
    expect(results.find(({ key }) => key === 'acid-value')?.worked.value).toBeCloseTo(197.2, 1);
  });
});

describe('HLB from the figures of a data sheet', () => {
  const by = (parts: Partial<HlbRequest>) =>
    calculateHlb({ ...BLANK_HLB, way: 'figures', charge: 'non-ionic', ...parts }, NONE);
  it('of an ethoxylate is a fifth of its oxyethylene (Griffin 1954)', () => {
    expect(by({ oxyethylenePercent: 60 }).results.map(({ worked }) => worked.value)).toContain(12);
  });
  it('of an ester is 20 (1 − S / A): 161 and 198 give 3.7 (Griffin 1954, glyceryl monostearate 3.8)', () => {
    const found = by({ saponificationNumber: 161, acidNumber: 198 }).results.map(
      ({ worked }) => worked.value,
    );
    expect(found.some((one) => Math.abs(one - 3.737) < 1e-3)).toBe(true);
  });
  it('of masses is 20 times the share of what is hydrophilic', () => {
    expect(
      by({ hydrophilicMolarMass: 440, molarMass: 880 }).results.map(({ worked }) => worked.value),
    ).toContain(10);
  });
  it('asks where nothing is entered, in each way of entering', () => {
    refusal(() => by({}), /No figure is entered yet/);
    refusal(() => by({ way: 'smiles' }), /There is no SMILES yet/);
    refusal(() => by({ way: 'groups' }), /No group is counted yet/);
  });
});

describe('HLD', () => {
  const line = (parts: Partial<typeof BLANK_LINE>) => ({ ...BLANK_LINE, ...parts });
  const system: HldRequest = {
    ...BLANK_HLD,
    oils: [line({ name: 'decane', value: 10 })],
    surfactants: [line({ name: 'an ethoxylate', value: 2 })],
    k: 0.15,
    b: 0.13,
    cT: 0.06,
  };
  const hld = (parts: Partial<HldRequest>) => calculateHld({ ...system, ...parts }, NONE);

  it('of a non-ionic system is b S − K EACN + cT (T − 25) + Cc (Salager; Acosta 2008)', () => {
    expect(value(hld({}), 'hld')).toBeCloseTo(-1.5 + 2, 9);
    expect(value(hld({ salinityPercent: 5, temperature: 35 }), 'hld')).toBeCloseTo(0.65 - 1.5 + 0.6 + 2, 9);
    // 0.5 of HLD at 25 °C is none at 25 − 0.5 / 0.06.
    expect(value(hld({}), 'zero')).toBeCloseTo(16.6667, 3);
  });

  it('of an ionic one is ln S − K EACN − αT (T − 25) + Cc, and none without salt', () => {
    const ionic = { kind: 'ionic', alphaT: 0.01, k: 0.17, salinityPercent: 5 } as const;
    expect(value(hld(ionic), 'hld')).toBeCloseTo(Math.log(5) - 1.7 + 2, 9);
    refusal(() => hld({ ...ionic, salinityPercent: 0 }), /[Ss]alinity/);
  });

  it.each<[string, Partial<HldRequest>, RegExp]>([
    ['an oil', { oils: [] }, /There is no oil yet/],
    ['a surfactant', { surfactants: [] }, /There is no surfactant yet/],
    ['the parts of an oil', { oils: [line({ value: 10, parts: null })] }, /How much there is/],
    ['any part', { oils: [line({ value: 10, parts: 0 })] }, /There are no parts of any oil yet/],
    ['an EACN', { oils: [line({ name: 'an oil' })] }, /No oil here has an EACN: an oil/],
    ['K', { k: null }, /^K is not entered/],
    ['b', { b: null }, /^b is not entered/],
    ['the temperature', { temperature: null }, /^Temperature is not entered/],
    ['the coldest', { coldest: null }, /Coldest storage temperature/],
  ])('asks for %s when it is left out', (_, parts, words) => {
    refusal(() => hld(parts), words);
  });

  it('names the oils without a figure, and how much of the phase the others are', () => {
    const mixed = hld({
      oils: [line({ name: 'decane', value: 10, parts: 3 }), line({ name: 'jojoba', parts: 1 })],
    });
    expect(mixed.results.find(({ key }) => key === 'eacn')?.says).toBe(
      'covers 75 %; no value known for jojoba, and none guessed',
    );
    expect(value(mixed, 'eacn')).toBe(10);
  });
});

describe('a request as it arrives', () => {
  it.each([
    [{ of: 'form', form: 'no such form', values: {} }],
    [{ ...BLANK_HLD, oils: Array.from({ length: 41 }, () => BLANK_LINE) }],
    [{ ...BLANK_HLD, kind: 'salty' }],
    [{ ...BLANK_NEUTRALISE, acidPKas: [1, 2, 3, 4] }],
    [{ ...BLANK_PRESERVE, pH: 'five' }],
    [{ of: 'form', form: 'fill', values: { volume: 'x'.repeat(301) } }],
    [{ of: 'form', form: 'fill', values: {}, rows: Array.from({ length: 201 }, () => ({})) }],
    [{}],
  ])('is held to its shape: %#', (request) => {
    expect(calculationRequest.safeParse(request).success).toBe(false);
  });
});
