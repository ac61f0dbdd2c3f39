import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  aggregateExposure,
  marginOfSafety,
  maxConcentrationForMargin,
  productExposure,
  systemicExposureDose,
  thresholdDose,
  type Dose,
  type Use,
} from '@core/exposure/exposure';
import { NEGATIVE, NO_NUMBERS, NOT_POSITIVE, refusesEach } from '../working/bounds';
import { refusal } from '../working/refusal';

const cream: Use = { amountGramsPerDay: 1.54, bodyWeight: 60, retention: 1 };
const dose = (
  parts: Partial<{ use: Use; concentrationPercent: number; absorptionPercent: number }>,
): Dose => ({
  use: cream,
  concentrationPercent: 0.5,
  absorptionPercent: 40,
  ...parts,
});
const perArea = (parts: Partial<Extract<Dose, { area: number }>>): Dose => ({
  absorbedPerArea: 0.8,
  area: 565,
  applicationsPerDay: 2.14,
  bodyWeight: 60,
  ...parts,
});
const point = { pod: 100, oralBioavailabilityPercent: 50 };

describe('exposure, worked by hand', () => {
  it('by the share absorbed: 1.54 g × 1000 / 60 kg = 25.6667; × 0.5 % × 40 % = 0.0513333', () => {
    const sed = systemicExposureDose(dose({}));
    expect(sed.steps.map(({ result }) => Number(result.toFixed(7)))).toEqual([25.6666667, 0.0513333]);
    expect(sed.unit).toBe('mg/kg bw/day');
  });

  it('by what is absorbed per area: 0.8 × 565 × 2.14 × 0.001 / 60 = 0.0161213', () => {
    expect(systemicExposureDose(perArea({})).value).toBeCloseTo(0.0161213, 7);
  });

  it('margin: 100 × 50 % / 0.0513333 = 974.026, and the strength that leaves 100 of it is 4.87013 %', () => {
    expect(marginOfSafety(point, dose({})).value).toBeCloseTo(974.026, 3);
    // 50 / 100 / (25.6667 × 1 % × 40 %) = 0.5 / 0.102667
    expect(maxConcentrationForMargin(point, cream, 40, 100).value).toBeCloseTo(4.87013, 5);
  });

  it('never gives a strength above the whole product, and says so where any would do', () => {
    const most = maxConcentrationForMargin({ pod: 1e6, oralBioavailabilityPercent: 100 }, cream, 1, 100);
    expect(most.value).toBe(100);
    expect(most.cautions.join()).toMatch(/whole product/);
    expect(maxConcentrationForMargin(point, cream, 40, 100).cautions).toEqual([]);
  });

  it('threshold: 1.5 µg/kg of 60 kg is 90 µg a day (the TTC of Cramer class III)', () => {
    expect(thresholdDose(1.5, 60).value).toBeCloseTo(90, 12);
  });
});

const share = fc.double({ min: 0.01, max: 100, noNaN: true });
const weight = fc.double({ min: 3, max: 150, noNaN: true });
const grams = fc.double({ min: 0.005, max: 100, noNaN: true });

describe('laws of exposure', () => {
  it('is proportional to amount, strength and absorption, and falls with body weight', () => {
    fc.assert(
      fc.property(grams, weight, share, share, (amount, kg, percent, absorbed) => {
        const at = (g: number, bodyWeight: number, c: number, a: number): number =>
          systemicExposureDose({
            use: { amountGramsPerDay: g, bodyWeight, retention: 0.5 },
            concentrationPercent: c,
            absorptionPercent: a,
          }).value;
        const one = at(amount, kg, percent / 2, absorbed / 2);
        for (const twice of [
          at(2 * amount, kg, percent / 2, absorbed / 2),
          at(amount, kg / 2, percent / 2, absorbed / 2),
          at(amount, kg, percent, absorbed / 2),
          at(amount, kg, percent / 2, absorbed),
        ])
          expect(twice / one).toBeCloseTo(2, 9);
      }),
    );
  });

  it('of a printed mg/kg is that of the amount and weight it stands for', () => {
    fc.assert(
      fc.property(grams, weight, share, (amountGramsPerDay, bodyWeight, percent) => {
        const perKg = (amountGramsPerDay * 1000) / bodyWeight;
        const printed = systemicExposureDose(dose({ use: { perKg }, concentrationPercent: percent }));
        const computed = systemicExposureDose(
          dose({ use: { amountGramsPerDay, bodyWeight, retention: 1 }, concentrationPercent: percent }),
        );
        expect(printed.value / computed.value).toBeCloseTo(1, 9);
      }),
    );
  });

  it('at the largest strength the margin is what was asked, unless the whole product stays below it', () => {
    fc.assert(
      fc.property(share, grams, weight, fc.integer({ min: 1, max: 10_000 }), (pod, amount, kg, margin) => {
        const use = { amountGramsPerDay: amount, bodyWeight: kg, retention: 1 };
        const from = { pod, oralBioavailabilityPercent: 100 };
        const most = maxConcentrationForMargin(from, use, 50, margin).value;
        const left = marginOfSafety(from, { use, concentrationPercent: most, absorptionPercent: 50 }).value;
        if (most < 100) expect(left / margin).toBeCloseTo(1, 9);
        else expect(left).toBeGreaterThanOrEqual(margin * (1 - 1e-9));
      }),
    );
  });

  it('summed over products does not hang on their order, and is that of one product twice as much used', () => {
    fc.assert(
      fc.property(fc.array(grams, { minLength: 1, maxLength: 8 }), (each) => {
        const whole = aggregateExposure(each.map((g) => productExposure(g, 0.1).value)).value;
        expect(
          aggregateExposure([...each].reverse().map((g) => productExposure(g, 0.1).value)).value,
        ).toBeCloseTo(whole, 9);
        expect(
          productExposure(
            each.reduce((sum, g) => sum + g, 0),
            0.1,
          ).value,
        ).toBeCloseTo(whole, 9);
      }),
    );
  });
});

