import type { SqlValue } from '@db/database';
import { foldedWords } from '@core/quantities/fold';
import { textsOf } from '@core/lists/description';
import { MOST_FOUND_WORDS } from '@core/lists/found-words';
import { plainCode } from '@core/lists/name-index';
import { chosenIn, type ListPage, type ListQuery } from '@core/lists/query';
import { sortValue } from '@core/lists/sort-key';
import { otherForms } from '@core/lists/word-forms';
import { MATERIALS_LIST, type MaterialEntry, type MaterialRow } from '@core/materials/list';
import { otherNames } from '@core/materials/synonyms';
import type { PeerDatabase } from './peer';
const FACETS = MATERIALS_LIST.facets;
const FACET_NAMES: readonly string[] = FACETS.map(({ key }) => key);
const LISTS: readonly string[] = ['functions', 'keepFrom', 'suppliers'];
const SINGLES = FACET_NAMES.filter((facet) => !LISTS.includes(facet));
const SORTED = ['tradeName', 'hlb', 'supplier', 'updatedAt'] as const;
/** What a row of the shelf holds, in order. */
const ROW = ['slot', 'entry', 'words', 'id', ...SINGLES, 'hlb', ...SORTED.map((key) => `sort_${key}`)];

/**
 * The materials list as a careful SQL programmer would build it: one table with every filter and sort key indexed,
 * FTS5 over the folded words with prefix indexes, lists of words in tables of their own.
 */
const SCHEMA = `
CREATE TABLE shelf (
  slot INTEGER PRIMARY KEY, entry TEXT NOT NULL, words TEXT NOT NULL, id TEXT NOT NULL,
  ${SINGLES.join(' TEXT, ')} TEXT, hlb REAL,
  ${SORTED.map((key) => `sort_${key}`).join(', ')}
);
${LISTS.map((list) => `CREATE TABLE shelf_${list} (slot INTEGER, word TEXT, PRIMARY KEY (word, slot)) WITHOUT ROWID;`).join('\n')}
CREATE VIRTUAL TABLE shelf_words USING fts5 (
  words, content = 'shelf', content_rowid = 'slot', prefix = '1 2 3', detail = none, tokenize = 'unicode61 remove_diacritics 0'
);`;
const INDEXES = [
  ...SINGLES.map((facet) => `CREATE INDEX by_${facet} ON shelf (${facet})`),
  ...LISTS.map((list) => `CREATE INDEX words_of_${list} ON shelf_${list} (slot, word)`),
  ...SORTED.map((key) => `CREATE INDEX sorted_by_${key} ON shelf (sort_${key}, sort_tradeName, id)`),
  "INSERT INTO shelf_words (shelf_words) VALUES ('rebuild')",
  "INSERT INTO shelf_words (shelf_words) VALUES ('optimize')",
  'ANALYZE',
];

/** Fills the peer with the same rows. */
export function fillPeerShelf(peer: PeerDatabase, entries: readonly MaterialEntry[]): void {
  peer.exec(SCHEMA);
  const marks = ROW.map(() => '?').join(', ');
  const insert = peer.prepare(`INSERT INTO shelf (${ROW.join(', ')}) VALUES (${marks})`);
  const lists = LISTS.map((list) => ({
    list,
    insert: peer.prepare(`INSERT OR IGNORE INTO shelf_${list} VALUES (?, ?)`),
  }));
  peer.exec('BEGIN');
  entries.forEach((entry, slot) => {
    const { notes, suppliers, ...row } = entry;
    const texts = [entry.tradeName, entry.code, plainCode(entry.code), entry.inci, entry.supplier];
    const filterWords = FACET_NAMES.flatMap((facet) => textsOf(entry, facet));
    const singles = SINGLES.map((facet): SqlValue => textsOf(entry, facet)[0] || null);
    const keys = SORTED.map((key) => sortOf(entry, key));
    const words = foldedWords([...texts, ...suppliers, notes, ...filterWords].join('\n')).join(' ');
    insert.run(slot, JSON.stringify(row), words, entry.id, ...singles, entry.hlb, ...keys);
    for (const { list, insert: add } of lists) for (const word of textsOf(entry, list)) add.run(slot, word);
  });
  peer.exec('COMMIT');
  for (const statement of INDEXES) peer.exec(statement);
}

function sortOf(entry: MaterialEntry, key: string): SqlValue {
  const sort = MATERIALS_LIST.sorts.find((known) => known.key === key);
  return sort ? sortValue(MATERIALS_LIST, sort, entry) : null;
}

/** A typed word: the beginning of a word, or the other number of it, whole, or another name of it, whole. */
function match(word: string): string {
  const whole = otherForms(word).map((form) => `"${form}"`);
  const names = otherNames(word).map((name) => foldedWords(name).map((each) => `"${each}"`));
  return `(${[`"${word}"*`, ...whole, ...names.map((words) => `(${words.join(' AND ')})`)].join(' OR ')})`;
}

interface Clause {
  sql: string;
  values: SqlValue[];
}

