import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
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
import { arrheniusRate } from '@core/stability/arrhenius';
import { NEGATIVE, NO_NUMBERS, NOT_POSITIVE, refusesEach } from '../working/bounds';
import { refusal } from '../working/refusal';

const size = fc.double({ min: 0.01, max: 1000, noNaN: true });
const density = fc.double({ min: 0.5, max: 2, noNaN: true });
const celsius = fc.double({ min: -20, max: 80, noNaN: true });
const q10 = fc.double({ min: 1.1, max: 5, noNaN: true });

describe('creaming', () => {
  it('goes with the square of the radius, with the difference of density, and against viscosity', () => {
    fc.assert(
      fc.property(size, size, size, (radius, difference, viscosity) => {
        const at = (r: number, d: number, v: number): number => stokesVelocity(r * 1e-6, d, v).value;
        const here = at(radius, difference, viscosity);
        expect(at(2 * radius, difference, viscosity) / here).toBeCloseTo(4, 9);
        expect(at(radius, 2 * difference, viscosity) / here).toBeCloseTo(2, 9);
        expect(at(radius, difference, 2 * viscosity) / here).toBeCloseTo(0.5, 9);
      }),
    );
    expect(stokesVelocity(1e-6, 0, 1).value).toBe(0);
  });

  it('a rotor’s force is ω²r over gravity, within what its printed constant rounds', () => {
    fc.assert(
      fc.property(size, fc.integer({ min: 1, max: 30_000 }), (radius, rpm) => {
        const omega = (2 * Math.PI * rpm) / 60;
        expect(rcf(radius, rpm).value / ((omega ** 2 * radius) / 100 / 9.80665)).toBeCloseTo(1, 3);
        expect(standingEquivalent(radius, rpm, 30).value).toBeCloseTo(30 * rcf(radius, rpm).value, 6);
      }),
    );
  });
});

describe('ageing by Q10', () => {
  it('there and back is the time that it was', () => {
    fc.assert(
      fc.property(celsius, celsius, q10, size, (real, test, factor, time) => {
        const tested = acceleratedAgeing(real, test, factor, time).value;
        expect(q10ShelfLife(factor, test, tested, real).value / time).toBeCloseTo(1, 9);
        expect(acceleratedAgeing(real, real + 10, factor, time).value).toBeCloseTo(time / factor, 9);
        expect(acceleratedAgeing(real, real, factor, time).value).toBe(time);
      }),
    );
  });

  it('has the energy that by Arrhenius makes the same ratio of rates', () => {
    fc.assert(
      fc.property(celsius, celsius, q10, (one, other, factor) => {
        fc.pre(Math.abs(one - other) > 0.5);
        const energy = activationEnergy(factor, one, other).value;
        expect(arrheniusRate(1, one, other, energy).value).toBeCloseTo(factor ** ((other - one) / 10), 6);
        expect(activationEnergy(factor, other, one).value).toBeCloseTo(energy, 6);
      }),
    );
    expect(activationEnergy(1, 20, 40).value).toBeCloseTo(0, 12);
  });
});

