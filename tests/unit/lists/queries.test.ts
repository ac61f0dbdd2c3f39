import fc from 'fast-check';
import { fromParams, toParams } from '@core/lists/address';
import { chosenIn, listQuery, LONGEST_TEXT, MOST_ROWS, withChosen, withSpan } from '@core/lists/query';
import { MATERIALS_LIST } from '@core/materials/list';
import { SUBSTANCES_LIST } from '@core/substances/list';
import { describe, expect, it } from 'vitest';

const plain = listQuery(MATERIALS_LIST);
const read = (address: string) => fromParams(MATERIALS_LIST, new URLSearchParams(address));
const words = (key: string): readonly string[] =>
  MATERIALS_LIST.facets.find((one) => one.key === key)?.words ?? [];
const range = MATERIALS_LIST.ranges[0]!;

describe('an address that somebody typed, shortened or kept for years', () => {
  it.each([
    ['offset=-1', 'offset'],
    ['offset=1.5', 'offset'],
    ['offset=abc', 'offset'],
    ['offset=', 'offset'],
    ['offset=1e99', 'offset'],
    ['limit=-5', 'limit'],
    [`limit=${MOST_ROWS + 1}`, 'limit'],
    ['limit=NaN', 'limit'],
    ['limit=Infinity', 'limit'],
    ['sortBy=nothing', 'sortBy'],
    ['sortBy=', 'sortBy'],
    ['sortBy=constructor', 'sortBy'],
    ['charge=magnetic', 'chosen'],
    ['charge=', 'chosen'],
    ['nothing=at+all', 'chosen'],
    [`${range.key}From=abc`, 'spans'],
    [`${range.key}From=${range.min - 1}`, 'spans'],
    [`${range.key}To=${range.max + 1}`, 'spans'],
    [`${range.key}To=`, 'spans'],
    [`${range.key}From=NaN`, 'spans'],
  ] as const)('%s is a list as usual', (address, field) =>
    expect(read(address)[field]).toEqual(plain[field]),
  );

  it('keeps what it does understand beside what it does not', () => {
    const query = read('text=olive&charge=magnetic&charge=anionic&offset=nowhere&limit=20');
    expect(query).toMatchObject({ text: 'olive', chosen: { charge: ['anionic'] }, offset: 0, limit: 20 });
  });

  it('keeps the ends of a range, and half of one where the other half cannot be', () => {
    const { key, min, max } = range;
    expect(read(`${key}From=${min}&${key}To=${max}`).spans).toEqual({ [key]: { from: min, to: max } });
    expect(read(`${key}From=${min}&${key}To=${max + 1}`).spans).toEqual({ [key]: { from: min, to: null } });
  });

  it('names each word once, in the order of the vocabulary', () => {
    const [first, second] = words('charge');
    expect(read(`charge=${second}&charge=${first}&charge=${second}`).chosen['charge']).toEqual([
      first,
      second,
    ]);
  });

  it('is cut where its text is too long, and never searches for nothing instead', () => {
    const long = 'x'.repeat(LONGEST_TEXT + 50);
    expect(read(`text=${long}`).text).toHaveLength(LONGEST_TEXT);
  });

  it.each([
    'öl & wasser',
    'C12-15 + 40 %',
    '50% glycerin',
    '"quoted"',
    'a=b&c=d',
    'käse\tund',
    '油脂',
    '#?/',
  ])('carries “%s” there and back', (text) => {
    const query = listQuery(MATERIALS_LIST, { text });
    expect(
      fromParams(MATERIALS_LIST, new URLSearchParams(toParams(MATERIALS_LIST, query).toString())),
    ).toEqual(query);
  });

  it('carries any query there and back', () => {
    const query = fc.record({
      text: fc.string({ unit: 'grapheme', maxLength: 40 }),
      charge: fc.subarray([...words('charge')]),
      from: fc.option(fc.double({ min: range.min, max: range.max, noNaN: true })),
      sortBy: fc.constantFrom(...MATERIALS_LIST.sorts.map(({ key }) => key)),
      descending: fc.boolean(),
      offset: fc.nat(100_000),
      limit: fc.nat(MOST_ROWS),
    });
    fc.assert(
      fc.property(query, ({ charge, from, ...others }) => {
        const chosen = withChosen(listQuery(MATERIALS_LIST, others), 'charge', charge);
        const whole = withSpan(chosen, range.key, { from: from === 0 ? 0 : from, to: null });
        const back = fromParams(MATERIALS_LIST, toParams(MATERIALS_LIST, whole));
        expect(back).toEqual({ ...whole, text: whole.text });
      }),
      { numRuns: 60 },
    );
  });

  it('is shared by lists, and each understands its own filters alone', () => {
    const params = new URLSearchParams('charge=anionic&groups=Parabens&allergenList=older+26');
    expect(fromParams(SUBSTANCES_LIST, params).chosen).toEqual({
      groups: ['Parabens'],
      allergenList: ['older 26'],
    });
    expect(fromParams(MATERIALS_LIST, params).chosen).toEqual({ charge: ['anionic'] });
  });
});

describe('a filter that is chosen and taken away', () => {
  it('leaves the other filters alone', () => {
    const both = withChosen(withChosen(plain, 'charge', ['anionic']), 'form', ['pellets']);
    expect(withChosen(both, 'charge', []).chosen).toEqual({ form: ['pellets'] });
    expect(chosenIn(both, 'charge')).toEqual(['anionic']);
    expect(chosenIn(both, 'origin')).toEqual([]);
    expect(plain.chosen).toEqual({});
  });

  it('a range open at both ends is none', () => {
    const { key } = range;
    const half = withSpan(plain, key, { from: 0, to: null });
    expect(half.spans[key]).toEqual({ from: 0, to: null });
    expect(withSpan(half, key, { from: null, to: null })).toEqual(plain);
  });
});
