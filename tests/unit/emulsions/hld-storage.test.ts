import fc from 'fast-check';
import { hldIonic, hldMeaning, hldNonionic, nearInversion, type NonionicSystem } from '@core/emulsions/hld';
import { outsideValidity } from '@core/emulsions/hld-validity';
import { hldZeroSalinity, hldZeroTemperature, storageWindow } from '@core/emulsions/hld-zero';
import { describe, expect, it } from 'vitest';
import { refusal } from '../working/refusal';

/** Constants of the size that Bourrel 1980 and Salager 1979 print; the systems are invented. */
const NON_IONIC: NonionicSystem = {
  salinityPercent: 0,
  eacn: 8,
  cc: 0,
  alcoholTerm: 0,
  k: 0.15,
  b: 0.13,
  cT: 0.06,
};
const IONIC = { salinityPercent: 2, eacn: 8, cc: -1, alcoholTerm: 0, k: 0.17, alphaT: 0.01 };

describe('HLD by hand', () => {
  it.each([
    ['at 25 °C without salt: −0.15 × 8', {}, 25, -1.2],
    ['20 °C warmer: + 0.06 × 20', {}, 45, 0],
    ['with 5 g of salt: + 0.13 × 5', { salinityPercent: 5 }, 25, -0.55],
    ['of a polar oil, EACN 2: −0.15 × 2', { eacn: 2 }, 25, -0.3],
    ['of a lipophilic surfactant, Cc 2', { cc: 2 }, 25, 0.8],
    ['with alcohol, 0.5', { alcoholTerm: 0.5 }, 25, -0.7],
    ['at freezing: − 0.06 × 25', {}, 0, -2.7],
  ] as const)('non-ionic, %s', (_, change, temperature, value) =>
    expect(hldNonionic({ ...NON_IONIC, ...change }, temperature).value).toBeCloseTo(value, 9),
  );

  it.each([
    ['ln 2 − 1.36 − 1', {}, 25, Math.log(2) - 2.36],
    ['20 °C warmer: − 0.2', {}, 45, Math.log(2) - 2.56],
    ['of ten times the salt: + ln 10', { salinityPercent: 20 }, 25, Math.log(20) - 2.36],
    ['of one g of salt: ln 1 is nothing', { salinityPercent: 1 }, 25, -2.36],
  ] as const)('ionic, %s', (_, change, temperature, value) =>
    expect(hldIonic({ ...IONIC, ...change }, temperature).value).toBeCloseTo(value, 9),
  );

  it.each([
    [-1, 'favours o/w'],
    [1, 'favours w/o'],
    [0, 'near the inversion point'],
    [0.099, 'near the inversion point'],
    [-0.099, 'near the inversion point'],
    [0.1, 'favours w/o'],
    [-0.1, 'favours o/w'],
  ])('%d %s', (hld, says) => expect(hldMeaning(hld)).toContain(says));

  it.each([
    [
      'no salt at all',
      () => hldIonic({ ...IONIC, salinityPercent: 0 }, 25),
      /Salinity is 0; it must be more than zero/,
    ],
    ['salt below zero', () => hldNonionic({ ...NON_IONIC, salinityPercent: -1 }, 25), /Salinity is −1/],
    ['K of zero', () => hldNonionic({ ...NON_IONIC, k: 0 }, 25), /K is 0/],
    ['no EACN', () => hldNonionic({ ...NON_IONIC, eacn: Number.NaN }, 25), /EACN is not a number/],
    ['no Cc', () => hldIonic({ ...IONIC, cc: Number.NaN }, 25), /Cc is not a number/],
    ['no b', () => hldNonionic({ ...NON_IONIC, b: Number.POSITIVE_INFINITY }, 25), /b is not a number/],
    ['no αT', () => hldIonic({ ...IONIC, alphaT: Number.NaN }, 25), /αT is not a number/],
    ['below absolute zero', () => hldNonionic(NON_IONIC, -300), /Temperature is −300/],
    ['no figure', () => hldMeaning(Number.NaN), /HLD is not a number/],
  ] as const)('is refused for %s', (_, attempt, says) => {
    refusal(attempt, says);
  });
});

