import fc from 'fast-check';
import { givens } from '@core/calculators/calculated';
import { calculateHld } from '@core/calculators/hld';
import {
  BLANK_HLD,
  BLANK_LINE,
  hldRequest,
  type HldRequest,
  type MixLine,
} from '@core/calculators/hld-request';
import { knownLine, oilMix, surfactantMix, type KnownLine } from '@core/calculators/mixes';
import type { Material } from '@core/materials/material';
import { describe, expect, it } from 'vitest';
import { figure, make, nextId, range } from '../checks/build';
import { refusal } from '../working/refusal';

const line = (
  name: string,
  parts: number,
  value: number | null,
  molarMass: number | null = 300,
): KnownLine => ({
  ...{ name, parts, value, molarMass },
  ...{ source: null, low: null, high: null },
});
const some = fc.array(
  fc.record({
    parts: fc.double({ min: 0.01, max: 50, noNaN: true }),
    value: fc.option(fc.double({ min: -10, max: 20, noNaN: true }), { freq: 4 }),
    molarMass: fc.double({ min: 100, max: 2000, noNaN: true }),
  }),
  { minLength: 1, maxLength: 6 },
);
const named = (rows: { parts: number; value: number | null; molarMass: number }[]) =>
  rows.map((row, at) => line(`line ${at}`, row.parts, row.value, row.molarMass));

describe('a mean over a mix', () => {
  it.each([
    ['EACN', oilMix],
    ['Cc', surfactantMix],
  ] as const)(
    'of %s lies between its parts, whatever the order and the unit of mass, over what is known',
    (_, mix) => {
      fc.assert(
        fc.property(some, (rows) => {
          fc.pre(rows.some(({ value }) => value !== null));
          const lines = named(rows);
          const found = mix(lines);
          const values = rows.flatMap(({ value }) => (value === null ? [] : [value]));
          expect(found.worked.value).toBeGreaterThanOrEqual(Math.min(...values) - 1e-9);
          expect(found.worked.value).toBeLessThanOrEqual(Math.max(...values) + 1e-9);
          expect(mix([...lines].reverse()).worked.value).toBeCloseTo(found.worked.value, 8);
          expect(mix(lines.map((one) => ({ ...one, parts: one.parts * 28.35 }))).worked.value).toBeCloseTo(
            found.worked.value,
            8,
          );
          const all = rows.reduce((sum, { parts }) => sum + parts, 0);
          const known = rows.reduce((sum, { parts, value }) => sum + (value === null ? 0 : parts), 0);
          expect(found.coveredPercent).toBeCloseTo((100 * known) / all, 8);
          expect(found.without).toHaveLength(rows.filter(({ value }) => value === null).length);
        }),
        { numRuns: 50 },
      );
    },
  );

  it('of EACN is by mass, of Cc by moles: the lighter surfactant counts more, by hand', () => {
    expect(oilMix([line('a', 3, 12), line('b', 1, 4)]).worked.value).toBeCloseTo(10, 12);
    // 3 / 200 against 1 / 400: six sevenths.
    const cc = surfactantMix([line('a', 3, 2, 200), line('b', 1, -5, 400)]);
    expect(cc.worked.value).toBeCloseTo((6 * 2 + 1 * -5) / 7, 12);
    expect(cc.worked.steps.at(1)?.result).toBeCloseTo(6 / 7, 12);
  });

  it('leaves a line of nothing out without a word, and one that is unknown with its name', () => {
    const found = oilMix([line('a', 1, 8), line('b', 0, null), line('c', 1, null)]);
    expect(found).toMatchObject({ without: ['c'], coveredPercent: 50 });
    expect(found.worked.value).toBe(8);
  });

  it('of one surfactant needs no molar mass, of two needs both', () => {
    expect(surfactantMix([line('a', 2, 1.2, null)]).worked.value).toBe(1.2);
    expect(surfactantMix([line('a', 2, 1.2, null), line('b', 0, 3, null)]).worked.value).toBe(1.2);
    refusal(() => surfactantMix([line('a', 2, 1.2), line('b', 1, 3, null)]), /molar mass of b is not known/);
  });

  it('refuses nothing, parts of nothing and nothing known, each in its own words', () => {
    refusal(() => oilMix([]), /There is no oil yet/);
    // An EACN is known: what lacks are parts.
    refusal(() => oilMix([line('Squalane', 0, 24)]), /no parts of any oil/);
    refusal(() => oilMix([line('Squalane', 1, null)]), /No oil here has an EACN: Squalane/);
    refusal(() => surfactantMix([line('SLES', 1, null)]), /No surfactant here has a Cc: SLES/);
  });

  it('says where the sources disagree, and only there', () => {
    const spread = (low: number | null, high: number | null) =>
      oilMix([{ ...line('IPM', 1, 10), low, high }]).worked.cautions;
    expect(spread(7, 13).at(-1)).toBe('IPM: sources give 7 to 13.');
    expect(spread(10, 10)).toEqual(spread(null, null));
  });
});

