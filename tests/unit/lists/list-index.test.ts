import { describe, expect, it } from 'vitest';
import { createListIndex, type ListIndex } from '@core/lists/list-index';
import { listQuery, type ListQuery } from '@core/lists/query';
import { MATERIALS_LIST, type MaterialEntry } from '@core/materials/list';
import { otherNames } from '@core/materials/synonyms';
import { sampleEntry } from './sample-entry';

const ask = (query: Partial<ListQuery>): ListQuery => listQuery(MATERIALS_LIST, query);
const listOf = (entries: MaterialEntry[]): ListIndex<MaterialEntry> =>
  createListIndex(MATERIALS_LIST, entries, otherNames);
const found = (entries: MaterialEntry[], query: Partial<ListQuery>): string[] =>
  listOf(entries)
    .search(ask(query))
    .rows.map((row) => row.id);

describe('the text of a search', () => {
  const behenyl = sampleEntry('behenyl', {
    tradeName: 'Béhényl Mild',
    code: 'EM-014',
    inci: 'Behentrimonium Methosulfate, Cetearyl Alcohol',
    suppliers: ['Marsh & Vale', 'Ölhaus'],
    notes: 'melts slowly, stir at 75 °C',
  });

  it.each([
    ['the trade name without its accents', 'behenyl'],
    ['the beginning of a word', 'beh'],
    ['accents where the name has none', 'béhentrimonium'],
    ['any case', 'CETEARYL'],
    ['the code', 'em 014'],
    ['an older supplier', 'olhaus'],
    ['the notes', 'slowly'],
    ['words of different fields in any order', 'vale metho mild'],
    ['nothing but punctuation as no words', ' – '],
  ])('finds %s', (_what, text) => {
    expect(found([behenyl], { text })).toEqual(['behenyl']);
  });

  it('finds nothing when one word begins no word', () => {
    expect(found([behenyl], { text: 'behenyl oleate' })).toEqual([]);
  });

  it('does not find the middle of a word', () => {
    expect(found([behenyl], { text: 'trimonium' })).toEqual([]);
  });
});

describe('what a search means', () => {
  const shelf = [
    sampleEntry('quat', {
      tradeName: 'Lindenquat 80',
      inci: 'Behentrimonium Methosulfate, Cetearyl Alcohol',
      charge: 'cationic',
      form: 'pellets',
      functions: ['emulsifier'],
      origin: 'naturally derived',
    }),
    sampleEntry('vitamin', { tradeName: 'Wheatgerm E', inci: 'Tocopherol', functions: ['antioxidant'] }),
    sampleEntry('poly', {
      tradeName: 'Fernmer 20',
      inci: 'Ceteareth-20',
      charge: 'non-ionic',
      functions: ['emulsifier'],
    }),
    sampleEntry('put-away', { tradeName: 'Olive wax', status: 'archived' }),
    sampleEntry('berry', { tradeName: 'Juniper berry extract' }),
  ];
  const search = (query: Partial<ListQuery>) => listOf(shelf).search(ask(query));

  it.each([
    ['the words that the list shows', 'cationic emulsifier', ['quat']],
    ['a form', 'pellets', ['quat']],
    ['an origin', 'naturally derived', ['quat']],
    ['the plural of a word', 'cationic emulsifiers', ['quat']],
    ['an irregular plural', 'juniper berries', ['berry']],
    ['another name of two words', 'vitamin e', ['vitamin']],
    ['another way of writing', 'nonionic', ['poly']],
    ['a letter left out', 'cetaryl', ['quat']],
    ['two letters swapped', 'tocohperol', ['vitamin']],
  ])('takes in %s', (_what, text, ids) => {
    expect(
      search({ text })
        .rows.map((row) => row.id)
        .sort(),
    ).toEqual([...ids].sort());
  });

  it('says what a word was taken for, and only where the word stands nowhere', () => {
    expect(search({ text: 'cetaryl alcohol' }).corrections).toEqual([
      { typed: 'cetaryl', meant: ['cetearyl'] },
    ]);
    expect(search({ text: 'ceteareth' }).corrections).toEqual([]);
  });

  it('never takes one number for another', () => {
    const { total, corrections } = search({ text: 'fernmer 21' });
    expect([total, corrections]).toEqual([0, []]);
  });

  it('offers what would find something when nothing matches', () => {
    const page = search({ text: 'olive', chosen: { charge: ['cationic'] } });
    expect(page.total).toBe(0);
    expect(page.instead).toEqual([{ kind: 'word', word: 'olive', total: 1 }]);
    expect(search({ text: 'olive' }).instead).toEqual([
      { kind: 'put aside', key: 'status', word: 'archived', total: 1 },
    ]);
    const ranged = search({ text: 'tocopherol', spans: { hlb: { from: 3, to: null } } });
    expect(ranged.instead).toEqual([{ kind: 'range', key: 'hlb', total: 1 }]);
  });
});

