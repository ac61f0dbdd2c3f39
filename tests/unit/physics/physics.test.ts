import { describe, expect, it } from 'vitest';
import { acceleratedAgeing, activationEnergy, q10ShelfLife } from '@core/physics/ageing';
import { rcf, standingEquivalent } from '@core/physics/centrifuge';
import { stokesVelocity } from '@core/physics/creaming';
import { densityFill } from '@core/physics/density-fill';
import { dilution } from '@core/physics/dilution';
import { suspensionViscosity } from '@core/physics/suspension-viscosity';
import { refusal } from '../working/refusal';

describe('creaming and centrifuge', () => {
  it('gives a positive speed whichever way the droplet moves', () => {
    expect(stokesVelocity(1e-6, -100, 1).value).toBe(stokesVelocity(1e-6, 100, 1).value);
  });

  it('a spin stands for RCF times its time', () => {
    expect(standingEquivalent(10, 3000, 2).value).toBeCloseTo(2 * rcf(10, 3000).value, 9);
    expect(standingEquivalent(10, 3000, 2).steps.at(-1)?.unit).toBe('min');
  });

  it('refuses no radius, no viscosity and a negative speed', () => {
    refusal(() => stokesVelocity(0, 100, 1), /Droplet radius/);
    refusal(() => stokesVelocity(1e-6, 100, 0), /Viscosity/);
    refusal(() => rcf(10, -1), /negative/);
  });
});

describe('ageing', () => {
  it('always says that it screens', () => {
    expect(acceleratedAgeing(25, 45, 2, 12).value).toBe(3);
    expect(acceleratedAgeing(25, 45, 2, 12).cautions.join()).toContain('does not prove');
  });

  it('refuses Q10 of zero, equal temperatures and a flight beyond computing', () => {
    refusal(() => q10ShelfLife(0, 25, 12, 5), /Q10/);
    refusal(() => activationEnergy(2, 25, 25), /same/);
    refusal(() => activationEnergy(2, -273.15, 25), /absolute zero/);
    refusal(() => q10ShelfLife(1e300, 500, 12, 5), /beyond what can be computed/);
  });
});

describe('suspension viscosity', () => {
  it('is the medium’s without droplets, and nears Einstein’s 1 + 2.5 φ for few', () => {
    expect(suspensionViscosity(0, 0.64, 2.5, 3).value).toBe(3);
    expect(suspensionViscosity(0.001, 0.64, 2.5, 1).value).toBeCloseTo(1.0025, 4);
  });

  it('refuses packing and per cent', () => {
    refusal(() => suspensionViscosity(0.64, 0.64, 2.5, 1), /packed/);
    refusal(() => suspensionViscosity(30, 64, 2.5, 1), /cannot pass 1/);
  });
});

describe('dilution and filling', () => {
  it('says when the volume is one of a stronger solution, which diluting cannot reach', () => {
    expect(dilution(50, 10, 10).value).toBe(50);
    expect(dilution(5, 100, 20).value).toBe(25);
    expect(dilution(5, 100, 20).cautions[0]).toContain('stronger');
  });

  it('refuse nothing wanted and no density', () => {
    refusal(() => dilution(10, 10, 0), /more than zero/);
    expect(densityFill(50, 0.96).value).toBe(48);
    refusal(() => densityFill(50, 0), /Density/);
  });
});

describe('where laws end', () => {
  it('Stokes says so when Reynolds’ number passes 1: a droplet of 500 µm in water', () => {
    // v = 2 × (5e-4)² × 100 × 9.80665 / (9 × 0.001) = 0.0545 m/s; Re = 2 × 5e-4 × 0.0545 × 1000 / 0.001 = 54.5.
    expect(stokesVelocity(500e-6, 100, 0.001).cautions.join()).toContain('54.48');
    expect(stokesVelocity(5e-6, 100, 0.001).cautions.join()).not.toContain('Reynolds');
    expect(stokesVelocity(500e-6, 100, 1).cautions.join()).not.toContain('Reynolds');
  });
});
