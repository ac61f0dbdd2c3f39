import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { arrheniusEnergy, arrheniusRate } from '@core/stability/arrhenius';
import { ACCELERATED, extrapolation } from '@core/stability/extrapolation';
import { crossing, shelfLife } from '@core/stability/trend';
import { refusal } from '../working/refusal';

const KCAL = 4.184;
const rates = (...points: [temperature: number, rate: number][]) =>
  points.map(([temperature, rate]) => ({ temperature, rate }));

describe('how much faster ten degrees make it', () => {
  // Connors, Amidon and Stella (from memory): a Q10 of 2, 3, 4 about room temperature is 12.2, 19.4, 24.5 kcal/mol.
  it.each([
    [2, 12.2],
    [3, 19.4],
    [4, 24.5],
  ])('a Q10 of %d from 20 to 30 °C is %d kcal/mol', (q10, kcal) => {
    expect(arrheniusEnergy(rates([20, 1], [30, q10])).value / KCAL).toBeCloseTo(kcal, 1);
  });

  it('at 20 kcal/mol a month at 40 °C does what five do at 25 °C', () => {
    // 83.68 / 0.008314463 × (1/298.15 − 1/313.15) = 10064.4 × 1.60658e-4 = 1.61692; e to that is 5.038
    expect(arrheniusRate(1, 25, 40, 20 * KCAL).value).toBeCloseTo(5.038, 2);
  });

  it('in the cold it is slower: at 5 °C a twelfth of what it is at 25 °C', () => {
    // 10064.4 × (1/298.15 − 1/278.15) = 10064.4 × −2.41168e-4 = −2.42721; e to that is 0.08828
    expect(arrheniusRate(1, 25, 5, 20 * KCAL).value).toBeCloseTo(0.0883, 3);
  });

  it('what is slower when warm has a negative energy, shown as such', () => {
    const found = arrheniusEnergy(rates([25, 2], [35, 1]));
    expect(found.value).toBeCloseTo(-52.948, 2);
    expect(found.steps[1]?.shows).not.toMatch(/× −/);
  });

  it('of three rates that scatter goes by least squares, not by the ends', () => {
    // 1/T 0.00329870, 0.00319336, 0.00309454; ln 0, 0.69315, 1.60944: slope −1.64049e-4 / 2.08477e-8 = −7869 K
    const three = arrheniusEnergy(rates([30, 1], [40, 2], [50, 5]));
    expect(three.steps[0]?.result).toBeCloseTo(-7869, -1);
    expect(three.value).toBeCloseTo(65.4, 1);
    expect(three.value).not.toBeCloseTo(arrheniusEnergy(rates([30, 1], [50, 5])).value, 1);
    expect(three.steps[0]?.says).toMatch(/3 points/);
  });

  it('is in kelvin, and warns that an emulsion follows no such law', () => {
    const { steps, cautions, unit } = arrheniusRate(2, 25, 40, 50);
    expect(steps[0]?.shows).toContain('1/298.15 − 1/313.15');
    expect(cautions.join()).toMatch(/Emulsions also melt, cream and invert/);
    // In whatever unit the known rate was given.
    expect(unit).toBe('');
  });

  it('of two steps is that of both at once', () => {
    const celsius = fc.integer({ min: -10, max: 80 });
    fc.assert(
      fc.property(celsius, celsius, celsius, fc.integer({ min: 0, max: 150 }), (a, b, c, energy) => {
        const half = arrheniusRate(1, a, b, energy).value;
        const there = arrheniusRate(half, b, c, energy).value;
        expect(there / arrheniusRate(1, a, c, energy).value).toBeCloseTo(1, 9);
      }),
      { numRuns: 50 },
    );
  });
});

