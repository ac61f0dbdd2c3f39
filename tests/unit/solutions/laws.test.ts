import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { amineUptake, baseToPh } from '@core/solutions/base-to-ph';
import { bufferCapacity, bufferPh, bufferRatio } from '@core/solutions/buffer';
import { balanced, stateAt } from '@core/solutions/charge-balance';
import { ionicStrength } from '@core/solutions/ionic-strength';
import type { Protolyte, Solution } from '@core/solutions/solution';
import { solutionPh } from '@core/solutions/solution-ph';
import { waterActivity, waterActivityOfPercent } from '@core/solutions/water-activity';
import { daviesA, logGamma, pKw, waterTemperature } from '@core/solutions/water';
import { NEGATIVE, NO_NUMBERS, NOT_POSITIVE, refusesEach } from '../working/bounds';
import { refusal } from '../working/refusal';

const solution = (part: Partial<Solution>): Solution => ({
  protolytes: [],
  strongCation: 0,
  strongAnion: 0,
  temperature: 25,
  activities: 'none',
  ...part,
});
const protolyte = fc
  .record({
    pKas: fc.uniqueArray(fc.double({ min: 1, max: 13, noNaN: true }), { minLength: 1, maxLength: 3 }),
    charge: fc.integer({ min: 0, max: 2 }),
    concentration: fc.double({ min: 1e-5, max: 0.2, noNaN: true }),
  })
  .map((one): Protolyte => ({ ...one, name: 'it', pKas: [...one.pKas].sort((a, b) => a - b) }));
const mixture = fc.record({
  protolytes: fc.array(protolyte, { maxLength: 3 }),
  strongCation: fc.double({ min: 0, max: 0.1, noNaN: true }),
  strongAnion: fc.double({ min: 0, max: 0.1, noNaN: true }),
  temperature: fc.double({ min: 0, max: 100, noNaN: true }),
});