describe('a line of a mix', () => {
  const typed = (part: Partial<MixLine>): MixLine => ({ ...BLANK_LINE, name: 'Typed', value: 5, ...part });
  const squalane = {
    ...make('Squalane P', 'Squalane', { figures: { eacn: range(22, 26), molarMass: figure(422.8) } }),
  };
  const library = new Map<string, Material>([[squalane.id, squalane]]);
  const picked = (part: Partial<MixLine> = {}) =>
    knownLine({ ...BLANK_LINE, materialId: squalane.id, ...part }, 'eacn', library);

  it('typed is as it was typed, with its source said', () => {
    expect(knownLine(typed({ parts: 2, molarMass: 99 }), 'cc', library)).toEqual({
      ...{ name: 'Typed', parts: 2, value: 5, molarMass: 99, low: null, high: null },
      source: { text: 'Typed: entered by hand', basis: 'user' },
    });
    expect(knownLine(typed({ value: null }), 'cc', library).source).toBeNull();
    // As the empty field calls it.
    expect(knownLine(typed({ name: '' }), 'cc', library, 1).name).toBe('surfactant 2');
    expect(knownLine(typed({ name: '' }), 'eacn', library).name).toBe('oil 1');
  });

  it('picked takes the library’s figure, the middle of a range, and never what stands in its field', () => {
    expect(picked({ value: 99, molarMass: 1 })).toMatchObject({
      name: 'Squalane P',
      value: 24,
      low: 22,
      high: 26,
      molarMass: 422.8,
    });
    expect(knownLine({ ...BLANK_LINE, materialId: squalane.id }, 'cc', library)).toMatchObject({
      value: null,
      source: null,
    });
  });

  it('refuses parts that are not there or cannot be, and a material that is gone', () => {
    refusal(
      () => knownLine(typed({ parts: null }), 'eacn', library),
      /How much there is of Typed is not entered/,
    );
    for (const parts of [-1, Number.NaN, Number.POSITIVE_INFINITY])
      refusal(() => knownLine(typed({ parts }), 'eacn', library), /negative or no number/);
    refusal(() => picked({ materialId: nextId(), name: 'Gone' }), /Gone is no longer in the library/);
  });
});

describe('HLD as it is asked for', () => {
  const known: HldRequest = {
    ...BLANK_HLD,
    ...{
      oils: [{ ...BLANK_LINE, name: 'Oil', value: 8 }],
      surfactants: [{ ...BLANK_LINE, name: 'S', value: 1.2 }],
    },
    ...{ k: 0.15, b: 0.13, cT: 0.06, alphaT: 0.01 },
  };
  const of = (part: Partial<HldRequest>) => calculateHld({ ...known, ...part }, new Map());

  it('goes by its kind: what one kind needs the other does not ask for', () => {
    expect(of({ kind: 'non-ionic', alphaT: null }).system.kind).toBe('non-ionic');
    expect(of({ kind: 'ionic', salinityPercent: 1, b: null, cT: null }).system.kind).toBe('ionic');
    refusal(() => of({ kind: 'ionic', salinityPercent: 1, alphaT: null }), /αT is not entered/);
    refusal(() => of({ kind: 'non-ionic', cT: null }), /cT is not entered/);
  });

  it('withholds the inversion where there is none, with the reason, and gives the rest', () => {
    const flat = of({ cT: 0 });
    expect(flat.withheld).toEqual([
      {
        label: 'Temperature where HLD is 0',
        why: expect.stringContaining('does not change with temperature'),
      },
    ]);
    expect(flat.results.map(({ key }) => key)).toEqual(['hld', 'eacn', 'cc', 'cold', 'hot']);
  });

  it('lists what went in, by the names of its kind alone', () => {
    const labels = (part: Partial<HldRequest>) => of(part).given.map(({ label }) => label);
    expect(labels({})).toEqual([
      'Oil',
      'Surfactant',
      'Salinity',
      'Temperature',
      'Alcohol term',
      'K',
      'b',
      'cT',
      'Stored between',
    ]);
    expect(labels({ kind: 'ionic', salinityPercent: 1 })).toContain('αT');
    expect(labels({ kind: 'ionic', salinityPercent: 1 })).not.toContain('cT');
  });

  it('refuses storage turned round, and says of a mix of 41 lines that it is too long', () => {
    refusal(() => of({ coldest: 40, hottest: 5 }), /coldest temperature is above the hottest/);
    const long = { ...known, oils: Array.from({ length: 41 }, () => known.oils[0]) };
    expect(hldRequest.safeParse(long).error?.issues[0]?.message).toBe('A mix can hold 40 lines at most.');
  });
});

it('what was left empty is not among what went in; a nought is', () => {
  expect(
    givens([
      ['A', null, 'g'],
      ['B', '', 'g'],
      ['C', 0, 'g'],
      ['D', 'x', ''],
    ]),
  ).toEqual([
    { label: 'C', value: 0, unit: 'g' },
    { label: 'D', value: 'x', unit: '' },
  ]);
});
