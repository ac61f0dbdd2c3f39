import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fromParams, toParams } from '@core/lists/address';
import { createListIndex, NEARNESS, type Match } from '@core/lists/list-index';
import { holdsFigure, nearestWords } from '@core/lists/nearest-words';
import { listQuery, type ListPage, type ListQuery, type Span } from '@core/lists/query';
import { MATERIALS_LIST, type MaterialEntry } from '@core/materials/list';
import { foldedWords } from '@core/quantities/fold';
import { PlainList, slipsToBeginning } from './plain-list';

// Few words and few ids, so that words, values and ids meet often.
const text = fc
  .array(
    fc.constantFrom(
      ...['Cetearyl', 'cétéareth-20', 'Ceteareth-7', 'GLYCERIN', 'Gly', 'olive', 'olives', 'berry'],
      ...['Œil', '油脂', '-', 'RM-007', 'pellet', 'tocopherol', 'acetate'],
    ),
    { maxLength: 3 },
  )
  .map((words) => words.join(' '));
const typed = fc.oneof(
  fc.constant(''),
  fc.constantFrom('cet', 'CÉTEARETH 7', 'gly oli', 'oe', '油', 'zzz', '!', 'rm007', 'RM 007'),
  fc.constantFrom('cetaryl', 'glycerni', 'ceteareht', 'tocoferol', 'olivs', 'cationc emulsifiers'),
  fc.constantFrom('vitamin e', 'vitamin', 'gly vitamin e', 'berries', 'pellets', 'archived', 'house one'),
  text,
);
/** Other names for the property: one word for two, two words for one, and one that nothing bears. */
const synonyms = (phrase: string): string[] =>
  ({ 'vitamin e': ['tocopherol', 'tocopherol acetate'], oil: ['olive'], water: ['nowhere'] })[phrase] ?? [];

const ids = fc.constantFrom('a', 'b', 'c', 'd', 'e', 'f', 'g', 'h');
const vocabulary = (key: string): readonly string[] =>
  MATERIALS_LIST.facets.find((facet) => facet.key === key)?.words ?? [];
const one = (key: string): fc.Arbitrary<string | null> => fc.option(fc.constantFrom(...vocabulary(key)));
const some = (key: string): fc.Arbitrary<string[]> => fc.subarray([...vocabulary(key)], { maxLength: 3 });
const HOUSES = ['House One', 'Haus Zwei', 'rm'];
const figure = fc.option(fc.constantFrom(0, 3.5, 10, 10.1, 16, 40));

const entry: fc.Arbitrary<MaterialEntry> = fc.record({
  id: ids,
  photo: fc.constant(null),
  code: text,
  tradeName: text,
  inci: text,
  supplier: text,
  suppliers: fc.subarray(HOUSES),
  withdrawnOn: fc.constantFrom('', '2026-07-31', '2027-01-01'),
  charge: one('charge'),
  architecture: one('architecture'),
  emulsionType: one('emulsionType'),
  functions: some('functions'),
  phaseOfUse: one('phaseOfUse'),
  form: one('form'),
  consistency: one('consistency'),
  origin: one('origin'),
  countryOfOrigin: fc.constantFrom('', 'Spain', 'Ghana'),
  keepFrom: some('keepFrom'),
  status: fc.constantFrom(...vocabulary('status')),
  hlb: figure,
  requiredHlbOw: figure,
  meltingPoint: figure,
  pricePerKg: fc.option(fc.nat(2000)),
  currency: fc.constantFrom('EUR', 'USD'),
  notes: text,
  updatedAt: fc.constantFrom('2026-01-02T00:00:00Z', '2026-01-02T00:00:00.500Z', '2026-03-01T10:00:00.000Z'),
});

const rarely = <T>(arbitrary: fc.Arbitrary<T>): fc.Arbitrary<T | null> =>
  fc.oneof({ weight: 4, arbitrary: fc.constant(null) }, arbitrary);
const chosen = fc
  .record(
    Object.fromEntries(
      MATERIALS_LIST.facets.map(({ key, words }) => [
        key,
        rarely(words ? some(key) : fc.subarray([...HOUSES, 'Ghana', 'nobody'])),
      ]),
    ),
  )
  .map((all) =>
    Object.fromEntries(
      Object.entries(all).filter((pair): pair is [string, string[]] => (pair[1]?.length ?? 0) > 0),
    ),
  );
const spans = rarely(fc.record({ from: figure, to: figure })).map((hlb): Record<string, Span> =>
  hlb && (hlb.from !== null || hlb.to !== null) ? { hlb } : {},
);
const query: fc.Arbitrary<ListQuery> = fc.record({
  text: typed,
  chosen,
  spans,
  sortBy: fc.constantFrom(...MATERIALS_LIST.sorts.map(({ key }) => key)),
  descending: fc.boolean(),
  offset: fc.nat(4),
  limit: fc.constantFrom(0, 2, 100),
});

type Step = { put: MaterialEntry } | { remove: string } | { search: ListQuery } | { best: string };
const step: fc.Arbitrary<Step> = fc.oneof(
  entry.map((put) => ({ put })),
  ids.map((remove) => ({ remove })),
  query.map((search) => ({ search })),
  typed.map((best) => ({ best })),
);
const plainList = (entries: Iterable<MaterialEntry>) => new PlainList(MATERIALS_LIST, [...entries], synonyms);

