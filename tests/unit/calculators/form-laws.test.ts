import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { FORM_KEYS, type FormKey } from '@core/calculators/all-forms';
import type { FormField, FormRow } from '@core/calculators/form';
import { calculateForm, formOf } from '@core/calculators/form-calculation';
import { Problem } from '@core/problems/problem';
import { FORM_EXAMPLES } from './form-examples';

/** What a form gives, by the key of each figure and verdict. */
function given(form: FormKey, values: FormRow = {}, rows: FormRow[] = []): Record<string, number | string> {
  const { results, verdicts = [] } = calculateForm({ of: 'form', form, values, rows });
  return Object.fromEntries([
    ...results.map(({ key, worked }) => [key, worked.value] as const),
    ...verdicts.map(({ key, verdict }) => [key, verdict] as const),
  ]);
}
const number = (form: FormKey, key: string, values: FormRow, rows: FormRow[] = []): number =>
  Number(given(form, values, rows)[key]);

/** Two answers are one: figures to their twelfth digit. */
function expectSame(one: Record<string, number | string>, other: Record<string, number | string>): void {
  expect(Object.keys(one).sort()).toEqual(Object.keys(other).sort());
  for (const [key, value] of Object.entries(one)) {
    const against = other[key];
    if (typeof value === 'string' || typeof against === 'string') expect(against, key).toBe(value);
    else
      expect(Math.abs(value - (against ?? NaN)), key).toBeLessThanOrEqual(
        1e-9 * Math.max(1, Math.abs(value)),
      );
  }
}

const WITH_LINES = FORM_KEYS.filter((key) => formOf(key).lines);
/** Packs are drawn in an order that counts: the first sample, and then the second. */
const IN_ORDER: readonly FormKey[] = ['pack-check'];

describe('lines of a form', () => {
  it.each(WITH_LINES.filter((key) => !IN_ORDER.includes(key)))(
    '“%s” does not hang on their order',
    (form) => {
      const { values = {}, rows = [] } = FORM_EXAMPLES[form];
      const whole = given(form, values, rows);
      fc.assert(
        fc.property(fc.shuffledSubarray(rows, { minLength: rows.length }), (turned) =>
          expectSame(whole, given(form, values, turned)),
        ),
        { numRuns: 5 },
      );
    },
  );

  const parted = WITH_LINES.filter((key) => formOf(key).lines?.columns.some((one) => one.key === 'parts'));
  it.each(parted)('“%s” takes parts of any size, and one part in two', (form) => {
    const { values = {}, rows = [] } = FORM_EXAMPLES[form];
    const whole = given(form, values, rows);
    const scale = fc.double({ min: 0.001, max: 1000, noNaN: true });
    fc.assert(
      fc.property(scale, fc.nat(rows.length - 1), (by, at) => {
        const times = (row: FormRow, factor: number): FormRow => ({
          ...row,
          parts: Number(row.parts) * factor,
        });
        expectSame(
          whole,
          given(
            form,
            values,
            rows.map((row) => times(row, by)),
          ),
        );
        const split = rows.flatMap((row, index) =>
          index === at ? [times(row, 0.25), times(row, 0.75)] : [row],
        );
        expectSame(whole, given(form, values, split));
      }),
      { numRuns: 10 },
    );
  });

  it.each(parted)('“%s” of one thing alone, or of equal ones, is that thing', (form) => {
    const { values = {}, rows = [] } = FORM_EXAMPLES[form];
    const [first = {}] = rows;
    expectSame(given(form, values, [first]), given(form, values, [first, { ...first, parts: 7 }]));
  });
});

/** Beyond what a form says a field may hold. */
const beyond = ({ min, max }: FormField): number[] => [
  ...(min === undefined ? [] : [min - Math.max(1e-3, Math.abs(min) * 1e-3)]),
  ...(max === undefined ? [] : [max + Math.max(1e-3, Math.abs(max) * 1e-3)]),
];
const bounded = FORM_KEYS.flatMap((form) => {
  const { fields, lines } = formOf(form);
  return [
    ...fields.map((field) => ({ form, field, ofLine: false })),
    ...(lines?.columns ?? []).map((field) => ({ form, field, ofLine: true })),
  ].filter(({ field }) => !field.words && !field.choices && beyond(field).length > 0);
});

