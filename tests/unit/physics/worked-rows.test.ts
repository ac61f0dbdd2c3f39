import { acceleratedAgeing, activationEnergy, q10ShelfLife } from '@core/physics/ageing';
import { rcf, standingEquivalent } from '@core/physics/centrifuge';
import { stokesVelocity } from '@core/physics/creaming';
import { densityFill } from '@core/physics/density-fill';
import {
  densityFromMass,
  displacementSpecificGravity,
  mixtureDensity,
  pycnometer,
  volumeFromMass,
} from '@core/physics/density';
import { dilution } from '@core/physics/dilution';
import { suspensionViscosity } from '@core/physics/suspension-viscosity';
import { describe, expect, it } from 'vitest';
import { refusal } from '../working/refusal';

describe('storage that stands for a longer one', () => {
  it.each([
    // Real °C, test °C, Q10, real months: months at the test temperature.
    [25, 45, 2, 12, 3],
    [25, 40, 2, 12, 12 / 2 ** 1.5],
    [20, 40, 3, 18, 2],
    [25, 25, 2, 12, 12],
    [25, 5, 2, 12, 48],
    [25, 55, 2, 24, 3],
    [22, 37, 2, 24, 24 / 2 ** 1.5],
    [25, 45, 1, 12, 12],
    [25, 45, 2, 0, 0],
  ])('%d °C by %d °C, Q10 %d: %d months take %d', (real, test, q10, months, answer) => {
    expect(acceleratedAgeing(real, test, q10, months).value).toBeCloseTo(answer, 9);
    // And back: what was found there, at the real temperature.
    expect(q10ShelfLife(q10, test, answer, real).value).toBeCloseTo(months, 9);
  });

  it.each([
    // By hand: 8.314463 × ln 2 × T1 × T2 / 10 K.
    [2, 20, 30, 51.22],
    [2, 25, 35, 52.95],
    [3, 25, 35, 83.92],
    [4, 20, 30, 102.43],
  ])('Q10 %d between %d and %d °C is %d kJ/mol', (q10, first, second, energy) => {
    expect(activationEnergy(q10, first, second).value).toBeCloseTo(energy, 1);
    expect(activationEnergy(q10, second, first).value).toBeCloseTo(
      activationEnergy(q10, first, second).value,
      9,
    );
  });
});

describe('a spin in a centrifuge', () => {
  it.each([
    // Radius in cm and rpm, by 1.118e-5 × r × rpm².
    [10, 3000, 1006.2],
    [8.5, 3500, 1164.1],
    [15, 1000, 167.7],
    [10, 0, 0],
    [7, 13_000, 13_226],
  ])('%d cm at %d rpm is %d × g', (radius, rpm, force) => {
    expect(rcf(radius, rpm).value).toBeCloseTo(force, 0);
    expect(standingEquivalent(radius, rpm, 30).value).toBeCloseTo(30 * rcf(radius, rpm).value, 6);
  });
});

describe('a droplet that creams', () => {
  it.each([
    // m, kg/m³, Pa·s: 2 r² Δρ g / 9 η by hand, in m/s.
    [1e-6, 100, 0.001, 2.1793e-7],
    [5e-6, 100, 0.001, 5.4481e-6],
    [1e-6, 50, 0.01, 1.08963e-8],
    [1e-6, -100, 0.001, 2.1793e-7],
    [1e-6, 0, 0.001, 0],
  ])('of %d m, %d kg/m³ apart, in %d Pa·s goes %d m/s', (radius, apart, viscosity, speed) =>
    expect(stokesVelocity(radius, apart, viscosity).value).toBeCloseTo(speed, 10),
  );
});

