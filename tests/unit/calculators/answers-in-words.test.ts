import { calculationRequest } from '@core/calculators/calculation-request';
import { FORM_KEYS } from '@core/calculators/all-forms';
import { calculateForm, formOf, formRequest } from '@core/calculators/form-calculation';
import type { FormRow } from '@core/calculators/form';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { calculated } from './worked-figure';

const organism = (name: string, type: string, logs: FormRow): FormRow => ({ organism: name, type, ...logs });
const verdict = (...asked: Parameters<typeof calculated>) => calculated(...asked).verdicts?.[0];

describe('a challenge test in words', () => {
  const judged = (standard: string, ...rows: FormRow[]) =>
    verdict({ form: 'challenge-test', values: { standard }, rows });

  it('by ISO 11930 tells which organism misses what, on which day, and that it grew again', () => {
    const found = judged(
      'ISO 11930',
      organism('P. aeruginosa', 'bacterium', { day7: 3, day14: 3, day28: 2.4 }),
    );
    expect(found).toMatchObject({ verdict: 'none', good: false });
    expect(found?.why).toEqual([
      'P. aeruginosa: 2.4 log on day 28, at least 3 asked',
      'P. aeruginosa: it grew again between day 14 and day 28, from 3 to 2.4 log',
    ]);
  });

  it('that just meets criterion A is good, one that meets only B is told apart from it', () => {
    const a = judged('ISO 11930', organism('S. aureus', 'bacterium', { day7: 3, day14: 3, day28: 3 }));
    const b = judged('ISO 11930', organism('S. aureus', 'bacterium', { day7: 2.9, day14: 3, day28: 3 }));
    expect([a?.verdict, b?.verdict]).toEqual(['A', 'B']);
    expect(a?.good).toBe(true);
  });

  it('is as good as its worst organism', () => {
    const good = organism('S. aureus', 'bacterium', { day7: 5, day14: 5, day28: 5 });
    const bad = organism('E. coli', 'bacterium', { day7: 1, day14: 1, day28: 1 });
    expect(judged('ISO 11930', good, bad)?.verdict).toBe(judged('ISO 11930', bad)?.verdict);
    expect(judged('ISO 11930', good, bad)?.why.join()).not.toContain('S. aureus');
  });

  it('always says whose criteria they are and who decides', () => {
    const { notes } = calculated({
      ...{ form: 'challenge-test', values: { standard: 'USP 51' } },
      rows: [organism('E. coli', 'bacterium', { day14: 2, day28: 2 })],
    });
    expect(notes.join()).toMatch(/<51>.*qualified assessor decide/);
  });
});

describe('a count in words (ISO 17516, from memory)', () => {
  const count = (values: FormRow) =>
    verdict({ form: 'micro-limit', values: { group: 'other', specified: 'absent', ...values } });
  const EYE = 'under 3 years, eye area, mucous membranes';

  it.each([
    [{ count: 1000 }, true, /.*/],
    [{ count: 1500 }, true, /above the limit of 1000, and within twice of it.*Count again/],
    [{ count: 2001 }, false, /2001/],
    [{ group: EYE, count: 100 }, true, /.*/],
    [{ group: EYE, count: 150 }, true, /limit of 100/],
    [{ group: EYE, count: 201 }, false, /201/],
    [{ count: 1, specified: 'found' }, false, /.+/],
  ] as const)('%j: within %s', (values, good, says) => {
    const found = count(values);
    expect(found?.good).toBe(good);
    if (String(says) !== '/.*/') expect(found?.why.join()).toMatch(says);
  });
});