describe('the best matches', () => {
  const shelf = [
    sampleEntry('noted', { tradeName: 'Amber wax', notes: 'goes with Xanthan 80' }),
    sampleEntry('inci', { tradeName: 'Clear gum', inci: 'Xanthan Gum' }),
    sampleEntry('named', { tradeName: 'Xanthan 80', inci: 'Gum' }),
    sampleEntry('coded', { tradeName: 'Zinc thing', code: 'XA-80' }),
    sampleEntry('old', { tradeName: 'Xanthan old', status: 'archived' }),
    sampleEntry('bought', { tradeName: 'Bought thing', suppliers: ['Xanthan House'] }),
  ];
  const best = (text: string) =>
    listOf(shelf)
      .best(text, 9)
      .map(({ entry, near, putAside }) => [entry.id, near, ...(putAside ? ['put aside'] : [])].join(' '));

  it('stand by nearness, and what is put aside comes last', () => {
    expect(best('xanthan')).toEqual([
      'named name',
      'inci other name',
      'bought shown',
      'noted unshown',
      'old name put aside',
    ]);
  });

  it('begin with the one of this very code, however it is written', () => {
    for (const text of ['XA-80', 'xa80', 'xa 80']) expect(best(text)[0]).toBe('coded code');
  });

  it('are none for a text without a word', () => {
    expect(best(' – ')).toEqual([]);
  });
});

describe('filters', () => {
  const shelf = [
    sampleEntry('a', {
      charge: 'cationic',
      form: 'pellets',
      functions: ['emulsifier', 'conditioning agent'],
    }),
    sampleEntry('b', { charge: 'non-ionic', form: 'pellets', hlb: 10, functions: ['emulsifier'] }),
    sampleEntry('c', { charge: 'non-ionic', form: 'liquid', hlb: 16, functions: ['co-emulsifier'] }),
    sampleEntry('d', { charge: 'non-ionic', form: 'pellets', hlb: 11, status: 'archived' }),
    sampleEntry('e', { functions: ['emollient'] }),
  ];

  it('take the words of one filter as alternatives and all filters together', () => {
    expect(found(shelf, { chosen: { charge: ['cationic', 'non-ionic'], form: ['pellets'] } })).toEqual([
      'a',
      'b',
    ]);
  });

  it('take both ends of an HLB range in, and leave out materials of unknown HLB', () => {
    expect(found(shelf, { spans: { hlb: { from: 10, to: 16 } } })).toEqual(['b', 'c']);
    expect(found(shelf, { spans: { hlb: { from: null, to: 40 } } })).toEqual(['b', 'c']);
  });

  it('leave out what is archived unless it is asked for', () => {
    expect(found(shelf, {})).toEqual(['a', 'b', 'c', 'e']);
    expect(found(shelf, { chosen: { status: ['archived'] } })).toEqual(['d']);
  });

  it('count what each word would leave, its own filter’s choice aside', () => {
    const { total, counts } = listOf(shelf).search(
      ask({ chosen: { charge: ['cationic'], form: ['pellets'] } }),
    );
    expect(total).toBe(1);
    expect(counts.charge).toEqual({ anionic: 0, cationic: 1, 'non-ionic': 1, amphoteric: 0 });
    expect(counts.form).toMatchObject({ pellets: 1, liquid: 0 });
    expect(counts.functions).toMatchObject({ emulsifier: 1, 'conditioning agent': 1, 'co-emulsifier': 0 });
    expect(counts.status).toEqual({ 'in use': 1, 'on trial': 0, archived: 0 });
  });

  it('count the archived as what choosing the archived would show', () => {
    expect(listOf(shelf).search(ask({ chosen: { charge: ['non-ionic'] } })).counts.status?.archived).toBe(1);
  });
});