describe('density, volume and fill', () => {
  it.each([
    [92, 100, 0.92],
    [126.1, 100, 1.261],
    [50, 62.5, 0.8],
  ])('%d g in %d mL are %d g/mL, and back', (mass, volume, density) => {
    expect(densityFromMass(mass, volume).value).toBeCloseTo(density, 9);
    expect(volumeFromMass(mass, density).value).toBeCloseTo(volume, 9);
    expect(densityFill(volume, density).value).toBeCloseTo(mass, 9);
  });

  it.each([
    // Vessel empty, with water, with the liquid.
    [20, 70, 66, 0.92],
    [20, 70, 83.05, 1.261],
    [0, 50, 50, 1],
  ])('a vessel of %d g, %d with water and %d with the liquid: %d', (empty, water, liquid, gravity) =>
    expect(pycnometer(empty, water, liquid).value).toBeCloseTo(gravity, 9),
  );

  it.each([
    // Plummet in air, in water, in the liquid.
    [30, 20, 20.8, 0.92],
    [30, 20, 17.39, 1.261],
    [30, 20, 30 - 10, 1],
  ])('a plummet of %d g, %d in water and %d in the liquid: %d', (air, water, liquid, gravity) =>
    expect(displacementSpecificGravity(air, water, liquid).value).toBeCloseTo(gravity, 9),
  );

  it.each([
    [
      [
        [50, 1],
        [50, 1],
      ],
      1,
    ],
    [
      [
        [60, 1],
        [40, 0.8],
      ],
      0.909091,
    ],
    [
      [
        [30, 0.9],
        [70, 1.05],
      ],
      1,
    ],
    [
      [
        [10, 2],
        [0, 0.5],
      ],
      2,
    ],
  ] as const)('of %j, mass and density, is %d', (parts, density) => {
    const named = parts.map(([mass, one], at) => ({ name: `part ${at}`, mass, density: one }));
    expect(mixtureDensity(named).value).toBeCloseTo(density, 6);
  });

  it.each([
    ['nothing to mix', () => mixtureDensity([]), /There is nothing to mix yet/],
    ['parts of no mass', () => mixtureDensity([{ name: 'oil', mass: 0, density: 1 }]), /nothing to mix/],
    ['no density', () => mixtureDensity([{ name: 'oil', mass: 1, density: 0 }]), /Density of oil is 0/],
    ['a vessel that water makes no heavier', () => pycnometer(20, 20, 30), /Vessel with water weighs 20/],
    ['a plummet that floats up', () => displacementSpecificGravity(20, 20, 10), /Plummet in air weighs 20/],
  ] as const)('is refused for %s', (_, attempt, says) => {
    refusal(attempt, says);
  });
});

describe('a dilution', () => {
  it.each([
    // % now, volume, % wanted: the volume to fill up to.
    [10, 5, 2, 25],
    [50, 1, 10, 5],
    [96, 73, 70, 100.114],
    [5, 10, 5, 10],
    [20, 0, 5, 0],
  ])('%d %%, %d mL to %d %% is filled up to %d mL', (now, volume, wanted, answer) => {
    expect(dilution(now, volume, wanted).value).toBeCloseTo(answer, 3);
    expect(dilution(wanted, answer, now).value).toBeCloseTo(volume, 3);
  });

  it('of a weaker solution to a stronger one is said to be none', () => {
    expect(dilution(5, 10, 20).cautions.join(' ')).toMatch(/diluting cannot make it/);
    expect(dilution(20, 10, 5).cautions.join(' ')).toMatch(/Fill up to this volume/);
    expect(dilution(20, 10, 5).cautions.join(' ')).toMatch(/acid or alkali goes into the water/);
  });
});

describe('droplets that thicken', () => {
  it.each([
    // Krieger and Dougherty: (1 − φ/φm)^(−2.5 φm), by hand.
    [0, 0.64, 1],
    [0.3, 0.6, 2.828427],
    [0.45, 0.6, 8],
    [0.32, 0.64, 3.031433],
  ])('%d of the volume, packed at %d, thicken %d times', (phi, packed, times) =>
    expect(suspensionViscosity(phi, packed, 2.5, 1).value).toBeCloseTo(times, 5),
  );

  it.each([
    ['as many as are packed', 0.64, 0.64, /packed/],
    ['per cent', 30, 64, /cannot pass 1/],
    ['a fraction below zero', -0.1, 0.64, /Volume fraction/],
  ] as const)('are refused for %s', (_, phi, packed, says) => {
    refusal(() => suspensionViscosity(phi, packed, 2.5, 1), says);
  });
});
