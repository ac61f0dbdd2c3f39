import fc from 'fast-check';
import { createListIndex } from '@core/lists/list-index';
import { listQuery, withChosen, withSpan, type ListQuery } from '@core/lists/query';
import { MATERIALS_LIST, type MaterialEntry } from '@core/materials/list';
import { describe, expect, it } from 'vitest';
import { sampleEntry } from './sample-entry';

/** A small shelf: invented names over real INCI names. */
const SHELF: MaterialEntry[] = [
  sampleEntry('a', {
    tradeName: 'Brackwater CE-20',
    inci: 'Ceteareth-20',
    charge: 'non-ionic',
    form: 'pellets',
    hlb: 15.2,
    functions: ['emulsifier'],
    code: 'RM-001',
  }),
  sampleEntry('b', {
    tradeName: 'Brackwater GS',
    inci: 'Glyceryl Stearate',
    charge: 'non-ionic',
    form: 'flakes',
    hlb: 3.8,
    functions: ['emulsifier', 'co-emulsifier'],
    code: 'RM-002',
  }),
  sampleEntry('c', {
    tradeName: 'Brackwater SLS',
    inci: 'Sodium Lauryl Sulfate',
    charge: 'anionic',
    form: 'powder',
    hlb: 40,
    functions: ['surfactant'],
    code: 'RM-003',
  }),
  sampleEntry('d', {
    tradeName: 'Brackwater BTC',
    inci: 'Behentrimonium Chloride',
    charge: 'cationic',
    form: 'pellets',
    functions: ['emulsifier', 'conditioning agent'],
    code: 'RM-010',
  }),
  sampleEntry('e', {
    tradeName: 'Ölsäure',
    inci: 'Oleic Acid',
    form: 'liquid',
    functions: ['emollient'],
    code: 'RM-011',
  }),
  sampleEntry('f', {
    tradeName: 'Old Wax',
    inci: 'Cera Alba',
    form: 'pellets',
    status: 'archived',
    code: 'RM-099',
  }),
];
const list = createListIndex(MATERIALS_LIST, SHELF);
const ask = (part: Partial<ListQuery>): string[] =>
  list
    .search(listQuery(MATERIALS_LIST, part))
    .rows.map(({ id }) => id)
    .sort();

describe('a search of the shelf', () => {
  it.each([
    ['brackwater', ['a', 'b', 'c', 'd']],
    ['BRACKWATER', ['a', 'b', 'c', 'd']],
    ['ceteareth', ['a']],
    ['cet', ['a']],
    ['ceteareth 20', ['a']],
    ['ceteareth-20', ['a']],
    ['20 ceteareth', ['a']],
    ['glyceryl stearate', ['b']],
    ['stearate sulfate', []],
    ['rm-001', ['a']],
    ['RM001', ['a']],
    ['rm 001', ['a']],
    ['rm', ['a', 'b', 'c', 'd', 'e']],
    ['olsaure', ['e']],
    ['ÖLSÄURE', ['e']],
    ['oleic acids', ['e']],
    ['wax', []],
    ['emulsifier', ['a', 'b', 'd']],
    ['emulsifiers', ['a', 'b', 'd']],
    ['pellets cationic', ['d']],
    ['cationic emulsifiers', ['d']],
    ['glycreyl', ['b']],
    ['sulfate', ['c']],
    ['xyz', []],
    ['', ['a', 'b', 'c', 'd', 'e']],
    ['  ', ['a', 'b', 'c', 'd', 'e']],
    ['%', ['a', 'b', 'c', 'd', 'e']],
  ])('“%s” finds %j', (text, ids) => expect(ask({ text })).toEqual(ids));

  it('says what a mistyped word was taken for', () => {
    expect(list.search(listQuery(MATERIALS_LIST, { text: 'glycreyl' })).corrections).toEqual([
      { typed: 'glycreyl', meant: ['glyceryl'] },
    ]);
  });

  it('that finds nothing for what is archived offers to look there', () => {
    const { instead } = list.search(listQuery(MATERIALS_LIST, { text: 'wax' }));
    expect(instead).toContainEqual({ kind: 'put aside', key: 'status', word: 'archived', total: 1 });
  });
});