describe('sorting', () => {
  it('puts numbers in names by size and ignores case, accents and punctuation', () => {
    const names = ['PEG-40 stearate', 'peg-7 oleate', 'Écru wax', 'ester B', '(Alpha) gel'];
    const entries = names.map((tradeName, i) => sampleEntry(String(i), { tradeName }));
    const rows = listOf(entries)
      .search(ask({}))
      .rows.map((row) => row.tradeName);
    expect(rows).toEqual(['(Alpha) gel', 'Écru wax', 'ester B', 'peg-7 oleate', 'PEG-40 stearate']);
  });

  it('keeps unknowns last in both directions and equals in order of name', () => {
    const shelf = [
      sampleEntry('low', { hlb: 4 }),
      sampleEntry('unknown'),
      sampleEntry('high', { hlb: 15 }),
      sampleEntry('also-high', { hlb: 15 }),
    ];
    expect(found(shelf, { sortBy: 'hlb' })).toEqual(['low', 'also-high', 'high', 'unknown']);
    expect(found(shelf, { sortBy: 'hlb', descending: true })).toEqual([
      'also-high',
      'high',
      'low',
      'unknown',
    ]);
  });

  it('compares prices within one currency only', () => {
    const shelf = [
      sampleEntry('dollars', { pricePerKg: 5, currency: 'USD' }),
      sampleEntry('dear', { pricePerKg: 12000, currency: 'EUR' }),
      sampleEntry('cheap', { pricePerKg: 900, currency: 'EUR' }),
    ];
    expect(found(shelf, { sortBy: 'pricePerKg' })).toEqual(['cheap', 'dear', 'dollars']);
  });
});

describe('pages and edits', () => {
  const entries = Array.from({ length: 2500 }, (_, i) => sampleEntry(String(i), { hlb: i % 40 }));

  it('cuts one page out of the order and says how many match in all', () => {
    const answer = listOf(entries).search(ask({ offset: 2400, limit: 500 }));
    expect(answer.total).toBe(2500);
    expect(answer.rows).toHaveLength(100);
    expect(answer.rows[0]?.tradeName).toBe('Material 2400');
  });

  it('grows from nothing to thousands and answers as if built at once', () => {
    const shelf = listOf([]);
    for (const each of entries) shelf.put(each);
    const query = ask({ text: 'mat', spans: { hlb: { from: 3, to: 7 } }, sortBy: 'hlb', descending: true });
    expect(shelf.search(query)).toEqual(listOf(entries).search(query));
  });

  it('replaces, takes away and gives back single entries', () => {
    const shelf = listOf(entries);
    shelf.put(sampleEntry('7', { tradeName: 'Zinc thing', hlb: 12 }));
    expect(shelf.size).toBe(2500);
    expect(shelf.search(ask({ text: 'zinc' })).rows[0]?.id).toBe('7');
    expect(shelf.get('7')?.tradeName).toBe('Zinc thing');
    expect(shelf.remove('7')).toBe(true);
    expect(shelf.remove('7')).toBe(false);
    expect(shelf.get('7')).toBeUndefined();
    expect(shelf.search(ask({ text: 'zinc' })).total).toBe(0);
    expect(shelf.search(ask({})).total).toBe(2499);
  });

  it('takes the later of two entries with one id', () => {
    const shelf = listOf([sampleEntry('x', { hlb: 1 }), sampleEntry('x', { hlb: 2 })]);
    expect(shelf.size).toBe(1);
    expect(shelf.search(ask({})).rows.map((row) => row.hlb)).toEqual([2]);
  });
});