describe('the bounds of a form', () => {
  it.each(bounded.map((one) => [one.form, one.field.label, one] as const))(
    '“%s”: %s beyond them is refused, whoever asks',
    (form, label, { field, ofLine }) => {
      const { values = {}, rows = [] } = FORM_EXAMPLES[form];
      for (const value of beyond(field)) {
        const by: FormRow = field.key === 'molality' ? { known: 'molality' } : {};
        const put = (row: FormRow): FormRow => ({ ...row, ...by, [field.key]: value });
        const attempt = () =>
          ofLine
            ? given(
                form,
                values,
                rows.map((row, at) => (at === 0 ? put(row) : row)),
              )
            : given(form, put(values), rows);
        let refused: unknown = null;
        try {
          attempt();
        } catch (problem) {
          refused = problem;
        }
        expect(refused, `${label} of ${value}`).toBeInstanceOf(Problem);
        expect((refused as Problem).message).toContain(label);
      }
    },
  );
});

const from = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });

describe('forms that undo each other', () => {
  it('density, volume and mass', () => {
    fc.assert(
      fc.property(from(0.1, 5), from(1, 5000), (density, volume) => {
        const mass = number('fill', 'mass', { volume, density });
        expect(number('density-of-volume', 'density', { mass, volume })).toBeCloseTo(density, 9);
        expect(number('volume-of-mass', 'volume', { mass, density })).toBeCloseTo(volume, 6);
      }),
    );
  });

  it('thinning twice is thinning once, and what is dissolved stays', () => {
    fc.assert(
      fc.property(from(10, 90), from(1, 1000), from(1.1, 5), from(1.1, 5), (now, volume, first, second) => {
        const half = number('dilution', 'volume', { now, volume, wanted: now / first });
        const whole = number('dilution', 'volume', {
          now: now / first,
          volume: half,
          wanted: now / first / second,
        });
        expect(whole).toBeCloseTo(
          number('dilution', 'volume', { now, volume, wanted: now / first / second }),
          6,
        );
        expect((whole * now) / first / second).toBeCloseTo(now * volume, 4);
      }),
    );
  });

  it('a buffer made by its ratio has the pH that was asked, by the buffer equation', () => {
    fc.assert(
      fc.property(from(3, 10), from(-1.5, 1.5), from(0.01, 1), (pKa, off, total) => {
        const ratio = number('buffer-ratio', 'ratio', { pKa, pH: pKa + off });
        const acid = total / (1 + ratio);
        const made = given('buffer', { pKa, acid, salt: total - acid, activities: 'none' });
        expect(made.pH).toBeCloseTo(pKa + off, 9);
        // The capacity is greatest where pH is pKa: 2.303 × total / 4 (Van Slyke 1922).
        expect(Number(made.capacity)).toBeLessThanOrEqual((Math.LN10 * total) / 4 + 1e-9);
      }),
    );
  });

  it('a time of accelerated ageing stands for the shelf life it was reckoned from', () => {
    fc.assert(
      fc.property(from(15, 30), from(1, 40), from(1.5, 4), from(1, 500), (real, warmer, q10, weeks) => {
        const test = number('accelerated', 'weeks', { real, test: real + warmer, q10, weeks });
        expect(test).toBeLessThan(weeks);
        const back = number('shelf-life', 'weeks', { known: real + warmer, weeks: test, other: real, q10 });
        expect(back / weeks).toBeCloseTo(1, 9);
      }),
    );
  });

  it('a reduction in logs and in per cent', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e8 }), from(0, 7), (initial, log) => {
        const final = initial / 10 ** log;
        const counted = given('log-reduction', { initial, final });
        expect(counted.log).toBeCloseTo(log, 9);
        expect(counted.percent).toBeCloseTo(number('log-to-percent', 'percent', { log }), 9);
        expect(counted.percent).toBeCloseTo(100 * (1 - final / initial), 9);
      }),
    );
  });

  it('an energy of activation gives back the rates that it was found by', () => {
    fc.assert(
      fc.property(from(0.001, 1), from(10, 40), from(5, 40), from(40, 120), (rate, t1, step, energy) => {
        const other = number('arrhenius-rate', 'rate', { rate, t1, t2: t1 + step, energy });
        expect(other).toBeGreaterThan(rate);
        const rows = [
          { temperature: t1, rate },
          { temperature: t1 + step, rate: other },
        ];
        expect(number('arrhenius-energy', 'energy', {}, rows)).toBeCloseTo(energy, 6);
      }),
    );
  });

  it('a distance is none from itself, the same both ways, and never longer by way of a third', () => {
    const point = fc.record({ d: from(10, 22), p: from(0, 20), h: from(0, 40) });
    type Point = { d: number; p: number; h: number };
    const apart = (a: Point, b: Point): number =>
      number('hansen-distance', 'distance', { d1: a.d, p1: a.p, h1: a.h, d2: b.d, p2: b.p, h2: b.h });
    fc.assert(
      fc.property(point, point, point, (a, b, c) => {
        expect(apart(a, a)).toBe(0);
        expect(apart(a, b)).toBeCloseTo(apart(b, a), 9);
        expect(apart(a, c)).toBeLessThanOrEqual(apart(a, b) + apart(b, c) + 1e-9);
      }),
      { numRuns: 60 },
    );
  });

  it('a mixture of liquids lies between them, and the nearer the more there is of one', () => {
    const rows = (parts: number): FormRow[] => [
      { parts, d: 16, p: 4, h: 2 },
      { parts: 100 - parts, d: 20, p: 8, h: 6 },
    ];
    fc.assert(
      fc.property(from(0, 100), (parts) => {
        const found = given('hansen-blend', {}, rows(parts));
        expect(found.d).toBeCloseTo(20 - parts / 25, 9);
        expect(found.p).toBeCloseTo(8 - parts / 25, 9);
        expect(found.h).toBeCloseTo(6 - parts / 25, 9);
      }),
    );
  });
});