/** What a word was taken for comes in no particular order. */
function sorted<T>({ corrections, ...page }: ListPage<T>): unknown {
  return { ...page, corrections: corrections.map(({ typed: word, meant }) => [word, [...meant].sort()]) };
}

/** The records that a text means, by a look at every one. */
function plainBest(entries: MaterialEntry[], wanted: string, limit: number): Match<MaterialEntry>[] {
  const words = foldedWords(wanted);
  if (words.length === 0) return [];
  const list = plainList(entries);
  const corrections = list.corrections(wanted);
  const nearness = (e: MaterialEntry): number => {
    const inTier = (['names', 'shown', 'unshown'] as const).findIndex((tier) =>
      list.answersText(e, wanted, tier, corrections),
    );
    if (foldedWords(e.code).join('') === words.join('')) return 0;
    const begins = (name: string): boolean => foldedWords(name).join(' ').startsWith(words.join(' '));
    if (inTier === 0 && begins(e.tradeName)) return 1;
    if (inTier === 0 && begins(e.inci)) return 2;
    return inTier < 0 ? NEARNESS.length : 3 + inTier;
  };
  return list
    .ordered(entries, 'tradeName', false)
    .map((e) => ({ entry: e, near: nearness(e), putAside: e.status === 'archived' }))
    .filter(({ near }) => near < NEARNESS.length)
    .sort((a, b) => Number(a.putAside) - Number(b.putAside) || a.near - b.near)
    .slice(0, limit)
    .map((match) => ({ ...match, near: NEARNESS[match.near]! }));
}

describe('a list', () => {
  it('answers every search as a look at every record would, through any edits', () => {
    fc.assert(
      fc.property(
        fc.array(entry, { maxLength: 12 }),
        fc.array(step, { minLength: 1, maxLength: 25 }),
        query,
        (start, steps, last) => {
          const list = createListIndex(MATERIALS_LIST, start, synonyms);
          const plain = new Map(start.map((e) => [e.id, e]));
          for (const each of [...steps, { search: last }]) {
            if ('put' in each) {
              list.put(each.put);
              plain.set(each.put.id, each.put);
            } else if ('remove' in each) {
              expect(list.remove(each.remove)).toBe(plain.delete(each.remove));
            } else if ('best' in each) {
              expect(list.best(each.best, 5)).toEqual(plainBest([...plain.values()], each.best, 5));
            } else {
              expect(sorted(list.search(each.search))).toEqual(
                sorted(plainList(plain.values()).search(each.search)),
              );
            }
          }
          expect(list.size).toBe(plain.size);
        },
      ),
      { numRuns: 400 },
    );
  });

  it('answers the same where it is long with many equals, and orders are walked instead of sorted', () => {
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
          const { sortBy, descending } = asked;
          const q = listQuery(MATERIALS_LIST, { sortBy, descending, offset });
          expect(createListIndex(MATERIALS_LIST, long, synonyms).search(q)).toEqual(
            plainList(long).search(q),
          );
        },
      ),
      { numRuns: 30 },
    );
  });
});

describe('the words nearest to a typed one', () => {
  const letters = fc.string({ unit: fc.constantFrom('a', 'b', 'c', 'é', '7'), minLength: 1, maxLength: 9 });

  it('are those that the plain table of distances gives', () => {
    fc.assert(
      fc.property(letters, fc.array(letters, { maxLength: 30 }), fc.nat(3), (word, known, most) => {
        const words = [...new Set(known)].filter((each) => !holdsFigure(each)).sort();
        const measured = words.map((each) => ({ each, slips: slipsToBeginning(word, each) }));
        const slips = Math.min(...measured.map((one) => one.slips));
        const expected =
          most < 1 || slips > most
            ? null
            : { words: measured.filter((one) => one.slips === slips).map(({ each }) => each), slips };
        expect(nearestWords(word, words, most)).toEqual(expected);
      }),
      { numRuns: 2000 },
    );
  });
});

describe('the address of a list', () => {
  const anyText = fc.string({ unit: 'grapheme', maxLength: 100 });

  it('gives back the same query', () => {
    fc.assert(
      fc.property(query, anyText, (q, words) => {
        const asked = { ...q, text: words };
        const address = toParams(MATERIALS_LIST, asked).toString();
        expect(fromParams(MATERIALS_LIST, new URLSearchParams(address))).toEqual(asked);
      }),
    );
  });

  it('reads any parameters into a query that reads back the same', () => {
    const names = fc.constantFrom(
      ...MATERIALS_LIST.facets.map(({ key }) => key),
      ...['text', 'hlbFrom', 'hlbTo', 'sortBy', 'descending', 'offset', 'limit'],
    );
    const values = fc.oneof(
      anyText,
      fc.double().map(String),
      fc.constantFrom('cationic', 'true', '41', '-1', '1e9', 'hlb', ''),
    );
    fc.assert(
      fc.property(fc.array(fc.tuple(names, values)), (pairs) => {
        const read = fromParams(MATERIALS_LIST, new URLSearchParams(pairs));
        expect(read.limit).toBeLessThanOrEqual(500);
        expect(Number.isSafeInteger(read.offset) && read.offset >= 0).toBe(true);
        expect(MATERIALS_LIST.sorts.some(({ key }) => key === read.sortBy)).toBe(true);
        for (const span of Object.values(read.spans))
          for (const end of [span.from, span.to]) expect(end === null || (end >= 0 && end <= 40)).toBe(true);
        expect(fromParams(MATERIALS_LIST, toParams(MATERIALS_LIST, read))).toEqual(read);
      }),
    );
  });
});