function textAndRange(query: ListQuery): Clause {
  const words = [...new Set(foldedWords(query.text))];
  const clauses = ['1'];
  const values: SqlValue[] = [];
  if (words.length > 0) {
    clauses.push('slot IN (SELECT rowid FROM shelf_words WHERE shelf_words MATCH ?)');
    values.push(words.map(match).join(' AND '));
  }
  for (const [end, sign] of [
    [query.spans.hlb?.from ?? null, '>='],
    [query.spans.hlb?.to ?? null, '<='],
  ] as const) {
    if (end === null) continue;
    clauses.push(`hlb ${sign} ?`);
    values.push(end);
  }
  return { sql: clauses.join(' AND '), values };
}

/** A condition for each facet in use; statements differ only in their parameters, so that they stay prepared. */
function facetClauses(query: ListQuery): Map<string, Clause> {
  const clauses = new Map<string, Clause>();
  for (const facet of FACET_NAMES) {
    const chosen = chosenIn(query, facet);
    const marks = chosen.map(() => '?').join(', ');
    if (chosen.length === 0) {
      if (facet === 'status') clauses.set(facet, { sql: "status <> 'archived'", values: [] });
    } else if (LISTS.includes(facet)) {
      const sql = `EXISTS (SELECT 1 FROM shelf_${facet} l WHERE l.slot = s.slot AND l.word IN (${marks}))`;
      clauses.set(facet, { sql, values: [...chosen] });
    } else {
      clauses.set(facet, { sql: `${facet} IN (${marks})`, values: [...chosen] });
    }
  }
  return clauses;
}

/** What a search finds: how many, a page of them, and how many each filter would leave. */
export type Found = Pick<ListPage<MaterialRow>, 'total' | 'offset' | 'rows' | 'counts'>;

/** Answers searches by SQL: the matches once, with which filters they pass; total, counts and page from those. */
export function peerSearch(peer: PeerDatabase): (query: ListQuery) => Found {
  const kept = new Map<string, ReturnType<PeerDatabase['prepare']>>();
  const prepared = (sql: string): ReturnType<PeerDatabase['prepare']> => {
    const statement = kept.get(sql) ?? peer.prepare(sql);
    kept.set(sql, statement);
    return statement;
  };
  return (query) => {
    const base = textAndRange(query);
    const facets = facetClauses(query);
    const inUse = [...facets.keys()];
    const passes = inUse.map((facet) => `(${facets.get(facet)?.sql}) IS TRUE AS pass_${facet}`);
    const columns = ['slot', ...FACET_NAMES.filter((facet) => !LISTS.includes(facet)), ...passes].join(', ');
    const found = `WITH found AS MATERIALIZED (SELECT ${columns} FROM shelf s WHERE ${base.sql})`;
    const values = [...inUse.flatMap((facet) => facets.get(facet)?.values ?? []), ...base.values];
    const all = (ignored: string | null): string =>
      ['1', ...inUse.filter((facet) => facet !== ignored).map((facet) => `pass_${facet}`)].join(' AND ');
    const counting = FACET_NAMES.map((facet) =>
      LISTS.includes(facet)
        ? `SELECT '${facet}', l.word, count(*) FROM found CROSS JOIN shelf_${facet} l ON l.slot = found.slot
           WHERE ${all(facet)} GROUP BY l.word`
        : `SELECT '${facet}', ${facet}, count(*) FROM found WHERE ${all(facet)} GROUP BY ${facet}`,
    );
    const counted = prepared(
      `${found} SELECT '' AS facet, '' AS word, count(*) AS n FROM found WHERE ${all(null)}
       UNION ALL ${counting.join(' UNION ALL ')}`,
    ).all(...values) as { facet: string; word: string | null; n: number }[];
    const { total, counts } = readCounts(counted);
    const rows = pageOf(prepared, query, base, facets);
    return { total, offset: query.offset, rows, counts };
  };
}

function pageOf(
  prepared: (sql: string) => ReturnType<PeerDatabase['prepare']>,
  query: ListQuery,
  base: Clause,
  facets: Map<string, Clause>,
): ListPage<MaterialRow>['rows'] {
  const clauses = [base, ...facets.values()];
  const key = `sort_${query.sortBy}`;
  const rows = prepared(
    `SELECT entry FROM shelf s WHERE ${clauses.map((clause) => clause.sql).join(' AND ')}
     ORDER BY ${key} ${query.descending ? 'DESC' : 'ASC'} NULLS LAST, sort_tradeName NULLS LAST, id LIMIT ? OFFSET ?`,
  ).all(...clauses.flatMap((clause) => clause.values), query.limit, query.offset) as { entry: string }[];
  return rows.map((row) => JSON.parse(row.entry) as ListPage<MaterialRow>['rows'][number]);
}

function readCounts(
  counted: { facet: string; word: string | null; n: number }[],
): Pick<ListPage<MaterialRow>, 'total' | 'counts'> {
  const counts: Record<string, Record<string, number>> = Object.fromEntries(
    FACETS.map(({ key, words }) => [key, Object.fromEntries((words ?? []).map((word) => [word, 0]))]),
  );
  let total = 0;
  for (const { facet, word, n } of counted) {
    if (facet === '') total = n;
    else if (word !== null) counts[facet]![word] = n;
  }
  for (const { key, words } of FACETS)
    if (words === null && Object.keys(counts[key]!).length > MOST_FOUND_WORDS)
      throw new Error('The peer counts every word that is found, and there are more than are sent.');
  return { total, counts };
}
