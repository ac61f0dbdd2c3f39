import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  cubeRootViscosity,
  logMixViscosity,
  refutasIndex,
  refutasViscosity,
  type ViscousPart,
} from '@core/rheology/mixing';
import { PUBLISHED_VISCOSITIES } from '@core/rheology/published-viscosities';
import { glycerolViscosity, viscosityAt } from '@core/rheology/temperature';
import { NO_NUMBERS, NOT_POSITIVE, refusesEach } from '../working/bounds';
import { refusal } from '../working/refusal';

/** Liquids with fractions that sum to 1, none thinner than the Refutas index can bear. */
const mix = fc
  .array(fc.tuple(fc.integer({ min: 1, max: 50 }), fc.double({ min: 1, max: 10_000, noNaN: true })), {
    minLength: 1,
    maxLength: 7,
  })
  .map((rows): ViscousPart[] => {
    const whole = rows.reduce((sum, [weight]) => sum + weight, 0);
    return rows.map(([weight, viscosity]) => ({ fraction: weight / whole, viscosity }));
  });
const RULES = {
  logarithms: (parts: ViscousPart[]) => logMixViscosity(parts),
  'cube roots': cubeRootViscosity,
  'Refutas’ index': refutasViscosity,
};

describe.each(Object.entries(RULES))('mixing by %s', (_name, rule) => {
  it('lies between the thinnest and the thickest, in any order and however a part is split', () => {
    fc.assert(
      fc.property(mix, (parts) => {
        const got = rule(parts).value;
        const each = parts.map(({ viscosity }) => viscosity);
        expect(got).toBeGreaterThanOrEqual(Math.min(...each) * (1 - 1e-9));
        expect(got).toBeLessThanOrEqual(Math.max(...each) * (1 + 1e-9));
        const halves = parts.flatMap((one) => [
          { ...one, fraction: one.fraction / 4 },
          { ...one, fraction: (3 * one.fraction) / 4 },
        ]);
        expect(rule(halves.reverse()).value / got).toBeCloseTo(1, 9);
      }),
    );
  });

  it('grows where more of the thicker goes in', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 0.98, noNaN: true }), (thick) => {
        const of = (fraction: number): number =>
          rule([
            { fraction, viscosity: 500 },
            { fraction: 1 - fraction, viscosity: 5 },
          ]).value;
        expect(of(thick + 0.02)).toBeGreaterThan(of(thick));
      }),
    );
  });

  it('takes fractions as a table prints them, and no others', () => {
    const thirds = [0.333, 0.333, 0.333].map((fraction) => ({ fraction, viscosity: 40 }));
    expect(rule(thirds).value).toBeCloseTo(40, 9);
    refusal(() => rule([{ fraction: 0.99, viscosity: 40 }]), /sum to 0.99, not to 1/);
    refusal(
      () =>
        rule([
          { fraction: 0.4, viscosity: 40 },
          { fraction: 0.7, viscosity: 40 },
        ]),
      /sum to 1.1/,
    );
    expect(refusal(() => rule([]), /no liquid yet/).facts).toEqual({ missing: true });
  });

  it('refuses a fraction or a viscosity that cannot be', () => {
    refusesEach([
      'Fraction of a liquid',
      [...NO_NUMBERS, -0.01, 1.01, 30],
      (x) => rule([{ fraction: x, viscosity: 5 }]),
    ]);
    refusesEach(['Viscosity of a liquid', NOT_POSITIVE, (x) => rule([{ fraction: 1, viscosity: x }])]);
  });
});

describe('rules of mixing against each other', () => {
  it('stand in the order of their means: Refutas, logarithms, cube roots, plain', () => {
    fc.assert(
      fc.property(mix, (parts) => {
        // Each takes the mean of a function less concave than the one before (Jensen's inequality).
        const plain = parts.reduce((sum, one) => sum + one.fraction * one.viscosity, 0);
        const found = [refutasViscosity, RULES.logarithms, cubeRootViscosity].map(
          (rule) => rule(parts).value,
        );
        for (const [at, value] of [...found, plain].entries())
          if (at > 0) expect(value).toBeGreaterThanOrEqual((found[at - 1] ?? 0) * (1 - 1e-9));
      }),
    );
  });

  it('interaction adds G x₁x₂ to the logarithm, once for each pair', () => {
    // 0.5 and 0.5 of 10 and 1000 is 100; exp(0.25 × 2) = 1.648721 times that.
    const two = [
      { fraction: 0.5, viscosity: 10 },
      { fraction: 0.5, viscosity: 1000 },
    ];
    expect(logMixViscosity(two).value).toBeCloseTo(100, 9);
    expect(logMixViscosity(two, 2).value).toBeCloseTo(164.8721, 4);
    fc.assert(
      fc.property(mix, fc.double({ min: -5, max: 5, noNaN: true }), (parts, g) => {
        let pairs = 0;
        for (const [a, one] of parts.entries())
          for (const other of parts.slice(a + 1)) pairs += one.fraction * other.fraction;
        expect(Math.log(logMixViscosity(parts, g).value / logMixViscosity(parts).value)).toBeCloseTo(
          pairs * g,
          8,
        );
      }),
    );
    refusesEach(['Interaction', [...NO_NUMBERS, -20.1, 20.1], (x) => logMixViscosity(two, x)]);
  });

  it('Refutas’ index of one liquid is that of the mix of it alone; thinner than 0.2 mm²/s has none', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.3, max: 1e5, noNaN: true }), (viscosity) => {
        expect(refutasViscosity([{ fraction: 1, viscosity }]).value / viscosity).toBeCloseTo(1, 8);
        expect(refutasIndex(viscosity * 1.1).value).toBeGreaterThan(refutasIndex(viscosity).value);
      }),
    );
    refusesEach(['Kinematic viscosity', [...NOT_POSITIVE, 0.1, 0.2], (x) => refutasIndex(x)]);
  });
});