describe('where HLD is zero', () => {
  it('by hand: 25 + 1.2 / 0.06 = 45 °C; e^(1.36 + 1) = 10.59 g of salt', () => {
    expect(hldZeroTemperature(NON_IONIC).value).toBeCloseTo(45, 9);
    expect(hldZeroSalinity(IONIC, 25).value).toBeCloseTo(10.591, 3);
  });

  it.each([
    [
      'no change by temperature',
      () => hldZeroTemperature({ ...NON_IONIC, cT: 0 }),
      /does not change with temperature/,
    ],
    [
      'an answer below absolute zero',
      () => hldZeroTemperature({ ...NON_IONIC, cc: 30 }),
      /below absolute zero/,
    ],
    [
      'a salinity beyond computing',
      () => hldZeroSalinity({ ...IONIC, eacn: 1e6 }, 25),
      /beyond what can be computed/,
    ],
  ] as const)('is refused for %s', (_, attempt, says) => {
    refusal(attempt, says);
  });

  it('salt lowers the inversion temperature of a non-ionic, an oil of longer chains raises it', () => {
    const change = fc.double({ min: 0.1, max: 5, noNaN: true });
    fc.assert(
      fc.property(change, (by) => {
        const now = hldZeroTemperature(NON_IONIC).value;
        expect(hldZeroTemperature({ ...NON_IONIC, salinityPercent: by }).value).toBeLessThan(now);
        expect(hldZeroTemperature({ ...NON_IONIC, eacn: 8 + by }).value).toBeGreaterThan(now);
      }),
    );
  });
});

describe('an emulsion in storage', () => {
  const stored = (change: Partial<NonionicSystem>, from: number, to: number) =>
    storageWindow({ kind: 'non-ionic', ...NON_IONIC, ...change }, from, to);

  it.each([
    ['passes zero at 45 °C, between 5 and 50', {}, 5, 50, 'passes zero', 45],
    ['keeps o/w between 5 and 40', {}, 5, 40, 'keeps its sign', null],
    ['comes near zero at 44', {}, 5, 44, 'near zero', null],
    ['is at zero all along where nothing changes it', { cT: 0, eacn: 0 }, 5, 45, 'near zero', null],
    ['keeps w/o with a lipophilic surfactant', { cc: 6 }, 5, 45, 'keeps its sign', null],
    ['is not described above 100 °C', {}, 5, 110, 'not known', 45],
    ['is not described beyond measured EACN', { eacn: 30 }, 5, 40, 'not known', null],
  ] as const)('%s', (_, change, from, to, standing, inversion) => {
    const window = stored(change, from, to);
    expect(window.standing).toBe(standing);
    if (inversion === null) expect(window.inversionTemperature).toBeNull();
    else expect(window.inversionTemperature).toBeCloseTo(inversion, 6);
    expect(window.says).toContain(`between ${from} and ${to} °C`);
  });

  it('refuses ends that are swapped, and takes one temperature', () => {
    refusal(() => stored({}, 40, 5), /The coldest temperature is above the hottest/);
    refusal(() => stored({}, -300, 5), /Coldest storage temperature/);
    expect(stored({}, 25, 25).standing).toBe('keeps its sign');
    expect(stored({}, 45, 45).standing).toBe('near zero');
  });

  it('tells what its two ends tell: the sign between them changes once at most', () => {
    const temperature = fc.integer({ min: 0, max: 80 });
    fc.assert(
      fc.property(temperature, temperature, fc.double({ min: -3, max: 3, noNaN: true }), (a, b, cc) => {
        const [from, to] = [Math.min(a, b), Math.max(a, b)];
        const { standing, atCold, atHot, inversionTemperature } = stored({ cc }, from, to);
        if (standing === 'keeps its sign') expect(atCold.value * atHot.value).toBeGreaterThan(0);
        if (standing === 'near zero')
          expect(nearInversion(atCold.value) || nearInversion(atHot.value)).toBe(true);
        if (inversionTemperature !== null) {
          expect(inversionTemperature).toBeGreaterThanOrEqual(from);
          expect(inversionTemperature).toBeLessThanOrEqual(to);
          expect(hldNonionic({ ...NON_IONIC, cc }, inversionTemperature).value).toBeCloseTo(0, 9);
        }
      }),
    );
  });
});

describe('where HLD was measured', () => {
  it.each([
    [5, 25, 8, []],
    [36, 25, 8, []],
    [36.1, 25, 8, [/more salt than water dissolves/]],
    [5, -1, 8, [/freezes or boils/]],
    [5, 101, 8, [/freezes or boils/]],
    [5, 81, 8, [/extrapolation/]],
    [5, 80, 8, []],
    [5, 25, -6, [/EACN −6 lies outside/]],
    [5, 25, 26, [/EACN 26 lies outside/]],
    [40, 120, 30, [/more salt/, /freezes or boils/, /EACN 30/]],
  ] as const)('%d g of salt, %d °C, EACN %d', (salt, temperature, eacn, says) => {
    const outside = outsideValidity(salt, temperature, eacn);
    expect(outside).toHaveLength(says.length);
    says.forEach((one, at) => expect(outside[at]).toMatch(one));
  });
});