describe('density', () => {
  it('of a mass and volume, and back; a fill is what fits', () => {
    fc.assert(
      fc.property(size, density, (volume, gPerMl) => {
        const mass = densityFill(volume, gPerMl).value;
        expect(densityFromMass(mass, volume).value).toBeCloseTo(gPerMl, 9);
        expect(volumeFromMass(mass, gPerMl).value).toBeCloseTo(volume, 7);
      }),
    );
  });

  it('by pycnometer and by plummet comes to one figure, whatever vessel and plummet weigh', () => {
    fc.assert(
      fc.property(size, size, density, (vessel, volume, gravity) => {
        expect(pycnometer(vessel, vessel + volume, vessel + volume * gravity).value).toBeCloseTo(gravity, 6);
        const air = 5 * volume;
        expect(displacementSpecificGravity(air, air - volume, air - volume * gravity).value).toBeCloseTo(
          gravity,
          6,
        );
      }),
    );
  });

  const parts = fc.array(fc.record({ name: fc.constant('part'), mass: size, density }), {
    minLength: 1,
    maxLength: 8,
  });
  it('of a mixture lies between its parts’, in any order and unit, nearer the light ones than a mean by mass', () => {
    fc.assert(
      fc.property(parts, (all) => {
        const got = mixtureDensity(all).value;
        const each = all.map((one) => one.density);
        expect(got).toBeGreaterThanOrEqual(Math.min(...each) * (1 - 1e-12));
        expect(got).toBeLessThanOrEqual(Math.max(...each) * (1 + 1e-12));
        const whole = all.reduce((sum, one) => sum + one.mass, 0);
        const byMass = all.reduce((sum, one) => sum + (one.mass / whole) * one.density, 0);
        expect(got).toBeLessThanOrEqual(byMass * (1 + 1e-12));
        const inKg = [...all].reverse().map((one) => ({ ...one, mass: one.mass / 1000 }));
        expect(mixtureDensity(inKg).value).toBeCloseTo(got, 9);
      }),
    );
  });

  it('worked by hand: 60 g of 1.0 with 40 g of 0.8 fill 110 mL: 0.909091 g/mL', () => {
    const two = [
      { name: 'water', mass: 60, density: 1 },
      { name: 'oil', mass: 40, density: 0.8 },
      { name: 'nothing yet', mass: 0, density: 3 },
    ];
    expect(mixtureDensity(two).value).toBeCloseTo(0.909091, 6);
    expect(mixtureDensity(two).cautions.join()).toContain('Air');
    refusal(() => mixtureDensity([]), /nothing to mix/);
    refusal(() => mixtureDensity([{ name: 'oil', mass: 0, density: 0.9 }]), /nothing to mix/);
  });

  it('refuses a full vessel no heavier than the empty one, and a plummet that water makes heavier', () => {
    expect(refusal(() => pycnometer(20, 20, 30), /no more than the empty one/).fields[0]?.path).toBe(
      'Vessel with water',
    );
    refusal(() => pycnometer(20, 30, 19), /Vessel with the liquid/);
    refusal(() => displacementSpecificGravity(10, 10, 8), /no more than in water/);
    refusal(() => displacementSpecificGravity(10, 8, 10.1), /no more than in the liquid/);
  });
});

describe('dilution and droplets', () => {
  it('keeps what is dissolved, and back again gives the volume that it was', () => {
    fc.assert(
      fc.property(size, size, size, (c1, v1, c2) => {
        const v2 = dilution(c1, v1, c2).value;
        expect((v2 * c2) / (c1 * v1)).toBeCloseTo(1, 9);
        expect(dilution(c2, v2, c1).value / v1).toBeCloseTo(1, 9);
      }),
    );
  });

  it('more droplets thicken, the more the nearer they are to packing; the medium’s unit carries through', () => {
    const filled = fc.double({ min: 0, max: 0.6, noNaN: true });
    fc.assert(
      fc.property(filled, (phi) => {
        const at = (x: number, medium = 1): number => suspensionViscosity(x, 0.64, 2.5, medium).value;
        const [less, here, more] = [at(phi), at(phi + 0.01), at(phi + 0.02)];
        expect(here).toBeGreaterThan(less);
        expect(more - here).toBeGreaterThan(here - less);
        expect(at(phi, 1000) / at(phi)).toBeCloseTo(1000, 6);
        expect(here).toBeGreaterThanOrEqual(1 + 2.5 * (phi + 0.01));
      }),
    );
    refusal(() => suspensionViscosity(0.7, 0.64, 2.5, 1), /packed/);
    expect(suspensionViscosity(0.639999, 0.64, 2.5, 1).value).toBeGreaterThan(1e9);
  });
});