describe('viscosity by temperature', () => {
  const measured = fc.record({
    temperature: fc.double({ min: 0, max: 80, noNaN: true }),
    viscosity: fc.double({ min: 0.5, max: 5000, noNaN: true }),
  });
  it('passes through both readings, whichever comes first, and lies between them in between', () => {
    fc.assert(
      fc.property(measured, measured, fc.double({ min: 0, max: 1, noNaN: true }), (one, two, part) => {
        fc.pre(Math.abs(one.temperature - two.temperature) > 1);
        expect(viscosityAt(one, two, one.temperature).value / one.viscosity).toBeCloseTo(1, 9);
        expect(viscosityAt(one, two, two.temperature).value / two.viscosity).toBeCloseTo(1, 9);
        const between = one.temperature + part * (two.temperature - one.temperature);
        const got = viscosityAt(one, two, between).value;
        expect(viscosityAt(two, one, between).value / got).toBeCloseTo(1, 9);
        expect(got).toBeGreaterThanOrEqual(Math.min(one.viscosity, two.viscosity) * (1 - 1e-9));
        expect(got).toBeLessThanOrEqual(Math.max(one.viscosity, two.viscosity) * (1 + 1e-9));
      }),
    );
  });

  it('says where it goes too far, and where a liquid would thicken with heat', () => {
    const [cold, warm] = [
      { temperature: 20, viscosity: 986 },
      { temperature: 40, viscosity: 231 },
    ];
    const said = (t: number): string => viscosityAt(cold, warm, t).cautions.join();
    expect([0, 30, 60].map((t) => said(t).includes('far beyond'))).toEqual([false, false, false]);
    expect([-0.1, 60.1].map((t) => said(t).includes('far beyond'))).toEqual([true, true]);
    const odd = viscosityAt({ ...cold, viscosity: 100 }, warm, 30);
    expect(odd.cautions.join()).toContain('thicker with heat');
  });

  const at = (temperature: number, viscosity = 5) => ({ temperature, viscosity });
  const beyond = [...NO_NUMBERS, -273.16, 1000.1];
  it.each([
    ['First temperature', beyond, (x: number) => viscosityAt(at(x), at(40), 30)],
    ['Second temperature', beyond, (x: number) => viscosityAt(at(20), at(x), 30)],
    ['Temperature wanted', beyond, (x: number) => viscosityAt(at(20), at(40), x)],
    ['First viscosity', NOT_POSITIVE, (x: number) => viscosityAt(at(20, x), at(40), 30)],
    ['Second viscosity', NOT_POSITIVE, (x: number) => viscosityAt(at(20), at(40, x), 30)],
    ['Glycerol', [...NO_NUMBERS, -0.1, 100.1], (x: number) => glycerolViscosity(x, 20)],
    ['Temperature', [...NO_NUMBERS, -0.1, 100.1], (x: number) => glycerolViscosity(50, x)],
  ] as const)('%s, out of bounds', (...field) => refusesEach(field));

  it('refuses one temperature twice, and absolute zero', () => {
    refusal(() => viscosityAt(at(20), at(20, 9), 30), /at one temperature/);
    for (const three of [
      [-273.15, 40, 30],
      [20, -273.15, 30],
      [20, 40, -273.15],
    ] as const)
      refusal(() => viscosityAt(at(three[0]), at(three[1]), three[2]), /absolute zero/);
  });

  // Viscosity of water, IAPWS 2008 (from memory): mPa·s at °C. The fit claims no more than a few per cent.
  it.each([
    [0, 1.792],
    [20, 1.002],
    [25, 0.89],
    [50, 0.547],
    [100, 0.282],
  ])('of water at %i °C is %d mPa·s within 2 %%', (temperature, known) => {
    expect(Math.abs(glycerolViscosity(0, temperature).value / known - 1)).toBeLessThan(0.02);
  });

  it('of glycerin grows with its share and falls with heat', () => {
    const [share, warmth] = [fc.integer({ min: 0, max: 99 }), fc.integer({ min: 0, max: 99 })];
    fc.assert(
      fc.property(share, warmth, (percent, temperature) => {
        const here = glycerolViscosity(percent, temperature).value;
        expect(glycerolViscosity(percent + 1, temperature).value).toBeGreaterThan(here);
        expect(glycerolViscosity(percent, temperature + 1).value).toBeLessThan(here);
      }),
    );
  });

  it('published figures fall with heat and are of liquids', () => {
    for (const one of PUBLISHED_VISCOSITIES) {
      expect(one.mPas).toBeGreaterThan(0.2);
      const warmer = PUBLISHED_VISCOSITIES.find((two) => two.name === one.name && two.celsius > one.celsius);
      if (warmer) expect(warmer.mPas).toBeLessThan(one.mPas);
    }
  });
});