describe('a filter of the shelf', () => {
  it.each([
    [{ charge: ['non-ionic'] }, ['a', 'b']],
    [{ charge: ['non-ionic', 'anionic'] }, ['a', 'b', 'c']],
    [{ charge: ['non-ionic'], form: ['pellets'] }, ['a']],
    [{ form: ['pellets'] }, ['a', 'd']],
    [{ form: ['pellets'], status: ['archived'] }, ['f']],
    [{ status: ['archived', 'in use'] }, ['a', 'b', 'c', 'd', 'e', 'f']],
    [{ functions: ['co-emulsifier'] }, ['b']],
    [{ charge: ['amphoteric'] }, []],
  ] as const)('%j leaves %j', (chosen, ids) => expect(ask({ chosen })).toEqual(ids));

  it.each([
    [{ from: 3.8, to: 15.2 }, ['a', 'b']],
    [{ from: 3.9, to: 15.1 }, []],
    [{ from: 10, to: null }, ['a', 'c']],
    [{ from: null, to: 3.8 }, ['b']],
    [{ from: 40, to: 40 }, ['c']],
    [{ from: 16, to: 8 }, []],
  ])('HLB %j leaves %j, and none of unknown HLB', (hlb, ids) => expect(ask({ spans: { hlb } })).toEqual(ids));

  it('counts, for each word, what choosing it alone in its filter would leave', () => {
    const chosen = fc.record({
      charge: fc.subarray(['anionic', 'cationic', 'non-ionic', 'amphoteric']),
      form: fc.subarray(['pellets', 'flakes', 'powder', 'liquid']),
      text: fc.constantFrom('', 'brackwater', 'emulsifier', 'pellets', 'nothing'),
    });
    fc.assert(
      fc.property(chosen, ({ charge, form, text }) => {
        const plain = listQuery(MATERIALS_LIST, { text });
        const query = withChosen(withChosen(plain, 'charge', charge), 'form', form);
        const { counts, total, rows } = list.search(query);
        expect(rows).toHaveLength(total);
        for (const key of ['charge', 'form'])
          for (const [word, count] of Object.entries(counts[key] ?? {}))
            expect(count, `${key}: ${word}`).toBe(list.search(withChosen(query, key, [word])).total);
      }),
      { numRuns: 40 },
    );
  });

  it('narrows: another filter never leaves more', () => {
    const query = fc.record({
      text: fc.constantFrom('', 'brackwater', 'emulsifier'),
      from: fc.double({ min: 0, max: 40, noNaN: true }),
    });
    fc.assert(
      fc.property(query, fc.constantFrom('anionic', 'non-ionic', 'cationic'), ({ text, from }, word) => {
        const plain = listQuery(MATERIALS_LIST, { text });
        const { total } = list.search(plain);
        expect(list.search(withChosen(plain, 'charge', [word])).total).toBeLessThanOrEqual(total);
        expect(list.search(withSpan(plain, 'hlb', { from, to: null })).total).toBeLessThanOrEqual(total);
      }),
      { numRuns: 40 },
    );
  });
});

describe('an order of the shelf', () => {
  const order = (sortBy: string, descending: boolean): string[] =>
    list.search(listQuery(MATERIALS_LIST, { sortBy, descending })).rows.map(({ id }) => id);

  it.each([
    ['tradeName', false, ['d', 'a', 'b', 'c', 'e']],
    ['tradeName', true, ['e', 'c', 'b', 'a', 'd']],
    ['hlb', false, ['b', 'a', 'c', 'd', 'e']],
    ['hlb', true, ['c', 'a', 'b', 'd', 'e']],
    ['code', false, ['a', 'b', 'c', 'd', 'e']],
  ])('by %s, falling: %s', (sortBy, descending, ids) => expect(order(sortBy, descending)).toEqual(ids));

  it('is cut into pages that show each record once', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 7 }), fc.boolean(), (limit, descending) => {
        const seen: string[] = [];
        for (let offset = 0; offset < 7; offset += limit)
          seen.push(
            ...list.search(listQuery(MATERIALS_LIST, { offset, limit, descending })).rows.map(({ id }) => id),
          );
        expect(seen).toEqual(order('tradeName', descending));
      }),
      { numRuns: 14 },
    );
  });
});

describe('what a typed text means', () => {
  const best = (text: string) =>
    list.best(text, 3).map(({ entry, near, putAside }) => [entry.id, near, putAside]);

  it.each([
    ['RM-010', [['d', 'code', false]]],
    ['rm010', [['d', 'code', false]]],
    ['Brackwater GS', [['b', 'name', false]]],
    ['sodium lauryl', [['c', 'other name', false]]],
    ['lauryl', [['c', 'names', false]]],
    ['old', [['f', 'name', true]]],
    ['', []],
  ])('“%s” is %j', (text, found) => expect(best(text)).toEqual(found));
});
