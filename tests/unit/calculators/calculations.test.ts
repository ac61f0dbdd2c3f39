import { calculate } from '@core/calculators/calculation';
import { calculationRequest } from '@core/calculators/calculation-request';
import { BLANK_HLB, type HlbRequest } from '@core/calculators/hlb-request';
import { BLANK_HLD, BLANK_LINE, type HldRequest } from '@core/calculators/hld-request';
import { calculateHld } from '@core/calculators/hld';
import { BLANK_PRESERVE } from '@core/calculators/preserve-request';
import { calculatePreserve } from '@core/calculators/preserve';
import { calculateForm, type FormRequest } from '@core/calculators/form-calculation';
import type { Calculated } from '@core/calculators/calculated';
import { Problem } from '@core/problems/problem';
import { calculationSheet } from '@core/sheets/calculation-sheet';
import { setCalculation } from '@service/sheets/set-calculation';
import { settings } from '@core/settings/settings';
import { blankMaterial, type Material } from '@core/materials/material';
import { describe, expect, it } from 'vitest';

const NOTHING = new Map<string, Material>();

function valueOf(calculated: Calculated, key: string): number {
  const found = calculated.results.find((one) => one.key === key);
  if (!found)
    throw new Error(`No result “${key}” among ${calculated.results.map((one) => one.key).join(', ')}.`);
  return found.worked.value;
}

function material(id: string, figures: Material['figures']): Material {
  const at = '2026-01-01T00:00:00.000Z';
  return {
    ...blankMaterial(`Material ${id.slice(-1)}`, 'X'),
    id,
    figures,
    revision: 1,
    createdAt: at,
    updatedAt: at,
  };
}

const ID_A = '01890000-0000-7000-8000-00000000000a';
const ID_B = '01890000-0000-7000-8000-00000000000b';
const figure = (value: number) => ({
  low: null,
  value,
  high: null,
  provenance: 'published' as const,
  source: 'a test',
});

describe('HLB of an emulsifier', () => {
  const of = (part: Partial<HlbRequest>): HlbRequest => ({ ...BLANK_HLB, ...part });

  // Oleth-20 15.3 and steareth-2 4.9: supplier's reference guide to HLB values, in the stored reference cases.
  it.each([
    ['c18-1', 20, 15.3],
    ['c18', 2, 4.9],
  ] as const)(
    'a picked %s alcohol with %i oxyethylenes has the published Griffin HLB',
    (chain, count, hlb) => {
      const found = calculate(of({ way: 'pick', chain, head: 'peg-ether', count }), NOTHING);
      expect(valueOf(found, 'ethoxylate')).toBeCloseTo(hlb, 1);
      expect(valueOf(found, 'mass')).toBeCloseTo(hlb, 1);
    },
  );

  it('counts Davies’ groups entered by hand, and refuses when there are none', () => {
    // Davies 1957: glyceryl stearate 3.7.
    const found = calculate(of({ way: 'groups', groups: { ester: 1, hydroxyl: 2, carbon: 20 } }), NOTHING);
    expect(valueOf(found, 'davies')).toBeCloseTo(3.7, 1);
    expect(() => calculate(of({ way: 'groups', groups: {} }), NOTHING)).toThrow('No group is counted yet.');
  });

  it('takes corrected groups in place of the found ones, for Davies only', () => {
    const found = calculate(of({ corrected: { carbon: 18, oxyethylene: 20, hydroxyl: 1 } }), NOTHING);
    expect(valueOf(found, 'davies')).toBeCloseTo(7 - 0.475 * 18 + 0.33 * 20 + 1.9, 6);
  });

  it('never gives a number to a head that Davies’ table lacks, whatever is corrected', () => {
    const found = calculate(
      of({ head: 'ether-sulfate-na', count: 2, corrected: { 'sulfate-na': 1, carbon: 12 } }),
      NOTHING,
    );
    expect(found.results.map((one) => one.key)).not.toContain('davies');
    expect(found.withheld.find((one) => one.label.startsWith('Davies'))?.why).toContain('ether-sulfate');
  });

  it('sets the recorded HLB with its source beside the computed ones', () => {
    const library = new Map([[ID_A, material(ID_A, { hlb: figure(15.5) })]]);
    const found = calculate(of({ knownMaterialId: ID_A }), library);
    expect(found.given.find((one) => one.label === 'Recorded HLB')).toMatchObject({
      value: 15.5,
      unit: '(Material a: a test (published))',
    });
  });
});

