import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { blendHlb } from '@core/emulsions/blend-hlb';
import { blendForTarget } from '@core/emulsions/blend-two';
import { hldIonic, hldNonionic, type NonionicSystem } from '@core/emulsions/hld';
import { hldZeroSalinity, hldZeroTemperature, storageWindow } from '@core/emulsions/hld-zero';
import { requiredHlb } from '@core/emulsions/required-hlb';
import { neutralise } from '@core/neutralisation/neutralise';
import { acceleratedAgeing, q10ShelfLife } from '@core/physics/ageing';
import { undissociatedAmount, undissociatedPercent } from '@core/preservation/undissociated';

const hlb = fc.double({ min: 0, max: 40, noNaN: true });
const mass = fc.double({ min: 0.001, max: 1000, noNaN: true });
const emulsifiers = fc.array(fc.record({ mass, hlb }), { minLength: 1, maxLength: 8 });
const oil = fc.record({ mass, value: hlb, spread: fc.double({ min: 0, max: 3, noNaN: true }) });

describe('a blend’s HLB', () => {
  it('lies between its lowest and highest emulsifier', () => {
    fc.assert(
      fc.property(emulsifiers, (parts) => {
        const all = parts.map((part) => part.hlb);
        const { value } = blendHlb(parts);
        expect(value).toBeGreaterThanOrEqual(Math.min(...all) - 1e-9);
        expect(value).toBeLessThanOrEqual(Math.max(...all) + 1e-9);
      }),
    );
  });

  it('does not depend on order or on the unit of mass', () => {
    fc.assert(
      fc.property(emulsifiers, (parts) => {
        const { value } = blendHlb(parts);
        expect(blendHlb([...parts].reverse()).value).toBeCloseTo(value, 9);
        expect(blendHlb(parts.map((part) => ({ ...part, mass: part.mass * 28.35 }))).value).toBeCloseTo(
          value,
          9,
        );
      }),
    );
  });

  it('of two for a target is the target', () => {
    fc.assert(
      fc.property(hlb, hlb, fc.double({ min: 0, max: 1, noNaN: true }), mass, (one, other, share, total) => {
        const [lowHlb, highHlb] = [Math.min(one, other), Math.max(one, other)];
        fc.pre(highHlb - lowHlb > 0.01);
        const targetHlb = lowHlb + share * (highHlb - lowHlb);
        const blend = blendForTarget({ targetHlb, lowHlb, highHlb, total });
        const back = blendHlb([
          { mass: blend.lowMass ?? 0, hlb: lowHlb },
          { mass: blend.highMass ?? 0, hlb: highHlb },
        ]);
        expect(back.value).toBeCloseTo(targetHlb, 6);
        expect((blend.lowMass ?? 0) + (blend.highMass ?? 0)).toBeCloseTo(total, 6);
      }),
    );
  });
});

describe('the required HLB of an oil phase', () => {
  it('lies within the range that the sources’ spread gives, whatever the order', () => {
    fc.assert(
      fc.property(fc.array(oil, { minLength: 1, maxLength: 6 }), (oils) => {
        const lines = oils.map(({ mass: weight, value, spread }, index) => ({
          name: `oil ${index}`,
          mass: weight,
          value,
          low: Math.max(0, value - spread),
          high: Math.min(40, value + spread),
          source: null,
        }));
        const found = requiredHlb(lines, 'o/w');
        expect(found.low).toBeLessThanOrEqual(found.worked.value + 1e-9);
        expect(found.high).toBeGreaterThanOrEqual(found.worked.value - 1e-9);
        expect(requiredHlb([...lines].reverse(), 'o/w').worked.value).toBeCloseTo(found.worked.value, 9);
      }),
    );
  });
});

const common = {
  eacn: fc.double({ min: 0, max: 20, noNaN: true }),
  cc: fc.double({ min: -5, max: 5, noNaN: true }),
  alcoholTerm: fc.double({ min: -1, max: 1, noNaN: true }),
  k: fc.double({ min: 0.1, max: 0.2, noNaN: true }),
};
const nonionic = fc.record({
  ...common,
  salinityPercent: fc.double({ min: 0, max: 20, noNaN: true }),
  b: fc.double({ min: 0.05, max: 0.2, noNaN: true }),
  cT: fc.double({ min: 0.03, max: 0.1, noNaN: true }),
});
const ionic = fc.record({ ...common, alphaT: fc.double({ min: 0, max: 0.05, noNaN: true }) });
const temperature = fc.double({ min: 0, max: 90, noNaN: true });