describe('what went in, as it is printed', () => {
  it('a choice by its words and not by its key, a unit beside each figure', () => {
    const { given } = calculated({
      form: 'buffer',
      values: { pKa: 4.76, acid: 0.02, salt: 0.03, activities: 'none' },
    });
    expect(given).toContainEqual({ label: 'Activities', value: 'left out (ideal)', unit: '' });
    expect(given).toContainEqual({ label: 'Acid', value: 0.02, unit: 'mol/L' });
  });

  it('a line by its number, its name and its figures, without those that are empty', () => {
    const { given } = calculated({
      form: 'formula-density',
      rows: [
        { name: 'Water', parts: 80, density: 1 },
        { parts: 20, density: 0.9 },
      ],
    });
    expect(given.map(({ label, value }) => [label, value])).toEqual([
      ['part 1', 'Water, parts 80, density 1 g/mL'],
      ['part 2', 'parts 20, density 0.9 g/mL'],
    ]);
  });

  it('a nought is a figure like any other', () => {
    const { given } = calculated({ form: 'glycerol-viscosity', values: { percent: 0, temperature: 20 } });
    expect(given.map(({ value }) => value)).toEqual([0, 20]);
  });
});

describe('words beside a figure', () => {
  const says = (key: string, ...asked: Parameters<typeof calculated>): string | undefined =>
    calculated(...asked).results.find((one) => one.key === key)?.says;

  it('a centrifuge stands for days of creaming, by distance alone', () => {
    expect(says('standing', { form: 'centrifuge', values: { radius: 8, rpm: 3000, minutes: 30 } })).toBe(
      'of standing, by creaming distance alone',
    );
  });

  it('T1 is for few packs and T2 for none', () => {
    const limits = { form: 'pack-limits', values: { nominal: 50, unit: 'mL' } } as const;
    expect([says('t1', limits), says('t2', limits)]).toEqual([
      'few packs may hold less',
      'no pack may hold less',
    ]);
  });

  it('a density lies between those of its parts, and says which they are', () => {
    const rows = [
      { parts: 1, density: 0.92 },
      { parts: 9, density: 1.26 },
    ];
    expect(says('density', { form: 'formula-density', rows })).toBe('the parts run from 0.92 to 1.26 g/mL');
  });

  it('a line through readings asks to look at the points', () => {
    const rows = [1, 2, 4].map((reading, month) => ({ month, reading }));
    expect(calculated({ form: 'trend-line', values: { line: 'free' }, rows }).notes.join()).toContain(
      'Look at the points',
    );
  });
});

describe('a request for a form', () => {
  it('takes two hundred lines and no more', () => {
    const asked = (count: number) =>
      formRequest.safeParse({
        of: 'form',
        form: 'trend-line',
        values: {},
        rows: Array.from({ length: count }, () => ({})),
      });
    expect(asked(200).success).toBe(true);
    expect(asked(201).error?.issues[0]?.message).toBe('Two hundred lines at most.');
  });

  it('of a form that is not there is refused, and one without lines has none', () => {
    expect(calculationRequest.safeParse({ of: 'form', form: 'horoscope', values: {} }).success).toBe(false);
    expect(formRequest.parse({ of: 'form', form: 'fill', values: {} }).rows).toEqual([]);
  });

  it('whose fields are empty is asked for by the name of one of its own fields, never answered', () => {
    fc.assert(
      fc.property(fc.constantFrom(...FORM_KEYS), (form) => {
        const { fields, lines } = formOf(form);
        const paths = new Set([...fields, ...(lines?.columns ?? [])].map(({ key }) => key));
        try {
          const blank = Object.fromEntries(
            fields.filter(({ choices }) => !choices).map(({ key }) => [key, null]),
          );
          calculateForm({ of: 'form', form, values: blank, rows: [] });
        } catch (cause) {
          const { fields: named = [] } = cause as { fields?: { path: string }[] };
          expect(named.length, form).toBeGreaterThan(0);
          for (const { path } of named)
            expect(path === 'rows' || paths.has(path.split('.').at(-1)!), path).toBe(true);
          return;
        }
        throw new Error(`${form} answered without any figure.`);
      }),
      { numRuns: 60 },
    );
  });
});
