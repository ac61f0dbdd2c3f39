import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  hlbTemperature,
  mixedInversionTemperature,
  saltShift,
} from '@core/phase-inversion/inversion-temperature';
import { NEGATIVE, NO_NUMBERS, refusesEach } from '../working/bounds';
import { refusal } from '../working/refusal';

const oils = fc
  .array(fc.tuple(fc.integer({ min: 1, max: 50 }), fc.double({ min: -50, max: 200, noNaN: true })), {
    minLength: 1,
    maxLength: 6,
  })
  .map((rows) => {
    const whole = rows.reduce((sum, [weight]) => sum + weight, 0);
    return rows.map(([weight, pit]) => ({ volumeFraction: weight / whole, pit }));
  });

describe('phase-inversion temperature of a mix', () => {
  it('lies between its oils’, moves with all of them alike, and does not hang on their order', () => {
    fc.assert(
      fc.property(oils, fc.double({ min: -20, max: 20, noNaN: true }), (all, shift) => {
        const each = all.map(({ pit }) => pit);
        const got = mixedInversionTemperature(all).value;
        expect(got).toBeGreaterThanOrEqual(Math.min(...each) - 1e-9);
        expect(got).toBeLessThanOrEqual(Math.max(...each) + 1e-9);
        if (each.some((pit) => pit + shift < -50 || pit + shift > 200)) return;
        const moved = [...all].reverse().map((one) => ({ ...one, pit: one.pit + shift }));
        expect(mixedInversionTemperature(moved).value).toBeCloseTo(got + shift, 9);
      }),
    );
  });

  it('takes fractions as printed, to half a per cent in all', () => {
    const of = (...fractions: number[]) =>
      mixedInversionTemperature(fractions.map((volumeFraction) => ({ volumeFraction, pit: 60 })));
    expect(of(0.333, 0.333, 0.333).value).toBeCloseTo(60, 9);
    expect(of(0.4975, 0.4976).value).toBeCloseTo(60, 9);
    refusal(() => of(0.49, 0.5), /sum to 0.99, not to 1/);
    refusal(() => of(0.51, 0.5), /sum to 1.01, not to 1/);
    expect(refusal(() => mixedInversionTemperature([]), /no oil yet/).facts).toEqual({ missing: true });
  });
});

describe('HLB temperature', () => {
  it('moves by K with each unit of HLB, back with each of the oil', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 100, noNaN: true }),
        fc.double({ min: 0, max: 39, noNaN: true }),
        fc.double({ min: -20, max: 39, noNaN: true }),
        (k, hlb, oil) => {
          const here = hlbTemperature(k, hlb, oil).value;
          expect(hlbTemperature(k, hlb + 1, oil).value - here).toBeCloseTo(k, 8);
          expect(hlbTemperature(k, hlb, oil + 1).value - here).toBeCloseTo(-k, 8);
          expect(hlbTemperature(k, hlb + 1, oil + 1).value).toBeCloseTo(here, 8);
        },
      ),
    );
  });

  it('says where water shows no inversion: below 0 and above 100 °C', () => {
    const said = (nOil: number): boolean =>
      hlbTemperature(10, 10, nOil).cautions.join().includes('no inversion');
    expect([10, 5, 0].map(said)).toEqual([false, false, false]);
    expect([10.01, -0.01].map(said)).toEqual([true, true]);
  });
});

describe('salt', () => {
  it('lowers it in proportion to salt and b, the less the steeper it goes with temperature', () => {
    const positive = fc.double({ min: 0.01, max: 5, noNaN: true });
    fc.assert(
      fc.property(positive, positive, fc.double({ min: 0.01, max: 18, noNaN: true }), (b, cT, salt) => {
        const shift = saltShift(b, cT, salt).value;
        expect(shift).toBeLessThan(0);
        for (const twice of [
          saltShift(2 * b, cT, salt),
          saltShift(b, cT, 2 * salt),
          saltShift(b, cT / 2, salt),
        ])
          expect(twice.value / shift).toBeCloseTo(2, 9);
      }),
    );
  });

  it('of none moves nothing, without a sign', () => {
    expect(saltShift(0.13, 0.06, 0).value).toBe(0);
    expect(saltShift(0, 0.06, 5).value).toBe(0);
  });
});

describe('what is refused', () => {
  const oil = (volumeFraction: number, pit = 50) => mixedInversionTemperature([{ volumeFraction, pit }]);
  it.each([
    ['Volume fraction of an oil', [...NEGATIVE, 1.01, 30], (x: number) => oil(x)],
    ['PIT of an oil', [...NO_NUMBERS, -50.1, 200.1], (x: number) => oil(1, x)],
    ['K', [...NO_NUMBERS, -1, 0, 100.1], (x: number) => hlbTemperature(x, 10, 5)],
    ['HLB of the emulsifier', [...NEGATIVE, 40.1], (x: number) => hlbTemperature(17, x, 5)],
    ['Number of the oil', [...NO_NUMBERS, -20.1, 40.1], (x: number) => hlbTemperature(17, 10, x)],
    ['b', [...NEGATIVE, 10.1], (x: number) => saltShift(x, 0.06, 5)],
    ['cT', [...NEGATIVE, 0, 10.1], (x: number) => saltShift(0.13, x, 5)],
    ['Salt', [...NEGATIVE, 36.1], (x: number) => saltShift(0.13, 0.06, x)],
  ] as const)('%s, out of bounds', (...field) => refusesEach(field));
});