/** Where HLD = b·S − K·EACN + Cc + φ + cT (T − 25) is 0, by hand: Bourrel et al. 1980, solved for T. */
function inversionByHand({ b, salinityPercent, k, eacn, cc, alcoholTerm, cT }: NonionicSystem): number {
  return 25 - (b * salinityPercent - k * eacn + cc + alcoholTerm) / cT;
}

describe('HLD', () => {
  it('is 0 at the temperature and the salinity computed for it', () => {
    fc.assert(
      fc.property(nonionic, ionic, temperature, (warm, salty, celsius) => {
        fc.pre(inversionByHand(warm) > -273);
        const inversion = hldZeroTemperature(warm).value;
        expect(inversion).toBeCloseTo(inversionByHand(warm), 9);
        expect(hldNonionic(warm, inversion).value).toBeCloseTo(0, 9);
        const salinityPercent = hldZeroSalinity(salty, celsius).value;
        expect(hldIonic({ ...salty, salinityPercent }, celsius).value).toBeCloseTo(0, 9);
      }),
    );
  });

  it('refuses an inversion below absolute zero, and still tells that none lies in storage', () => {
    const cold = { eacn: 0, cc: 5, alcoholTerm: 0, k: 0.1, salinityPercent: 20, b: 0.2, cT: 0.03 };
    expect(inversionByHand(cold)).toBeLessThan(-273.15);
    expect(() => hldZeroTemperature(cold)).toThrow('below absolute zero');
    expect(storageWindow({ kind: 'non-ionic', ...cold }, 5, 40).inversionTemperature).toBeNull();
  });

  it('changes sign in storage exactly when the inversion temperature lies in the range', () => {
    fc.assert(
      fc.property(nonionic, temperature, temperature, (system, one, other) => {
        const [from, to] = [Math.min(one, other), Math.max(one, other)];
        const inversion = inversionByHand(system);
        fc.pre(Math.abs(inversion - from) > 1e-6 && Math.abs(inversion - to) > 1e-6);
        const found = storageWindow({ kind: 'non-ionic', ...system }, from, to);
        expect(found.inversionTemperature !== null).toBe(inversion > from && inversion < to);
        if (found.inversionTemperature !== null) expect(found.inversionTemperature).toBeCloseTo(inversion, 6);
      }),
    );
  });
});

describe('acids', () => {
  const pH = fc.double({ min: 0, max: 14, noNaN: true });

  it('are less undissociated at a higher pH, and never more than the dose', () => {
    fc.assert(
      fc.property(pH, pH, fc.double({ min: 2, max: 10, noNaN: true }), (one, other, pKa) => {
        const [low, high] = [Math.min(one, other), Math.max(one, other)];
        expect(undissociatedPercent(pKa, low).value).toBeGreaterThanOrEqual(
          undissociatedPercent(pKa, high).value,
        );
        expect(undissociatedAmount(0.5, pKa, one).value).toBeLessThanOrEqual(0.5);
      }),
    );
  });

  it('take the same base whether known by acid value or by molar mass', () => {
    fc.assert(
      fc.property(mass, fc.double({ min: 60, max: 400, noNaN: true }), (acidMass, molarMass) => {
        const base = { molarMass: 39.997, equivalents: 1, concentrationPercent: 10, handling: [] };
        const byMass = neutralise({ acidMass, acid: { molarMass, equivalents: 1 }, base, fraction: 0.5 });
        const byValue = neutralise({
          acidMass,
          acid: { acidValue: 56_106 / molarMass },
          base,
          fraction: 0.5,
        });
        expect(byMass.solutionMass / byValue.solutionMass).toBeCloseTo(1, 9);
      }),
    );
  });
});

describe('ageing', () => {
  it('back and forth between two temperatures is no change', () => {
    fc.assert(
      fc.property(
        temperature,
        temperature,
        fc.double({ min: 1.5, max: 4, noNaN: true }),
        (cold, hot, q10) => {
          const test = acceleratedAgeing(cold, hot, q10, 365).value;
          expect(q10ShelfLife(q10, hot, test, cold).value).toBeCloseTo(365, 6);
        },
      ),
    );
  });
});
