import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { arrheniusEnergy, arrheniusRate } from '@core/stability/arrhenius';
import { ACCELERATED, extrapolation } from '@core/stability/extrapolation';
import { crossing, shelfLife } from '@core/stability/trend';
import { NO_NUMBERS, NOT_POSITIVE, refusesEach } from '../working/bounds';
import { refusal } from '../working/refusal';

const celsius = fc.double({ min: -20, max: 90, noNaN: true });
const rate = fc.double({ min: 1e-4, max: 1e3, noNaN: true });

describe('Arrhenius’ law', () => {
  it('worked by hand: a rate that doubles from 25 to 35 °C', () => {
    // R ln 2 / (1/298.15 − 1/308.15) = 0.008314463 × 0.693147 / 1.088450e-4 = 52.9484 kJ/mol
    const twice = arrheniusEnergy([
      { temperature: 25, rate: 1 },
      { temperature: 35, rate: 2 },
    ]);
    expect(twice.value).toBeCloseTo(52.948, 2);
    expect(twice.unit).toBe('kJ/mol');
  });

  it('goes there and back: the energy of two rates gives the second from the first', () => {
    fc.assert(
      fc.property(celsius, celsius, rate, rate, (t1, t2, k1, k2) => {
        fc.pre(Math.abs(t1 - t2) > 0.5);
        const points = [
          { temperature: t1, rate: k1 },
          { temperature: t2, rate: k2 },
        ];
        const energy = arrheniusEnergy(points).value;
        expect(arrheniusRate(k1, t1, t2, energy).value / k2).toBeCloseTo(1, 6);
        expect(arrheniusEnergy(points.reverse()).value).toBeCloseTo(energy, 6);
        // Another unit of the rate leaves the energy alone.
        expect(arrheniusEnergy(points.map((one) => ({ ...one, rate: one.rate * 24 }))).value).toBeCloseTo(
          energy,
          6,
        );
      }),
    );
  });

  it('of many rates on one line is that of any two of them', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 20, max: 200, noNaN: true }),
        fc.integer({ min: 3, max: 6 }),
        (energy, count) => {
          const points = Array.from({ length: count }, (_, at) => {
            const temperature = 20 + 12 * at;
            return { temperature, rate: 3 * Math.exp(-energy / 0.008314462618 / (temperature + 273.15)) };
          });
          expect(arrheniusEnergy(points).value).toBeCloseTo(energy, 6);
        },
      ),
    );
  });

  it('a rate at its own temperature is itself, and grows with warmth where energy is needed', () => {
    expect(arrheniusRate(0.4, 25, 25, 80).value).toBe(0.4);
    expect(arrheniusRate(0.4, 25, 40, 0).value).toBe(0.4);
    expect(arrheniusRate(0.4, 25, 40, 80).value).toBeGreaterThan(0.4);
    expect(arrheniusRate(0.4, 25, 5, 80).value).toBeLessThan(0.4);
  });

  const beyond = [...NO_NUMBERS, -273.16, 1000.1];
  it.each([
    ['Temperature', [...beyond, -273.15], (x: number) => arrheniusRate(1, x, 25, 80)],
    ['Temperature', beyond, (x: number) => arrheniusRate(1, 25, x, 80)],
    ['Known rate', NOT_POSITIVE, (x: number) => arrheniusRate(x, 25, 40, 80)],
    ['Activation energy', NO_NUMBERS, (x: number) => arrheniusRate(1, 25, 40, x)],
  ] as const)('%s, out of bounds', (named, refused, attempt) => {
    if (refused.includes(-273.15)) refusal(() => attempt(-273.15), /absolute zero/);
    refusesEach([named, refused.filter((one) => one !== -273.15), attempt]);
  });

  it('refuses one rate, rates at one temperature, and a rate of nothing', () => {
    expect(refusal(() => arrheniusEnergy([]), /one rate/i).facts).toEqual({ missing: true });
    const at25 = [1, 2, 3].map((one) => ({ temperature: 25, rate: one }));
    // Said of temperatures also when three or more were measured, not of times.
    for (const points of [at25.slice(0, 2), at25]) refusal(() => arrheniusEnergy(points), /one temperature/);
    refusal(() => arrheniusEnergy([...at25, { temperature: 40, rate: 0 }]), /Rate is 0/);
  });
});

