import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { foldedWords } from '@core/quantities/fold';
import {
  FACETS,
  FACET_NAMES,
  SORT_KEYS,
  shelfQuery,
  type Facet,
  type ShelfAnswer,
  type ShelfEntry,
  type ShelfQuery,
  type ShelfRow,
} from '@core/shelf/query';
import { fromParams, toParams } from '@core/shelf/query-params';
import { createShelf } from '@core/shelf/shelf';
import { compareValues, sortValue } from '@core/shelf/sort-key';

// Few words and few ids, so that words, values and ids meet often.
const text = fc
  .array(
    fc.constantFrom(
      'Cetearyl',
      'cétéareth-20',
      'Ceteareth-7',
      'GLYCERIN',
      'Gly',
      'olive',
      'Œil',
      '油脂',
      '-',
    ),
    { maxLength: 3 },
  )
  .map((words) => words.join(' '));
const ids = fc.constantFrom('a', 'b', 'c', 'd', 'e', 'f', 'g', 'h');
const one = (facet: Facet): fc.Arbitrary<string | null> =>
  fc.option(fc.constantFrom(...(FACETS[facet] as readonly string[])));
const some = (facet: Facet): fc.Arbitrary<string[]> =>
  fc.subarray([...(FACETS[facet] as readonly string[])], { maxLength: 3 });
const figure = fc.option(fc.constantFrom(0, 3.5, 10, 10.1, 16, 40));

const entry: fc.Arbitrary<ShelfEntry> = fc.record({
  id: ids,
  code: text,
  tradeName: text,
  inci: text,
  supplier: text,
  suppliers: fc.array(text, { maxLength: 2 }),
  charge: one('charge'),
  architecture: one('architecture'),
  emulsionType: one('emulsionType'),
  functions: some('functions'),
  phaseOfUse: one('phaseOfUse'),
  form: one('form'),
  consistency: one('consistency'),
  origin: one('origin'),
  keepFrom: some('keepFrom'),
  status: fc.constantFrom(...FACETS.status),
  hlb: figure,
  requiredHlbOw: figure,
  meltingPoint: figure,
  pricePerKg: fc.option(fc.nat(2000)),
  currency: fc.constantFrom('EUR', 'USD'),
  notes: text,
  updatedAt: fc.constantFrom('2026-01-02T00:00:00Z', '2026-01-02T00:00:00.500Z', '2026-03-01T10:00:00.000Z'),
});

const query: fc.Arbitrary<ShelfQuery> = fc
  .record({
    text: fc.oneof(
      fc.constant(''),
      fc.constantFrom('cet', 'CÉTEARETH 7', 'gly oli', 'oe', '油', 'zzz', '!'),
      text,
    ),
    ...Object.fromEntries(
      FACET_NAMES.map((facet) => [facet, fc.oneof({ weight: 3, arbitrary: fc.constant([]) }, some(facet))]),
    ),
    hlbFrom: fc.oneof({ weight: 3, arbitrary: fc.constant(null) }, figure),
    hlbTo: fc.oneof({ weight: 3, arbitrary: fc.constant(null) }, figure),
    sortBy: fc.constantFrom(...SORT_KEYS),
    descending: fc.boolean(),
    offset: fc.nat(4),
    limit: fc.constantFrom(0, 2, 100),
  })
  .map((parts) => shelfQuery.parse(parts));

type Step = { put: ShelfEntry } | { remove: string } | { search: ShelfQuery };
const step: fc.Arbitrary<Step> = fc.oneof(
  entry.map((put) => ({ put })),
  ids.map((remove) => ({ remove })),
  query.map((search) => ({ search })),
);

function held(e: ShelfEntry, facet: Facet): readonly string[] {
  const value = e[facet];
  return value === null ? [] : Array.isArray(value) ? value : [value];
}

function passes(e: ShelfEntry, q: ShelfQuery, ignored: Facet | null): boolean {
  const words = [e.tradeName, e.code, e.inci, e.supplier, ...e.suppliers, e.notes].flatMap(foldedWords);
  if (!foldedWords(q.text).every((begin) => words.some((word) => word.startsWith(begin)))) return false;
  if (q.hlbFrom !== null && (e.hlb === null || e.hlb < q.hlbFrom)) return false;
  if (q.hlbTo !== null && (e.hlb === null || e.hlb > q.hlbTo)) return false;
  return FACET_NAMES.every((facet) => {
    if (facet === ignored) return true;
    const chosen: readonly string[] = q[facet];
    if (chosen.length === 0) return facet !== 'status' || e.status !== 'archived';
    return held(e, facet).some((word) => chosen.includes(word));
  });
}