describe('a trend worked by hand', () => {
  // Mean time 6, Σ(t − 6)² 90; Σ(t − 6) y −44.7: slope −0.496667; mean 97.04: start 100.02.
  const months = [0, 3, 6, 9, 12];
  const assay = [100, 98.5, 97.2, 95.4, 94.1];

  it('has its slope, its start, and meets 90 at 20.17 months', () => {
    const { steps, value, unit } = crossing(months, assay, 90);
    expect(steps[0]?.result).toBeCloseTo(-0.496667, 6);
    expect(steps[1]?.result).toBeCloseTo(100.02, 9);
    // 10.02 / 0.496667
    expect(value).toBeCloseTo(20.1745, 3);
    expect(unit).toBe('months');
  });

  it('has its spread, Student’s t, and a shelf life of 19.27 months', () => {
    const { steps, value } = shelfLife(months, assay, 90, 0.95, 'decreasing');
    // Residuals −0.02, −0.03, 0.16, −0.15, 0.04: squares 0.051, over 3.
    expect(steps[2]?.result).toBeCloseTo(Math.sqrt(0.017), 9);
    // t tables, one-sided 95 %, 3 degrees of freedom: 2.353.
    expect(steps[3]?.result).toBeCloseTo(2.353, 3);
    expect(value).toBeCloseTo(19.27, 2);
  });

  it('at the shelf life the confidence limit stands at the limit, put in by hand', () => {
    const time = shelfLife(months, assay, 90, 0.95, 'decreasing').value;
    const mean = 100.02 - 0.4966667 * time;
    const band = 2.353363 * Math.sqrt(0.017) * Math.sqrt(1 / 5 + (time - 6) ** 2 / 90);
    expect(mean - band).toBeCloseTo(90, 4);
  });

  it('moves with the limit by what the slope gives, on the line itself', () => {
    fc.assert(
      fc.property(fc.integer({ min: 60, max: 95 }), (limit) => {
        const later = crossing(months, assay, limit - 1).value - crossing(months, assay, limit).value;
        expect(later).toBeCloseTo(1 / 0.4966667, 5);
      }),
      { numRuns: 30 },
    );
  });

  it('of a pH that may drift either way goes to the side on which its limit lies', () => {
    const drift = [5.5, 5.45, 5.42, 5.36, 5.3];
    const down = shelfLife(months, drift, 5, 0.95, 'either').value;
    const up = shelfLife(
      months,
      drift.map((ph) => 11 - ph),
      6,
      0.95,
      'either',
    ).value;
    expect(up).toBeCloseTo(down, 6);
    // (5.504 − 5) / 0.016333: the line itself.
    expect(down).toBeLessThan(30.9);
  });

  it('says of itself that it proves no shelf life, and that one batch speaks for one', () => {
    const said = shelfLife(months, assay, 90, 0.95, 'decreasing').cautions.join(' ');
    expect(said).toMatch(/proves no shelf life/);
    expect(said).toMatch(/the worst of several decides/);
  });

  it.each([
    ['two readings', [0, 3], [100, 99], /line through 2 points has no spread/],
    ['one reading', [0], [100], /line through 1 point has no spread/],
    ['none', [], [], /line through 0 points has no spread/],
    ['a time without its reading', [0, 3, 6, 9], [100, 99, 98], /has no spread/],
    ['all on one day', [3, 3, 3], [100, 99, 98], /All readings are at one time/],
    ['a reading that is no number', [0, 3, 6], [100, Number.NaN, 98], /A reading is not a number/],
  ])('refuses %s', (_what, times, values, says) => {
    refusal(() => shelfLife(times, values, 90, 0.95, 'decreasing'), says);
    refusal(() => crossing(times, values, 90), says);
  });

  it('refuses a limit already passed, and one that the readings move away from', () => {
    refusal(() => shelfLife(months, assay, 100.5, 0.95, 'decreasing'), /beyond the limit from the start/);
    refusal(() => shelfLife(months, assay, 110, 0.95, 'increasing'), /does not meet this limit/);
    refusal(() => crossing(months, assay, 101), /does not meet this limit later on/);
  });
});

// ICH Q1E, 2.4.1 and 2.4.2 (from memory).
describe('how far beyond the data', () => {
  it.each([
    [3, ACCELERATED[0], true, 6, '2 times what was measured, and 12 months beyond it at most'],
    [3, ACCELERATED[0], false, 4.5, '1.5 times what was measured, and 6 months beyond it at most'],
    [12, ACCELERATED[0], true, 24, '2 times what was measured, and 12 months beyond it at most'],
    [18, ACCELERATED[0], true, 30, '2 times what was measured, and 12 months beyond it at most'],
    [12, ACCELERATED[1], true, 18, '1.5 times what was measured, and 6 months beyond it at most'],
    [18, ACCELERATED[1], true, 24, '1.5 times what was measured, and 6 months beyond it at most'],
    [12, ACCELERATED[1], false, 15, '3 months beyond what was measured at most'],
    [12, ACCELERATED[2], true, 12, 'no longer than was measured'],
    [12, ACCELERATED[2], false, 12, 'no longer than was measured'],
  ] as const)(
    '%d months, %s, analysed %s: %d, as its working says',
    (measured, test, analysed, most, says) => {
      const { value, unit, steps, cautions } = extrapolation(measured, test, analysed);
      expect([value, unit]).toEqual([most, 'months']);
      expect(steps.map((step) => step.says)).toEqual([says]);
      expect(cautions.join()).toMatch(/Written for medicines/);
    },
  );
});
