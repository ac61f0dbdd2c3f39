import {
  DOCUMENT_FORMAT,
  type ExchangedHistory,
  type ExchangedRecord,
  type LibraryDocument,
} from '@core/exchange/document';
import { readSettings } from '../settings/settings';
import type { Reader } from '../database';
import { attachmentsInUse } from '../record/attachments-in-use';
import { readIssues } from '../record/issues';
import { stateOf } from '../record/state';
import { RECORD_KINDS, type RecordKinds } from '../repositories';
import type { Kept } from '../record/record-table';
import { id } from '@core/record/id';
import { z } from 'zod';
import { heldBy } from './content';
import { readExchangedBatches, readExchangedVersions } from './events';

/** So many records are read at a step. */
const AT_ONCE = 100;

export interface DocumentParts {
  id: string;
  name: string;
  /** ISO 8601 UTC. */
  writtenAt: string;
}

interface StateHash {
  hash: string;
  record: string;
}

/** The hashes of the states that each record has been in, oldest first. */
export function pastOf(db: Reader): Map<string, string[]> {
  const past = new Map<string, string[]>();
  for (const { hash, record } of db.all<StateHash>('SELECT hash, record FROM state ORDER BY id')) {
    const known = past.get(record);
    if (known) known.push(hash);
    else past.set(record, [hash]);
  }
  return past;
}

function readHistories(db: Reader): ExchangedHistory[] {
  const found = new Map<string, ExchangedHistory>();
  const of = (kind: string, record: string): ExchangedHistory => {
    const key = `${kind} ${record}`;
    const known = found.get(key) ?? { kind, record, entries: [], sitting: null };
    found.set(key, known);
    return known;
  };
  const entries = db.all<ExchangedHistory['entries'][number] & { kind: string; record: string }>(
    `SELECT h.kind, h.record, s.hash AS state, h.at, h.by, h.library, h.why
     FROM history h JOIN state s ON s.id = h.state ORDER BY h.kind, h.record, h.n`,
  );
  for (const { kind, record, ...entry } of entries) of(kind, record).entries.push(entry);
  type Sitting = NonNullable<ExchangedHistory['sitting']> & { kind: string; record: string };
  for (const { kind, record, ...sitting } of db.all<Sitting>('SELECT * FROM sitting ORDER BY kind, record'))
    of(kind, record).sitting = sitting;
  return [...found.values()];
}

/** What every record has, as every library holds it. */
const kept = z.object({
  id,
  revision: z.int().min(1),
  createdAt: z.iso.datetime(),
  updatedAt: z.iso.datetime(),
});

/** What states say that were read and validated before, by their hashes. */
export type KnownContents = ReadonlyMap<string, Record<string, unknown>>;

/** A record as it is exchanged. One that says what a validated one says is as good; any other is validated. */
function exchanged(
  kind: RecordKinds,
  one: Kept,
  past: ExchangedRecord['past'],
  known: KnownContents,
): ExchangedRecord {
  const { noun } = kind.repository;
  const as = (record: Kept, content: Record<string, unknown>, state: string, format: number) => {
    const { revision, createdAt, updatedAt } = record;
    return { kind: noun.kind, id: record.id, revision, createdAt, updatedAt, format, state, past, content };
  };
  const contentOf = (record: Kept) => kind.contentOf(heldBy(record)) as Record<string, unknown>;
  if (known.size > 0 && kept.safeParse(one).success) {
    const { hash, format } = stateOf(noun, one.id, contentOf(one));
    const same = known.get(hash);
    if (same) return as(one, same, hash, format);
  }
  const record = kind.validated(one);
  const content = contentOf(record);
  const { hash, format } = stateOf(noun, record.id, content);
  return as(record, content, hash, format);
}

/**
 * The records of a library as they are now, some at each step, so that others can be answered in between.
 * @param known of another library that has just been read: most of two that meet is the same
 */
export function* readRecords(
  db: Reader,
  known: KnownContents = new Map(),
): Generator<void, ExchangedRecord[]> {
  const past = pastOf(db);
  const records: ExchangedRecord[] = [];
  for (const kind of RECORD_KINDS) {
    const ids = db.all<{ id: string }>(`SELECT id FROM ${kind.table} ORDER BY id`).map((row) => row.id);
    for (let at = 0; at < ids.length; at += AT_ONCE) {
      const some = ids.slice(at, at + AT_ONCE);
      const byId = new Map([...kind.unvalidated(db, some)].map((one) => [one.id, one]));
      for (const one of some.flatMap((of) => byId.get(of) ?? []))
        records.push(exchanged(kind, one, past.get(one.id) ?? [], known));
      yield;
    }
  }
  return records;
}

/** A library as a document, some of it at each step. */
export function* readDocument(
  db: Reader,
  { id: libraryId, name, writtenAt }: DocumentParts,
): Generator<void, LibraryDocument> {
  const records = yield* readRecords(db);
  const states = db.all<{ hash: string; kind: string; record: string; format: number; content: string }>(
    'SELECT hash, kind, record, format, content FROM state ORDER BY id',
  );
  return {
    stillroom: 'library',
    format: DOCUMENT_FORMAT,
    writtenAt,
    library: { id: libraryId, name },
    withheld: {},
    settings: readSettings(db),
    records,
    history: readHistories(db),
    states: states.map(({ content, ...state }) => ({
      ...state,
      content: JSON.parse(content) as Record<string, unknown>,
    })),
    versions: readExchangedVersions(db),
    batches: readExchangedBatches(db),
    issues: readIssues(db),
    numbers: db.all('SELECT name, last FROM sequence ORDER BY name'),
    attachments: namedOnce(attachmentsInUse(db)),
  };
}

/** Several records may show one file. */
function namedOnce(used: readonly { sha256: string; words: string }[]): LibraryDocument['attachments'] {
  const words = new Map<string, string>();
  for (const { sha256, words: of } of used) if (!words.has(sha256)) words.set(sha256, of);
  return [...words].map(([sha256, of]) => ({ sha256, of }));
}