/** The same answer by looking at every entry, with nothing prepared. */
function plainAnswer(entries: ShelfEntry[], q: ShelfQuery): ShelfAnswer {
  const found = entries
    .filter((e) => passes(e, q, null))
    .map((e) => ({ e, value: sortValue(e, q.sortBy), name: sortValue(e, 'tradeName') }))
    .sort((a, b) => {
      const known = a.value !== null && b.value !== null;
      const byValue = compareValues(a.value, b.value) * (q.descending && known ? -1 : 1);
      return byValue || compareValues(a.name, b.name) || compareValues(a.e.id, b.e.id);
    })
    .map(({ e }) => e);
  const countsIn = (facet: Facet): Record<string, number> => {
    const left = entries.filter((e) => passes(e, q, facet)).flatMap((e) => held(e, facet));
    return Object.fromEntries(
      FACETS[facet].map((word) => [word, left.filter((each) => each === word).length]),
    );
  };
  return {
    total: found.length,
    offset: q.offset,
    rows: found.slice(q.offset, q.offset + q.limit).map((e) => {
      const shown = Object.entries(e).filter(([name]) => name !== 'notes' && name !== 'suppliers');
      return Object.fromEntries(shown) as unknown as ShelfRow;
    }),
    counts: Object.fromEntries(FACET_NAMES.map((facet) => [facet, countsIn(facet)])) as ShelfAnswer['counts'],
  };
}

describe('the shelf', () => {
  it('answers every search as a look at every material would, through any edits', () => {
    fc.assert(
      fc.property(
        fc.array(entry, { maxLength: 12 }),
        fc.array(step, { minLength: 1, maxLength: 25 }),
        query,
        (start, steps, last) => {
          const shelf = createShelf(start);
          const plain = new Map(start.map((e) => [e.id, e]));
          for (const each of [...steps, { search: last }]) {
            if ('put' in each) {
              shelf.put(each.put);
              plain.set(each.put.id, each.put);
            } else if ('remove' in each) {
              expect(shelf.remove(each.remove)).toBe(plain.delete(each.remove));
            } else {
              expect(shelf.search(each.search)).toEqual(plainAnswer([...plain.values()], each.search));
            }
          }
          expect(shelf.size).toBe(plain.size);
        },
      ),
      { numRuns: 300 },
    );
  });

  it('answers the same on a long shelf with many equals, where orders are walked instead of sorted', () => {
    fc.assert(
      fc.property(
        fc.array(entry, { minLength: 4, maxLength: 12 }),
        query,
        fc.nat(350),
        (some, asked, offset) => {
          const long = Array.from({ length: 400 }, (_, i) => ({
            ...some[i % some.length]!,
            id: String(i).padStart(3, '0'),
            status: 'in use',
          }));
          const q = { ...shelfQuery.parse({}), sortBy: asked.sortBy, descending: asked.descending, offset };
          expect(createShelf(long).search(q)).toEqual(plainAnswer(long, q));
        },
      ),
      { numRuns: 30 },
    );
  });
});

describe('the address of a list', () => {
  const anyText = fc.string({ unit: 'grapheme', maxLength: 100 });

  it('gives back the same query', () => {
    fc.assert(
      fc.property(query, anyText, (q, words) => {
        const asked = { ...q, text: words };
        const address = toParams(asked).toString();
        expect(fromParams(new URLSearchParams(address))).toEqual(asked);
      }),
    );
  });

  it('reads any parameters into a valid query', () => {
    const names = fc.constantFrom(...Object.keys(shelfQuery.shape));
    const values = fc.oneof(
      anyText,
      fc.double().map(String),
      fc.constantFrom('cationic', 'true', '41', '-1', '1e9'),
    );
    fc.assert(
      fc.property(fc.array(fc.tuple(names, values)), (pairs) => {
        const read = fromParams(new URLSearchParams(pairs));
        expect(shelfQuery.parse(read)).toEqual(read);
      }),
    );
  });
});
