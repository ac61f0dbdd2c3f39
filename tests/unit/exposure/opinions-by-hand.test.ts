import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  aggregateExposure,
  marginOfSafety,
  maxConcentrationForMargin,
  productExposure,
  systemicExposureDose,
  thresholdDose,
} from '@core/exposure/exposure';
import { basisOf, exposuresOf, type ExposureBasis } from '@core/exposure/in-formula';
import { CHILD_RATIOS, GUIDANCE } from '@core/exposure/tables';
import { contentsOf } from '@core/limits/contents';
import { PRODUCT_KINDS, type ProductKind } from '@core/products/product-kinds';
import { blankSubstance, type Substance } from '@core/substances/substance';
import { substanceIndex } from '@core/substances/substance-index';
import { make, nextId } from '../checks/build';
import { kept } from '../limits/law';

describe('an assessment as the committee works it', () => {
  // Opinion on parabens, SCCS/1348/10 (from memory): 17.4 g a day of all products, 0.19 %, 3.7 % absorbed, NOEL 2 mg/kg.
  const all = {
    use: { amountGramsPerDay: 17.4, bodyWeight: 60, retention: 1 },
    concentrationPercent: 0.19,
    absorptionPercent: 3.7,
  };
  const from = { pod: 2, oralBioavailabilityPercent: 100 };

  it('of butylparaben in all products: 0.0204 mg/kg a day, a margin of 98', () => {
    // 17400 × 0.0019 × 0.037 / 60 = 0.0203870
    expect(systemicExposureDose(all).value).toBeCloseTo(0.020387, 6);
    expect(marginOfSafety(from, all).value).toBeCloseTo(98.1, 1);
  });

  it('allows 0.186 % where 100 are asked, a little less than was proposed', () => {
    // 2 / 100 / (290 × 0.01 × 0.037) = 0.02 / 0.10730
    expect(maxConcentrationForMargin(from, all.use, 3.7, 100).value).toBeCloseTo(0.18639, 5);
  });

  it('shows each step with its numbers put in, and the source that it follows', () => {
    const { steps, sources, unit, value } = marginOfSafety({ pod: 100, oralBioavailabilityPercent: 50 }, all);
    expect(steps.map(({ shows }) => shows)).toEqual([
      '17.4 × 1000 × 1 / 60',
      '290 × 0.19 / 100 × 3.7 / 100',
      '100 × 50 / 100',
      '50 / 0.020387',
    ]);
    expect([steps.at(-1)?.result, unit]).toEqual([value, '']);
    expect(sources).toEqual([GUIDANCE]);
  });

  it('says in its working where the whole product is the bound', () => {
    const any = maxConcentrationForMargin({ pod: 1e5, oralBioavailabilityPercent: 100 }, all.use, 1, 100);
    expect(any.steps.at(-1)?.shows).toBe('min(100, 100000 / 100 / 0.029)');
    const some = maxConcentrationForMargin(from, all.use, 3.7, 100);
    expect(some.steps.at(-1)?.shows).not.toMatch(/min/);
  });

  it('what is not taken up when swallowed has no dose to start from: a margin of nothing', () => {
    expect(marginOfSafety({ pod: 500, oralBioavailabilityPercent: 0 }, all).value).toBe(0);
  });

  it('a threshold of 0.0025 µg/kg for what may damage genes is 0.15 µg a day for 60 kg, in µg', () => {
    // Kroes et al. 2004, from memory.
    expect(thresholdDose(0.0025, 60).value).toBeCloseTo(0.15, 12);
    expect(thresholdDose(0.0025, 60).unit).toBe('µg/day');
  });

  it('sums a shampoo and a lotion as they stay on: 10.46 × 0.01 + 7.82 = 7.9246', () => {
    const each = [productExposure(10.46, 0.01).value, productExposure(7.82, 1).value];
    expect(aggregateExposure(each).value).toBeCloseTo(7.9246, 9);
    expect(aggregateExposure([2, 3, 0]).steps[0]?.shows).toBe('2 + 3 + 0');
  });
});