describe('what is refused', () => {
  const heat = [...NO_NUMBERS, -273.16, 1000.1];
  it.each([
    ['Droplet radius', NOT_POSITIVE, (x: number) => stokesVelocity(x, 100, 1)],
    ['Density difference', NO_NUMBERS, (x: number) => stokesVelocity(1e-6, x, 1)],
    ['Viscosity', NOT_POSITIVE, (x: number) => stokesVelocity(1e-6, 100, x)],
    ['Density of the medium', NOT_POSITIVE, (x: number) => stokesVelocity(1e-6, 100, 1, x)],
    ['Rotor radius', NOT_POSITIVE, (x: number) => rcf(x, 3000)],
    ['Speed of rotation', NEGATIVE, (x: number) => rcf(10, x)],
    ['Spin time', NEGATIVE, (x: number) => standingEquivalent(10, 3000, x)],
    ['Real temperature', heat, (x: number) => acceleratedAgeing(x, 45, 2, 1)],
    ['Test temperature', heat, (x: number) => acceleratedAgeing(25, x, 2, 1)],
    ['Q10', NOT_POSITIVE, (x: number) => acceleratedAgeing(25, 45, x, 1)],
    ['Real time', NEGATIVE, (x: number) => acceleratedAgeing(25, 45, 2, x)],
    ['Q10', NOT_POSITIVE, (x: number) => q10ShelfLife(x, 25, 1, 5)],
    ['Known temperature', heat, (x: number) => q10ShelfLife(2, x, 1, 5)],
    ['Known time', NEGATIVE, (x: number) => q10ShelfLife(2, 25, x, 5)],
    ['Temperature', heat, (x: number) => q10ShelfLife(2, 25, 1, x)],
    ['Q10', NOT_POSITIVE, (x: number) => activationEnergy(x, 25, 45)],
    ['First temperature', heat, (x: number) => activationEnergy(2, x, 45)],
    ['Second temperature', heat, (x: number) => activationEnergy(2, 25, x)],
    ['Volume', NEGATIVE, (x: number) => densityFill(x, 1)],
    ['Density', NOT_POSITIVE, (x: number) => densityFill(50, x)],
    ['Mass', NOT_POSITIVE, (x: number) => densityFromMass(x, 50)],
    ['Volume', NOT_POSITIVE, (x: number) => densityFromMass(50, x)],
    ['Mass', NEGATIVE, (x: number) => volumeFromMass(x, 1)],
    ['Density', NOT_POSITIVE, (x: number) => volumeFromMass(50, x)],
    ['Empty vessel', NEGATIVE, (x: number) => pycnometer(x, 30, 30)],
    ['Vessel with water', NOT_POSITIVE, (x: number) => pycnometer(0, x, 30)],
    ['Plummet in air', NOT_POSITIVE, (x: number) => displacementSpecificGravity(x, 0, 0)],
    ['Plummet in water', NEGATIVE, (x: number) => displacementSpecificGravity(10, x, 5)],
    ['Plummet in the liquid', NEGATIVE, (x: number) => displacementSpecificGravity(10, 5, x)],
    ['Parts of oil', NEGATIVE, (mass: number) => mixtureDensity([{ name: 'oil', mass, density: 1 }])],
    ['Density of oil', NOT_POSITIVE, (x: number) => mixtureDensity([{ name: 'oil', mass: 1, density: x }])],
    ['Concentration now', NOT_POSITIVE, (x: number) => dilution(x, 1, 1)],
    ['Volume now', NEGATIVE, (x: number) => dilution(1, x, 1)],
    ['Concentration wanted', NOT_POSITIVE, (x: number) => dilution(1, 1, x)],
    ['Volume fraction', NEGATIVE, (x: number) => suspensionViscosity(x, 0.64, 2.5, 1)],
    ['Packing limit', NOT_POSITIVE, (x: number) => suspensionViscosity(0.1, x, 2.5, 1)],
    ['Intrinsic viscosity', NOT_POSITIVE, (x: number) => suspensionViscosity(0.1, 0.64, x, 1)],
    ['Viscosity of the medium', NEGATIVE, (x: number) => suspensionViscosity(0.1, 0.64, 2.5, x)],
  ] as const)('%s, out of bounds', (...field) => refusesEach(field));

  it.each([
    ['a mass no volume holds', () => densityFromMass(1e300, 1e-300)],
    ['a dilution beyond all', () => dilution(1e200, 1e200, 1)],
    ['a droplet of a light year', () => stokesVelocity(1e200, 1, 1)],
    ['a spin beyond all', () => rcf(1e200, 1e100)],
    ['a suspension beyond all', () => suspensionViscosity(0.5, 0.500000001, 1e6, 1)],
  ])('%s', (_what, attempt) => {
    refusal(attempt, /beyond what can be computed/);
  });
});