describe('forms that only go one way', () => {
  const rises = (form: FormKey, key: string, at: (x: number) => FormRow, low: number, high: number): void =>
    fc.assert(
      fc.property(from(low, high), from(low, high), (a, b) => {
        fc.pre(Math.abs(a - b) > 1e-6 * (high - low));
        expect(number(form, key, at(Math.max(a, b)))).toBeGreaterThan(number(form, key, at(Math.min(a, b))));
      }),
      { numRuns: 40 },
    );

  it('more glycerin is thicker, and a warmer one thinner', () => {
    rises('glycerol-viscosity', 'viscosity', (percent) => ({ percent, temperature: 25 }), 0, 100);
    rises('glycerol-viscosity', 'viscosity', (cold) => ({ percent: 60, temperature: 100 - cold }), 0, 100);
  });

  it('more of a polyol leaves less water free', () => {
    rises(
      'water-activity',
      'activity',
      (less) => ({ percent: 80 - less, molarMass: 92.094, k: 1.16 }),
      0,
      79,
    );
  });

  it('a fuller suspension is thicker, up to its highest filling', () => {
    rises('suspension', 'viscosity', (phi) => ({ phi, phiMax: 0.64, intrinsic: 2.5, medium: 3 }), 0, 0.63);
  });

  it('a larger pack may lack more, in grams, and less of its contents', () => {
    fc.assert(
      fc.property(fc.integer({ min: 5, max: 9_990 }), fc.integer({ min: 1, max: 5_000 }), (nominal, more) => {
        const tne = (of: number): number => number('pack-limits', 'tne', { nominal: of, unit: 'g' });
        expect(tne(nominal + more)).toBeGreaterThanOrEqual(tne(nominal) - 1e-9);
        // Rounded up to a tenth below 1,000.
        expect(tne(nominal + more) / (nominal + more)).toBeLessThanOrEqual(
          tne(nominal) / nominal + 1.1 / nominal,
        );
      }),
      { numRuns: 60 },
    );
  });

  it('salt brings the inversion down, and a higher HLB brings it up', () => {
    rises('salt-shift', 'shift', (less) => ({ salt: 20 - less }), 0, 20);
    rises('hlb-temperature', 'temperature', (nHlb) => ({ nHlb, nOil: 8.8 }), 9, 20);
  });

  it('cream rises faster the larger the droplets, by the square of their radius (Stokes)', () => {
    const at = (radius: number): FormRow => ({
      radius,
      dropletDensity: 0.9,
      mediumDensity: 1,
      viscosity: 50,
    });
    fc.assert(
      fc.property(from(0.1, 40), (radius) => {
        const [one, two] = [at(radius), at(2 * radius)].map((values) => number('creaming', 'speed', values));
        expect(Math.abs(two! / one!)).toBeCloseTo(4, 6);
      }),
    );
  });
});
