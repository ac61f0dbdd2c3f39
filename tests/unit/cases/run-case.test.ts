import { describe, expect, it } from 'vitest';
import { runCase } from '@core/cases/run-case';

const masses = {
  id: 'm',
  kind: 'emulsifier-masses',
  inputs: { targetHlb: 10, lowHlb: 5, highHlb: 15, totalEmulsifierMass: 4 },
  expect: { lowMass: { value: 2, unit: 'g', tolerance: 0 }, highMass: { value: 2, unit: 'g', tolerance: 0 } },
};
const undissociated = { id: 'u', kind: 'undissociated-percent', inputs: { pKa: 4, pH: 4 } };

describe('running a case', () => {
  it('compares every named value', () => {
    expect(runCase(masses, '')).toMatchObject({ passed: true, got: 'lowMass 2, highMass 2' });
    const off = { ...masses, expect: { ...masses.expect, lowMass: { value: 3, unit: 'g', tolerance: 0.5 } } };
    expect(runCase(off, '').passed).toBe(false);
  });

  it('fails a name or a lone value that the kind does not give', () => {
    const odd = { ...masses, expect: { midMass: { value: 2, unit: 'g', tolerance: 9 } } };
    expect(runCase(odd, '')).toMatchObject({ passed: false, why: 'this kind gives lowMass and highMass' });
    const lone = { ...masses, expect: { value: 2, unit: 'g', tolerance: 9 } };
    expect(runCase(lone, '').passed).toBe(false);
  });

  it('takes the tolerance as inclusive, in decimals', () => {
    // 0.1 + 0.2 is above 0.3 in binary.
    const tie = { ...undissociated, expect: { value: 49.7, unit: '%', tolerance: 0.3 } };
    expect(runCase(tie, '').passed).toBe(true);
    const beyond = { ...undissociated, expect: { value: 49.7, unit: '%', tolerance: 0.299 } };
    expect(runCase(beyond, '').passed).toBe(false);
  });

  it('takes null for a value that a case may leave out', () => {
    const expected = { value: -0.36, unit: '', tolerance: 0.001 };
    // ln 1 − 0.17 × 8 + 1 = −0.36.
    const system = { salinityPercent: 1, eacn: 8, temperature: 25, cc: 1, k: 0.17, alphaT: 0.01 };
    const ionic = { id: 'h', kind: 'hld-ionic', inputs: { ...system, alcoholTerm: null }, expect: expected };
    expect(runCase(ionic, '').passed).toBe(true);
    const oils = { ...masses.inputs, targetHlb: null, oils: [{ mass: 1, requiredHlb: 10 }] };
    expect(runCase({ ...masses, inputs: oils }, '').passed).toBe(true);
  });

  it('computes a double salt, and HLBs off Griffin’s scale', () => {
    const value = (kind: string, inputs: object, result: number) =>
      runCase({ id: kind, kind, inputs, expect: { value: result, unit: '', tolerance: 0.01 } }, '');
    const smiles = '[Na+].[K+].[O-]S(=O)(=O)[O-]';
    expect(value('molar-mass', { smiles }, 158.14).passed).toBe(true);
    const emulsifiers = [
      { mass: 1, hlb: 41.9 },
      { mass: 1, hlb: -1.3 },
    ];
    expect(value('blend-hlb', { emulsifiers }, 20.3).passed).toBe(true);
  });

  it('refuses with a message what has no meaning', () => {
    const why = (kind: string, inputs: object) =>
      runCase({ id: kind, kind, inputs, expect: { value: 1, unit: '', tolerance: 9 } }, '').why;
    expect(why('dilution', { c1: 0, v1: 1, c2: 1 })).toContain('Concentration now is 0');
    expect(why('hlb-ester', { saponificationNumber: 200, acidNumber: 190 })).toContain('is above');
    const base = { baseMolarMass: 40, baseEquivalents: 1, baseConcentrationPercent: 100 };
    expect(why('neutralisation', { acidMass: 1, acidValue: 200, ...base, fraction: 1.1 })).toContain(
      'between 0 and 1',
    );
  });

  it('fails, and does not throw, on bad inputs, impossible figures and nonsense', () => {
    const want = { value: 1, unit: '', tolerance: 1e9 };
    expect(runCase({ ...undissociated, inputs: { pKa: '4', pH: 4 }, expect: want }, '').why).toContain(
      'pKa must be',
    );
    expect(runCase({ ...undissociated, inputs: { pKa: 4, pH: 40 }, expect: want }, '').why).toContain(
      'pH is 40',
    );
    expect(runCase({ id: 'x', kind: '__proto__', inputs: {}, expect: want }, '').why).toContain(
      'unknown kind',
    );
    expect(runCase(null, 'case 2')).toMatchObject({ id: 'case 2', passed: false });
    expect(runCase({ ...undissociated, expect: {} }, '')).toMatchObject({ passed: false });
    expect(runCase({ ...undissociated, expect: { value: 1, unit: '', tolerance: -1 } }, '').why).toContain(
      'malformed',
    );
  });

  it('passes a refusal only where the inputs are refused with a problem', () => {
    const asked = (kind: string, inputs: object) => runCase({ id: 'r', kind, inputs, expect: 'refused' }, '');
    expect(asked('dilution', { c1: 0, v1: 1, c2: 1 })).toMatchObject({ passed: true, got: 'refused' });
    expect(asked('dilution', { c1: 1, v1: 1, c2: 1 })).toMatchObject({ passed: false, got: '1' });
    // A case that is malformed proves nothing.
    expect(asked('dilution', { c1: 'one', v1: 1, c2: 1 }).passed).toBe(false);
    expect(asked('nothing', {}).passed).toBe(false);
  });

  it('compares texts and lists exactly, bare or under “value”', () => {
    const { inputs } = undissociated;
    for (const wanted of ['50', ['50'], { value: '50' }])
      expect(runCase({ ...undissociated, inputs, expect: wanted }, '').passed).toBe(false);
  });
});