describe('a solution at its own pH', () => {
  it('keeps mass and charge, and the product of water', () => {
    fc.assert(
      fc.property(mixture, (given) => {
        const state = balanced(solution(given));
        for (const [at, forms] of state.forms.entries())
          expect(forms.reduce((sum, form) => sum + form.concentration, 0)).toBeCloseTo(
            given.protolytes[at]?.concentration ?? 0,
            9,
          );
        const charge = state.forms.flat().reduce((sum, form) => sum + form.concentration * form.charge, 0);
        expect(
          charge + state.hydrogen - state.hydroxide + given.strongCation - given.strongAnion,
        ).toBeCloseTo(0, 9);
        expect(Math.log10(state.hydrogen * state.hydroxide)).toBeCloseTo(-pKw(given.temperature), 9);
        // Mass action of each step: [next] [H] / [before] = Ka.
        for (const [at, forms] of state.forms.entries())
          for (const [step, pKa] of (given.protolytes[at]?.pKas ?? []).entries()) {
            const [before, next] = [forms[step]?.concentration ?? 0, forms[step + 1]?.concentration ?? 0];
            if (before > 1e-250 && next > 1e-250)
              expect(Math.log10((next * state.hydrogen) / before)).toBeCloseTo(-pKa, 6);
          }
      }),
    );
  });

  it('rises with base and falls with acid, and its excess of charge falls with pH throughout', () => {
    fc.assert(
      fc.property(mixture, fc.double({ min: -1, max: 15, noNaN: true }), (given, pH) => {
        const here = balanced(solution(given)).pH;
        const more = { strongCation: given.strongCation + 0.01, strongAnion: given.strongAnion + 0.01 };
        expect(balanced(solution({ ...given, strongCation: more.strongCation })).pH).toBeGreaterThanOrEqual(
          here,
        );
        expect(balanced(solution({ ...given, strongAnion: more.strongAnion })).pH).toBeLessThanOrEqual(here);
        expect(stateAt(solution(given), pH, 0).excess).toBeGreaterThanOrEqual(
          stateAt(solution(given), pH + 0.5, 0).excess,
        );
      }),
    );
  });

  it('with base to a pH stands at that pH', () => {
    const pKa = fc.double({ min: 2.5, max: 10, noNaN: true });
    fc.assert(
      fc.property(
        pKa,
        fc.double({ min: 0.001, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (k, amount, part) => {
          const acid = { pKas: [k], concentration: amount };
          const alone = solutionPh(solution({ protolytes: [{ ...acid, name: 'acid', charge: 0 }] })).pH.value;
          const pH = alone + part * (13 - alone);
          const perGroup = baseToPh(acid, pH, null).perGroup.value;
          const made = solution({
            protolytes: [{ ...acid, name: 'acid', charge: 0 }],
            strongCation: perGroup * amount,
          });
          expect(solutionPh(made).pH.value).toBeCloseTo(pH, 6);
        },
      ),
    );
  });

  it('is the same for two acids of one pKa as for one of both amounts', () => {
    const one = { name: 'a', pKas: [4.2], charge: 0, concentration: 0.03 };
    const two = solution({
      protolytes: [one, { ...one, name: 'b', concentration: 0.05 }],
      strongCation: 0.02,
    });
    const sum = solution({ protolytes: [{ ...one, concentration: 0.08 }], strongCation: 0.02 });
    expect(solutionPh(two).pH.value).toBeCloseTo(solutionPh(sum).pH.value, 9);
  });
});

describe('water', () => {
  // CRC Handbook of Chemistry and Physics, ion product of water (from memory).
  it.each([
    [0, 14.95],
    [10, 14.53],
    [20, 14.17],
    [25, 13.995],
    [40, 13.54],
    [50, 13.26],
    [60, 13.02],
    [100, 12.26],
  ])('pKw at %i °C is %d', (temperature, known) =>
    expect(Math.abs(pKw(temperature) - known)).toBeLessThan(0.012),
  );

  // Robinson R.A., Stokes R.H., Electrolyte Solutions, Debye–Hückel's A (from memory): 0.4883 at 0, 0.5091 at 25, 0.5471 at 60.
  it.each([
    [0, 0.4883],
    [25, 0.5091],
    [60, 0.5471],
  ])('Davies’ A at %i °C is %d within 1 %%', (temperature, known) =>
    expect(Math.abs(daviesA(temperature) / known - 1)).toBeLessThan(0.01),
  );

  it('activity coefficients are one in pure water, and as at 0.1 mol/L in Davies’ own table: 0.78', () => {
    expect(logGamma(0, 25)).toBeCloseTo(0, 15);
    expect(10 ** logGamma(0.1, 25)).toBeCloseTo(0.781, 2);
    for (const strength of [0.001, 0.01, 0.1])
      expect(logGamma(strength, 25)).toBeLessThan(logGamma(strength / 2, 25));
  });
});

describe('ionic strength', () => {
  it.each([
    // By hand: NaCl 0.1: 0.1. Na₂SO₄ 0.1: ½ (0.2 + 0.4) = 0.3. MgSO₄ 0.1: 0.4. FeCl₃ 0.1: ½ (0.9 + 0.3) = 0.6.
    [
      [
        [0.1, 1],
        [0.1, -1],
      ],
      0.1,
    ],
    [
      [
        [0.2, 1],
        [0.1, -2],
      ],
      0.3,
    ],
    [
      [
        [0.1, 2],
        [0.1, -2],
      ],
      0.4,
    ],
    [
      [
        [0.1, 3],
        [0.3, -1],
      ],
      0.6,
    ],
  ] as [[number, number][], number][])('of %j is %d mol/L, in balance', (ions, strength) => {
    const got = ionicStrength(ions.map(([concentration, charge]) => ({ concentration, charge })));
    expect(got.value).toBeCloseTo(strength, 12);
    expect(got.cautions).toEqual([]);
  });

  it('says that charges do not cancel beyond two parts in a hundred', () => {
    const said = (anion: number) =>
      ionicStrength([
        { concentration: 0.1, charge: 1 },
        { concentration: anion, charge: -1 },
      ]).cautions;
    expect([0.1, 0.097, 0.104].map((x) => said(x).length)).toEqual([0, 0, 0]);
    expect([0.095, 0.105, 0].map((x) => said(x).length)).toEqual([1, 1, 1]);
    refusal(() => ionicStrength([]), /no ion/);
    for (const charge of [0, 1.5, -0.5])
      refusal(() => ionicStrength([{ concentration: 0.1, charge }]), /An ion has a charge/);
  });
});

describe('water activity', () => {
  it('falls as more is dissolved, from one in pure water, and stays above nothing', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 20, noNaN: true }),
        fc.double({ min: 0, max: 10, noNaN: true }),
        (molality, k) => {
          const here = waterActivity({ molality, k }).value;
          expect(here).toBeGreaterThan(0);
          expect(here).toBeLessThanOrEqual(1);
          expect(waterActivity({ molality: molality + 0.1, k }).value).toBeLessThan(here);
          expect(waterActivity({ molality, k: k + 1 }).value).toBeLessThanOrEqual(here);
        },
      ),
    );
    expect(waterActivity({ molality: 0, k: 6 }).value).toBe(1);
    // Raoult: 1 mol in 1 kg: 55.5093 / 56.5093.
    expect(waterActivity({ molality: 1, k: 0 }).value).toBeCloseTo(0.982304, 6);
  });

  it('says where constants were not measured, and that an ideal solution is none', () => {
    expect(waterActivity({ molality: 22, k: 1 }).cautions).toHaveLength(2);
    expect(waterActivity({ molality: 22.1, k: 1 }).cautions.at(-1)).toMatch(/More concentrated/);
    expect(waterActivity({ molality: 1, k: 0 }).cautions.at(-1)).toMatch(/ideal/);
  });
});