describe('HLD', () => {
  const line = (value: number) => ({ ...BLANK_LINE, name: 'typed', value });
  const known: HldRequest = {
    ...BLANK_HLD,
    oils: [line(8)],
    surfactants: [line(1.2)],
    k: 0.15,
    b: 0.13,
    cT: 0.06,
  };

  it('finds C10E4 with an oil of EACN 8 at its inversion point (Marquez, A Course on HLD, module 2)', () => {
    const found = calculateHld(known, NOTHING);
    expect(valueOf(found, 'hld')).toBeCloseTo(0, 1);
    expect(valueOf(found, 'zero')).toBeCloseTo(25, 0);
    expect(found.window.is.standing).toBe('passes zero');
  });

  it('names a picked oil without EACN, and says what the mean covers', () => {
    const library = new Map([
      [ID_A, material(ID_A, { eacn: figure(8) })],
      [ID_B, material(ID_B, {})],
    ]);
    const picked = (materialId: string, parts: number) => ({ ...BLANK_LINE, materialId, name: '', parts });
    const found = calculateHld({ ...known, oils: [picked(ID_A, 3), picked(ID_B, 1)] }, library);
    expect(valueOf(found, 'eacn')).toBe(8);
    expect(found.results.find((one) => one.key === 'eacn')?.says).toBe(
      'covers 75 %; no value known for Material b, and none guessed',
    );
    expect(() => calculateHld({ ...known, oils: [picked(ID_B, 1)] }, library)).toThrow(
      'No oil here has an EACN: Material b.',
    );
  });

  it('mixes Cc by moles, and asks for a molar mass that it lacks', () => {
    const surfactants = [
      { ...line(2), parts: 1, molarMass: 200 },
      { ...line(-1), parts: 1, molarMass: 400 },
    ];
    // 1/200 against 1/400 of a mole: two thirds of the one.
    expect(valueOf(calculateHld({ ...known, surfactants }, NOTHING), 'cc')).toBeCloseTo(1, 10);
    expect(() => calculateHld({ ...known, surfactants: [line(2), line(1)] }, NOTHING)).toThrow('molar mass');
  });

  it('shows how mole and mass fractions came about, and lists oils and surfactants with their figures', () => {
    const surfactants = [
      { ...line(0.92), name: 'SDHS', molarMass: 388.45 },
      { ...line(-3), name: 'SLS', molarMass: 288.38 },
    ];
    const oils = [
      { ...line(13), name: 'Myristate', parts: 3 },
      { ...line(7), name: 'Light oil', parts: 1 },
    ];
    const found = calculateHld({ ...known, oils, surfactants }, NOTHING);
    const steps = (key: string) => found.results.find((one) => one.key === key)?.worked.steps ?? [];
    // 1/388.45 of 1/388.45 + 1/288.38 is 288.38 / 676.83 = 0.42607, by hand.
    expect(steps('cc').map((step) => step.says.split(':')[0])).toEqual([
      'amount in all, of those with a Cc',
      'mole fraction of SDHS',
      'mole fraction of SLS',
      'Cc of the surfactant mix',
    ]);
    expect(steps('cc')[1]?.shows).toMatch(/^1000 × 1 \/ 388\.45 \/ 6\.04/);
    expect(steps('cc')[1]?.result).toBeCloseTo(288.38 / 676.83, 9);
    expect(steps('eacn')[1]).toMatchObject({ says: expect.stringContaining('Myristate'), result: 0.75 });
    expect(found.given.slice(0, 3)).toEqual([
      { label: 'Oil 1', value: 'Myristate, 3 parts by mass, EACN 13', unit: '' },
      { label: 'Oil 2', value: 'Light oil, 1 part by mass, EACN 7', unit: '' },
      { label: 'Surfactant 1', value: 'SDHS, 1 part by mass, Cc 0.92, 388.45 g/mol', unit: '' },
    ]);
  });

  it('prints its plot in words and lines, right after the figure that it shows', () => {
    const sheet = setCalculation(known, {}, settings.parse({}), '2026-03-01T10:00:00Z');
    const text = JSON.stringify(sheet.content);
    expect(text).toContain('<svg');
    expect(text).toMatch(/"alt":"HLD runs from −1\.5 at 0\u00a0°C/);
    expect(text.indexOf('<svg')).toBeLessThan(text.indexOf('EACN of the oil phase'));
  });

  it('names the first figure that is missing', () => {
    expect(() => calculateHld({ ...known, k: null }, NOTHING)).toThrow('K is not entered yet.');
  });

  it.each(['salinityPercent', 'temperature', 'alcoholTerm', 'k', 'b', 'cT', 'coldest', 'hottest'] as const)(
    'asks for %s when it is left out, and gives no number by a value of its own',
    (key) => {
      expect(() => calculateHld({ ...known, [key]: null }, NOTHING)).toThrow(Problem);
    },
  );

  it('asks for the oils, the surfactants and their figures when they are left out', () => {
    for (const part of [
      { oils: [] },
      { surfactants: [] },
      { oils: [{ ...line(8), value: null }] },
      { oils: [{ ...line(8), parts: null }] },
      { surfactants: [{ ...line(1), value: null }] },
    ])
      expect(() => calculateHld({ ...known, ...part }, NOTHING)).toThrow(Problem);
  });
});

describe('organic acids that preserve', () => {
  it('agrees with Steinberg 2005 for sorbic acid at pH 4 (85 %) and dehydroacetic acid at pH 5 (65 %)', () => {
    const at = (acid: string, pH: number) =>
      valueOf(calculatePreserve({ ...BLANK_PRESERVE, acid, pH }, NOTHING), 'share');
    expect(at('Sorbic Acid', 4)).toBeCloseTo(85, 0);
    expect(at('Dehydroacetic Acid', 5)).toBeCloseTo(65, 0);
  });

  it('shows the spread that the published pKas of benzoic acid leave, and takes salts as acid', () => {
    const found = calculatePreserve(
      { ...BLANK_PRESERVE, pH: 4, dosePercent: 0.5, dosedAs: 'sodium salt' },
      NOTHING,
    );
    expect(found.results[0]?.says).toMatch(/60\.\d to 61\.\d over the published pKas/);
    // Sodium benzoate 144.105, benzoic acid 122.123 g/mol.
    expect(valueOf(found, 'dose')).toBeCloseTo((0.5 * 122.123) / 144.105, 4);
    const five = found.rows.find((row) => row.pH === 5);
    expect(five?.low).toBeLessThan(five?.high ?? 0);
  });

  it('says what to do for a material without pKa', () => {
    const library = new Map([[ID_A, material(ID_A, {})]]);
    expect(() => calculatePreserve({ ...BLANK_PRESERVE, materialId: ID_A }, library)).toThrow(
      'has no pKa recorded',
    );
  });
});

describe('separation and ageing', () => {
  const of = (form: FormRequest['form'], values: Record<string, number>): Calculated =>
    calculateForm({ of: 'form', form, values, rows: [] });

  it('gives Stokes’ speed of the printed example, and the same in millimetres a day', () => {
    // Sinko, Martin's Physical Pharmacy, 5th ed.: 2.5 µm, 150 kg/m³, 50 mPa·s: 4.1e-8 m/s.
    const found = of('creaming', { radius: 2.5, dropletDensity: 1.15, mediumDensity: 1, viscosity: 50 });
    expect(valueOf(found, 'speed')).toBeCloseTo(4.1e-8, 9);
    expect(valueOf(found, 'daily')).toBeCloseTo(4.085e-8 * 86_400_000, 2);
    expect(found.results[0]?.says).toBe('sinks');
  });

  it('ages as in the printed examples', () => {
    // ASTM F1980 illustration: 365 days at 22 °C are 37 days at 55 °C, Q10 2.
    expect(valueOf(of('accelerated', { real: 22, test: 55, q10: 2, weeks: 365 }), 'weeks')).toBeCloseTo(
      37,
      0,
    );
    // Allen: 48 h at 5 °C are 5.33 h at 25 °C, Q10 3.
    expect(valueOf(of('shelf-life', { known: 5, weeks: 48, other: 25, q10: 3 }), 'weeks')).toBeCloseTo(
      5.33,
      2,
    );
  });

  it('refuses packed droplets, and names a field left empty', () => {
    expect(() => of('suspension', { phi: 0.7, phiMax: 0.64, intrinsic: 2.5, medium: 1 })).toThrow('packed');
    expect(() => of('fill', { volume: 50 })).toThrow('Density is not entered yet.');
  });
});

it('every calculation becomes a sheet that holds its figures, and no request may bring results along', () => {
  const request = calculationRequest.parse({ ...BLANK_HLB, results: [{ value: 99 }] });
  expect(request).not.toHaveProperty('results');
  const sheet = calculationSheet(calculate(request, NOTHING), settings.parse({}), '2026-03-01T10:00:00Z');
  const text = JSON.stringify(sheet.content);
  expect(text).toContain('Griffin, ethoxylate: E/5');
  expect(text).toContain('never average');
});