describe('what exposure refuses', () => {
  const outOfShare = [...NO_NUMBERS, -1e-9, 1.000001, 50];
  const outOfPercent = [...NO_NUMBERS, -1e-9, 100.0001];
  const use = (parts: Partial<Extract<Use, { bodyWeight: number }>>): Use => ({ ...cream, ...parts });
  it.each([
    ['The amount', NEGATIVE, (x: number) => productExposure(x, 1)],
    ['The retention', outOfShare, (x: number) => productExposure(1, x)],
    [
      'The amount',
      NEGATIVE,
      (x: number) => systemicExposureDose(dose({ use: use({ amountGramsPerDay: x }) })),
    ],
    [
      'The body weight',
      NOT_POSITIVE,
      (x: number) => systemicExposureDose(dose({ use: use({ bodyWeight: x }) })),
    ],
    ['The retention', outOfShare, (x: number) => systemicExposureDose(dose({ use: use({ retention: x }) }))],
    ['The exposure', NEGATIVE, (x: number) => systemicExposureDose(dose({ use: { perKg: x } }))],
    [
      'The concentration',
      outOfPercent,
      (x: number) => systemicExposureDose(dose({ concentrationPercent: x })),
    ],
    ['The absorption', outOfPercent, (x: number) => systemicExposureDose(dose({ absorptionPercent: x }))],
    ['The amount absorbed', NEGATIVE, (x: number) => systemicExposureDose(perArea({ absorbedPerArea: x }))],
    ['The area', NOT_POSITIVE, (x: number) => systemicExposureDose(perArea({ area: x }))],
    [
      'Applications a day',
      NOT_POSITIVE,
      (x: number) => systemicExposureDose(perArea({ applicationsPerDay: x })),
    ],
    ['The body weight', NOT_POSITIVE, (x: number) => systemicExposureDose(perArea({ bodyWeight: x }))],
    ['The point of departure', NOT_POSITIVE, (x: number) => marginOfSafety({ ...point, pod: x }, dose({}))],
    [
      'The oral bioavailability',
      outOfPercent,
      (x: number) => marginOfSafety({ ...point, oralBioavailabilityPercent: x }, dose({})),
    ],
    ['The margin', NOT_POSITIVE, (x: number) => maxConcentrationForMargin(point, cream, 40, x)],
    ['The threshold', NOT_POSITIVE, (x: number) => thresholdDose(x, 60)],
    ['The body weight', NOT_POSITIVE, (x: number) => thresholdDose(1.5, x)],
    ['An exposure', NEGATIVE, (x: number) => aggregateExposure([1, x])],
  ] as const)('%s, out of bounds', (...field) => refusesEach(field));

  it('a margin over nothing absorbed, and an aggregate of no product', () => {
    refusal(() => marginOfSafety(point, dose({ absorptionPercent: 0 })), /systemic exposure dose is 0/);
    refusal(() => marginOfSafety(point, dose({ concentrationPercent: 0 })), /systemic exposure dose is 0/);
    refusal(() => maxConcentrationForMargin(point, cream, 0, 100), /dose at 1 % is 0/);
    refusal(() => marginOfSafety({ ...point, pod: 1e308 }, dose({ absorptionPercent: 1e-300 })), /beyond/);
    refusal(() => aggregateExposure([]), /no product/i);
  });
});