describe('what is refused', () => {
  const most = [...NEGATIVE, 20.1];
  const kas = [...NO_NUMBERS, -10.1, 20.1];
  const pHs = [...NEGATIVE, 14.1];
  const acid = { pKas: [4], concentration: 0.1 };
  it.each([
    ['pKa', kas, (x: number) => bufferPh(x, 0.1, 0.1)],
    ['Acid', [...NOT_POSITIVE, 20.1], (x: number) => bufferPh(4, x, 0.1)],
    ['Salt', [...NOT_POSITIVE, 20.1], (x: number) => bufferPh(4, 0.1, x)],
    ['pKa', kas, (x: number) => bufferRatio(x, 4)],
    ['pH', pHs, (x: number) => bufferRatio(4, x)],
    ['Acid and salt together', [...NOT_POSITIVE, 20.1], (x: number) => bufferCapacity(x, 4, 4)],
    ['pKa', kas, (x: number) => bufferCapacity(0.1, x, 4)],
    ['pH', pHs, (x: number) => bufferCapacity(0.1, 4, x)],
    ['Concentration of an ion', most, (x: number) => ionicStrength([{ concentration: x, charge: 1 }])],
    [
      'Charge of an ion',
      [...NO_NUMBERS, -7, 7],
      (x: number) => ionicStrength([{ concentration: 0.1, charge: x }]),
    ],
    ['pKa of the acid', kas, (x: number) => baseToPh({ ...acid, pKas: [x] }, 7, null)],
    ['Concentration of the acid', most, (x: number) => baseToPh({ ...acid, concentration: x }, 7, null)],
    ['pH to reach', pHs, (x: number) => baseToPh(acid, x, null)],
    ['pKa of the base', kas, (x: number) => amineUptake(x, 7)],
    ['pH to reach', pHs, (x: number) => amineUptake(8, x)],
    ['Strong base', most, (x: number) => solutionPh(solution({ strongCation: x }))],
    ['Strong acid', most, (x: number) => solutionPh(solution({ strongAnion: x }))],
    ['Temperature', [...NEGATIVE, 100.1], (x: number) => solutionPh(solution({ temperature: x }))],
    ['Temperature', [...NEGATIVE, 100.1], (x: number) => waterTemperature(x)],
    ['Molality', [...NEGATIVE, 100_001], (x: number) => waterActivity({ molality: x, k: 0 })],
    ['Norrish constant', [...NO_NUMBERS, -10.1, 200.1], (x: number) => waterActivity({ molality: 1, k: x })],
    ['Solute', [...NEGATIVE, 99.991, 100], (x: number) => waterActivityOfPercent(x, 92, 0)],
    ['Molar mass of the solute', NOT_POSITIVE, (x: number) => waterActivityOfPercent(20, x, 0)],
  ] as const)('%s, out of bounds', (...field) => refusesEach(field));

  it('pKas that do not rise, none at all, and a pH below the acid’s own', () => {
    expect(
      refusal(() => baseToPh({ ...acid, pKas: [6, 4] }, 7, null), /6, 4 do not rise/).fields[0]?.path,
    ).toBe('pKa of the acid');
    refusal(() => baseToPh({ ...acid, pKas: [] }, 7, null), /There is no pKa for the acid/);
    expect(refusal(() => baseToPh(acid, 1, null), /no base takes it down to 1/).fields[0]?.path).toBe(
      'pH to reach',
    );
  });

  it('activities where it is too concentrated for any', () => {
    const salty = solution({ strongCation: 2, strongAnion: 2, activities: 'Davies' });
    refusal(() => solutionPh(salty), /activities cannot be computed/);
    expect(
      solutionPh(solution({ ...salty, strongCation: 0.6, strongAnion: 0.6 })).pH.cautions.join(),
    ).toMatch(/holds to about 0.5/);
  });
});
