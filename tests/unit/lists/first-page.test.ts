import fc from 'fast-check';
import { isOfAll, orderOfAll } from '@core/lists/first-page';
import { createListIndex } from '@core/lists/list-index';
import { listQuery } from '@core/lists/query';
import { compareValues, sortValue } from '@core/lists/sort-key';
import { SUBSTANCES_LIST, type SubstanceEntry } from '@core/substances/list';
import { CMR_CLASSES } from '@core/substances/cmr-classes';
import { describe, expect, it } from 'vitest';

// Few names, so that equals meet often; some that differ by case, accents and numbers alone.
const NAMES = ['Aqua', 'aqua', 'Águà', 'PEG-7', 'PEG-40', 'PEG-100', 'Glycerin', '油', '-', 'Zinc Oxide'];
const entry = (id: string): fc.Arbitrary<SubstanceEntry> =>
  fc.record({
    ...{
      id: fc.constant(id),
      name: fc.constantFrom(...NAMES),
      usName: fc.constantFrom('', 'Water', 'water'),
    },
    ...{
      colourIndex: fc.constantFrom('', 'CI 77891', 'CI 9'),
      cas: fc.constant(''),
      formula: fc.constant(''),
    },
    ...{ allergenList: fc.constant(null), allergenLabel: fc.constant(''), notes: fc.constant('') },
    ...{ cmrClass: fc.option(fc.constantFrom(...CMR_CLASSES)), synonyms: fc.constant([]) },
    ...{
      groups: fc.constant([]),
      updatedAt: fc.constantFrom('2026-01-01T00:00:00Z', '2025-05-05T00:00:00Z'),
    },
  });
const shelf = fc
  .uniqueArray(fc.string({ minLength: 1, maxLength: 3 }), { maxLength: 25 })
  .chain((ids) => fc.tuple(...ids.map(entry)));
const sortBy = fc.constantFrom(...SUBSTANCES_LIST.sorts.map(({ key }) => key));

describe('a page before the list is filled', () => {
  it('is the page that the filled list shows, in any order, from any place', () => {
    fc.assert(
      fc.property(
        ...([shelf, sortBy, fc.boolean(), fc.nat(30), fc.integer({ min: 1, max: 12 })] as const),
        (entries, by, descending, offset, limit) => {
          const query = listQuery(SUBSTANCES_LIST, { sortBy: by, descending, offset, limit });
          const index = createListIndex(SUBSTANCES_LIST, entries);
          const early = orderOfAll(SUBSTANCES_LIST, entries, query);
          expect(early.total).toBe(entries.length);
          const shown = index.search(query).rows.map(({ id }) => id);
          expect(early.page(query.offset, query.limit)).toEqual(shown);
        },
      ),
    );
  });

  it('and the next show every record once', () => {
    fc.assert(
      fc.property(shelf, sortBy, fc.boolean(), fc.integer({ min: 1, max: 7 }), (entries, by, down, limit) => {
        const order = orderOfAll(SUBSTANCES_LIST, entries, { sortBy: by, descending: down });
        const shown: string[] = [];
        for (let at = 0; at < entries.length; at += limit) shown.push(...order.page(at, limit));
        expect([...shown].sort()).toEqual(entries.map(({ id }) => id).sort());
        expect(order.page(entries.length, limit)).toEqual([]);
      }),
    );
  });

  it('is asked for only where nothing is looked for', () => {
    const query = (part: object) => listQuery(SUBSTANCES_LIST, part);
    expect(isOfAll(query({}))).toBe(true);
    expect(isOfAll(query({ text: '  – ' }))).toBe(true);
    expect(isOfAll(query({ text: 'a' }))).toBe(false);
    expect(isOfAll(query({ chosen: { cmrClass: ['2'] } }))).toBe(false);
    expect(isOfAll(query({ spans: { hlb: { from: 1, to: null } } }))).toBe(false);
    expect(isOfAll(query({ sortBy: 'cas', descending: true, offset: 40 }))).toBe(true);
  });
});

describe('what a record is sorted by', () => {
  const value = (key: string, by: 'text' | 'word' | 'date' | 'number', of: object, within?: string) =>
    sortValue(SUBSTANCES_LIST, { key, by, ...(within && { within }) }, { id: 'a', ...of });

  it('of a name: no case, accents or signs, numbers by their size, and nothing where no letter stands', () => {
    expect(value('name', 'text', { name: 'Âqua' })).toBe(value('name', 'text', { name: 'AQUA!' }));
    const [small, large] = ['PEG-7', 'PEG-40'].map((name) => value('name', 'text', { name }));
    expect(compareValues(small!, large!)).toBe(-1);
    expect(value('name', 'text', { name: ' – ' })).toBeNull();
  });

  it('of a word: its place in the vocabulary, nothing for one that is none', () => {
    expect(value('cmrClass', 'word', { cmrClass: CMR_CLASSES[1] })).toBe(1);
    expect(value('cmrClass', 'word', { cmrClass: '3' })).toBeNull();
    expect(value('cmrClass', 'word', { cmrClass: null })).toBeNull();
  });

  it('of a day: its moment, nothing for what is no day', () => {
    expect(value('updatedAt', 'date', { updatedAt: '1970-01-02' })).toBe(86_400_000);
    expect(value('updatedAt', 'date', { updatedAt: 'soon' })).toBeNull();
    expect(value('updatedAt', 'date', {})).toBeNull();
  });

  it('unknown comes last, whichever way round', () => {
    for (const descending of [false, true]) {
      expect(compareValues(null, 3, descending)).toBe(1);
      expect(compareValues(3, null, descending)).toBe(-1);
      expect(compareValues(null, null, descending)).toBe(0);
    }
    expect(compareValues(2, 10)).toBe(-1);
    expect(compareValues(2, 10, true)).toBe(1);
  });
});