describe('laws of the margin', () => {
  const figure = fc.double({ min: 0.1, max: 100, noNaN: true });

  it('is halved by a doubled strength, and doubled by a doubled point of departure', () => {
    fc.assert(
      fc.property(figure, figure, figure, (pod, percent, absorbed) => {
        const margin = (p: number, c: number): number =>
          marginOfSafety(
            { pod: p, oralBioavailabilityPercent: 100 },
            { use: { perKg: 24.14 }, concentrationPercent: c, absorptionPercent: absorbed },
          ).value;
        const one = margin(pod, percent / 2);
        expect(margin(pod, percent) / one).toBeCloseTo(0.5, 9);
        expect(margin(2 * pod, percent / 2) / one).toBeCloseTo(2, 9);
      }),
      { numRuns: 40 },
    );
  });

  it('per area is proportional to area and to times a day, and in µg: a thousandth', () => {
    fc.assert(
      fc.property(figure, figure, (area, times) => {
        const dose = (a: number, n: number): number =>
          systemicExposureDose({ absorbedPerArea: 1, area: a, applicationsPerDay: n, bodyWeight: 60 }).value;
        expect(dose(2 * area, times) / dose(area, times)).toBeCloseTo(2, 9);
        expect(dose(area, 2 * times) / dose(area, times)).toBeCloseTo(2, 9);
        expect(dose(area, times) * 60_000).toBeCloseTo(area * times, 6);
      }),
      { numRuns: 40 },
    );
  });
});

describe('what the tables say, against figures of another kind', () => {
  /** Skin of a body by its height and weight, m² per kg. Mosteller R.D., N. Engl. J. Med. 317, 1098 (1987), from memory. */
  const skinPerKg = (cm: number, kg: number): number => Math.sqrt((cm * kg) / 3600) / kg;

  // Heights and weights of the WHO growth standards, about the median (from memory); an adult of 165 cm and 60 kg.
  it.each([
    ['0 months', 50, 3.4],
    ['6 months', 66.5, 7.5],
    ['12 months', 75, 9.6],
    ['5 years', 109.5, 18.2],
    ['10 years', 138, 32],
  ] as const)('at %s a child has so much more skin for its weight', (age, cm, kg) => {
    const told = CHILD_RATIOS.find((one) => one.age === age)?.ratio ?? 0;
    expect(Math.abs(told - skinPerKg(cm, kg) / skinPerKg(165, 60))).toBeLessThan(0.1);
  });

  const left = PRODUCT_KINDS.flatMap((kind): [ProductKind, number][] => {
    const basis = basisOf({ kind });
    const [, grams, stays] = /: ([\d.]+) g per day, retention factor ([\d.]+)/.exec(basis?.says ?? '') ?? [];
    if (Number(stays) !== 1 || !basis?.area || !basis.timesADay) return [];
    return [[kind, (Number(grams) * 1000) / basis.area / basis.timesADay]];
  });

  it.each(left)('a layer of %s is one that skin bears, 0.1 to 10 mg/cm²', (_kind, layer) => {
    expect(layer).toBeGreaterThan(0.1);
    expect(layer).toBeLessThan(10);
  });

  it('what is rinsed off stays to a tenth at most, and leaves less per kg than what stays on', () => {
    for (const kind of ['shampoo', 'shower gel', 'hair conditioner', 'hand wash'] as const) {
      const use = basisOf({ kind })?.use;
      const lotion = basisOf({ kind: 'body lotion' })?.use;
      expect(
        use && lotion && 'perKg' in use && 'perKg' in lotion && use.perKg < lotion.perKg / 10,
        kind,
      ).toBe(true);
    }
  });
});

describe('exposure to a formula', () => {
  const substance = (name: string, parts: Partial<Substance> = {}): Substance => ({
    ...kept(blankSubstance(name)),
    ...parts,
  });
  const lotion: ExposureBasis = {
    use: { amountGramsPerDay: 7.82, bodyWeight: 60, retention: 1 },
    bodyWeight: 60,
    area: null,
    timesADay: null,
    says: 'body lotion',
  };
  const table = [substance('Phenoxyethanol', { pod: 369, dermalAbsorption: 100, oralBioavailability: 100 })];
  const of = (ppms: number[]) =>
    exposuresOf(
      contentsOf(
        ppms.map((ppm) => ({ lineId: nextId(), material: make('P', 'Phenoxyethanol'), ppm })),
        substanceIndex(table),
      ),
      lotion,
    );

  it('worked by hand: 1 % of 7.82 g on 60 kg is 1.3033 mg/kg, and 369 is 283 times that', () => {
    const [one] = of([10_000]);
    expect(one?.dose.value).toBeCloseTo(1.30333, 5);
    expect(one?.margin?.value).toBeCloseTo(283.12, 2);
    // Not bought as a preservative here, so other products do not count, and nothing had to be assumed.
    expect([one?.aggregate, one?.cautions]).toEqual([null, []]);
  });

  it('does not hang on how many lines bring it', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 1, max: 5_000 }), { minLength: 1, maxLength: 6 }), (ppms) => {
        const [split] = of(ppms);
        const [whole] = of([ppms.reduce((sum, ppm) => sum + ppm, 0)]);
        expect(split?.dose.value).toBeCloseTo(whole?.dose.value ?? 0, 12);
        expect(of(ppms)).toHaveLength(1);
      }),
      { numRuns: 30 },
    );
  });
});
