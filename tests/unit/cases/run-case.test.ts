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
});