/** Readings on a line that falls, each off it by a little. */
const study = fc.record({
  start: fc.double({ min: 95, max: 105, noNaN: true }),
  fall: fc.double({ min: 0.1, max: 2, noNaN: true }),
  off: fc.array(fc.double({ min: -0.5, max: 0.5, noNaN: true }), { minLength: 6, maxLength: 6 }),
});
const MONTHS = [0, 3, 6, 9, 12, 18];
const readings = ({ start, fall, off }: { start: number; fall: number; off: number[] }): number[] =>
  MONTHS.map((month, at) => start - fall * month + (off[at] ?? 0));

describe('shelf life from readings', () => {
  it('without scatter is where the line itself crosses', () => {
    fc.assert(
      fc.property(study, ({ start, fall }) => {
        const exact = readings({ start, fall, off: [] });
        const wanted = (start - 80) / fall;
        expect(crossing(MONTHS, exact, 80).value).toBeCloseTo(wanted, 6);
        expect(shelfLife(MONTHS, exact, 80, 0.95, 'decreasing').value).toBeCloseTo(wanted, 4);
      }),
    );
  });

  it('is shorter for more confidence and a tighter limit, and never beyond the crossing', () => {
    fc.assert(
      fc.property(study, (one) => {
        const values = readings(one);
        const at = (limit: number, confidence: number): number =>
          shelfLife(MONTHS, values, limit, confidence, 'decreasing').value;
        const all = at(80, 0.95) * (1 + 1e-9);
        expect(at(80, 0.99)).toBeLessThanOrEqual(all);
        expect(at(85, 0.95)).toBeLessThan(all);
        expect(all).toBeLessThanOrEqual(crossing(MONTHS, values, 80).value * (1 + 2e-9));
        // A coin's toss is the line itself.
        expect(at(80, 0.5)).toBeCloseTo(crossing(MONTHS, values, 80).value, 6);
      }),
    );
  });

  it('goes with the unit of the readings and of the time', () => {
    fc.assert(
      fc.property(study, (one) => {
        const values = readings(one);
        const months = shelfLife(MONTHS, values, 80, 0.95, 'decreasing').value;
        const tenfold = values.map((value) => value * 10);
        expect(shelfLife(MONTHS, tenfold, 800, 0.95, 'decreasing').value).toBeCloseTo(months, 6);
        const days = MONTHS.map((month) => month * 30);
        expect(shelfLife(days, values, 80, 0.95, 'decreasing').value).toBeCloseTo(months * 30, 4);
      }),
    );
  });

  const values = [100, 99, 98, 97.2, 96, 94];
  it.each([
    ['Limit', NO_NUMBERS, (x: number) => crossing(MONTHS, values, x)],
    ['Limit', NO_NUMBERS, (x: number) => shelfLife(MONTHS, values, x, 0.95, 'decreasing')],
    [
      'Confidence as a fraction',
      [...NO_NUMBERS, 0.4999, 0.9991, 95],
      (x: number) => shelfLife(MONTHS, values, 90, x, 'decreasing'),
    ],
    ['Long-term data', NOT_POSITIVE, (x: number) => extrapolation(x, ACCELERATED[0], true)],
  ] as const)('%s, out of bounds', (...field) => refusesEach(field));

  it('refuses readings too large to compute with, instead of a shelf life of nothing', () => {
    refusal(
      () => shelfLife([0, 1, 2], [1e200, -1e200, 1e199], 0, 0.95, 'decreasing'),
      /beyond what can be computed/,
    );
    refusal(() => crossing([0, 3, 6], [5, 5, 5], 4), /does not meet/);
  });
});

describe('how far beyond the data', () => {
  it('is never less than was measured nor more than a year beyond, and grows with both', () => {
    const months = fc.integer({ min: 1, max: 60 });
    fc.assert(
      fc.property(
        months,
        fc.constantFrom(...ACCELERATED),
        fc.boolean(),
        (measured, accelerated, analysed) => {
          const most = extrapolation(measured, accelerated, analysed).value;
          expect(most).toBeGreaterThanOrEqual(measured);
          expect(most).toBeLessThanOrEqual(Math.min(measured + 12, Math.max(2 * measured, measured + 3)));
          expect(extrapolation(measured + 1, accelerated, analysed).value).toBeGreaterThan(most);
          expect(extrapolation(measured, ACCELERATED[0], analysed).value).toBeGreaterThanOrEqual(
            accelerated === ACCELERATED[1] && !analysed ? most - 3 : most,
          );
        },
      ),
    );
  });
});
