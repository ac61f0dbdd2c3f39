import type { Noun } from '@core/record/noun';
import type { Reader, Writer } from '../database';
import type { Kept } from './record-table';
import { putKept, readState, stateOf, type StateRow } from './state';

/** Who changed a record, when, and why beyond the change itself. */
export interface Doing {
  by: string;
  /** ISO 8601. */
  at: string;
  why: string;
  /** The library in which it was done. */
  library: string;
}

/** A state that a record has been in, and who left it so. */
export interface HistoryEntry {
  n: number;
  hash: string;
  at: string;
  by: string;
  library: string;
  why: string;
}

/** Edits of one author that follow each other this closely are one sitting, but none lasts longer than that. */
export const PAUSE_MS = 20 * 60_000;
const LONGEST_MS = 4 * 3_600_000;

interface Sitting {
  by: string;
  began: string;
  why: string;
  library: string;
}

const SITTING = 'SELECT by, began, why, library FROM sitting WHERE kind = ? AND record = ?';

/** Whether a change belongs to the sitting that is going on: time that seems to run backwards ends it. */
function continues(sitting: Sitting, last: string, { by, at, why }: Doing): boolean {
  if (sitting.by !== by || why !== '') return false;
  const now = Date.parse(at);
  const since = [now - Date.parse(last), now - Date.parse(sitting.began)] as const;
  return since[0] >= 0 && since[0] <= PAUSE_MS && since[1] >= 0 && since[1] <= LONGEST_MS;
}

/** Notes who begins a record. */
export function beginHistory(tx: Writer, kind: string, record: string, doing: Doing): void {
  tx.run(
    `INSERT INTO sitting (kind, record, by, began, why, library) VALUES (?, ?, ?, ?, ?, ?)
     ON CONFLICT (kind, record) DO UPDATE SET by = excluded.by, began = excluded.began, why = excluded.why,
       library = excluded.library`,
    ...[kind, record, doing.by, doing.at, doing.why, doing.library],
  );
}

/** So many records begin in one statement. */
const BEGUN_TOGETHER = 300;

/** Notes who begins many records that were never there before. */
export function beginHistories(tx: Writer, kind: string, records: readonly string[], doing: Doing): void {
  const { by, at, why, library } = doing;
  for (let from = 0; from < records.length; from += BEGUN_TOGETHER) {
    const some = records.slice(from, from + BEGUN_TOGETHER);
    const marks = some.map(() => '(?, ?, ?, ?, ?, ?)').join(', ');
    tx.run(
      `INSERT INTO sitting (kind, record, by, began, why, library) VALUES ${marks}`,
      ...some.flatMap((record) => [kind, record, by, at, why, library]),
    );
  }
}

/** The newest entry of a record's history, or undefined. */
export function lastEntry(db: Reader, kind: string, record: string): HistoryEntry | undefined {
  return db.get<HistoryEntry>(`${ENTRIES} ORDER BY h.n DESC LIMIT 1`, kind, record);
}

const ENTRIES = `SELECT h.n, s.hash, h.at, h.by, h.library, h.why FROM history h JOIN state s ON s.id = h.state
  WHERE h.kind = ? AND h.record = ?`;

/** Adds a state to a record's history, unless it is the one that stands there last. */
function enter<C extends object>(tx: Writer, noun: Noun<C>, before: Kept & C, sitting?: Sitting): void {
  const content = noun.read(before);
  const last = lastEntry(tx, noun.kind, before.id);
  const { hash, ...kept } = stateOf(noun, before.id, content);
  if (last?.hash === hash) return;
  const state = putKept(tx, kept, hash);
  tx.run(
    'INSERT INTO history (kind, record, n, state, at, by, library, why) VALUES (?, ?, ?, ?, ?, ?, ?, ?)',
    ...[noun.kind, before.id, (last?.n ?? 0) + 1, state, before.updatedAt],
    ...[sitting?.by ?? '', sitting?.library ?? '', sitting?.why ?? ''],
  );
}

/**
 * Whether a version was recorded since: by what stood then it is judged later. Asked of all, since the last that came in
 * from another library may be an old one.
 */
function versionRecordedSince(tx: Writer, at: string): boolean {
  return tx.get('SELECT 1 AS found FROM formula_version WHERE recorded_at >= ? LIMIT 1', at) !== undefined;
}

/** Adds a state, by its number in this library, to the end of a record's history. */
export function appendState(
  tx: Writer,
  kind: string,
  record: string,
  state: number,
  { at, by, library, why }: Doing,
): void {
  const last = tx.get<{ n: number | null }>(
    'SELECT max(n) AS n FROM history WHERE kind = ? AND record = ?',
    ...[kind, record],
  );
  tx.run(
    'INSERT INTO history (kind, record, n, state, at, by, library, why) VALUES (?, ?, ?, ?, ?, ?, ?, ?)',
    ...[kind, record, (last?.n ?? 0) + 1, state, at, by, library, why],
  );
}

/** Adds what a record is about to leave to its history, whichever sitting goes on. */
export function keepLeft<C extends object>(tx: Writer, noun: Noun<C>, before: Kept & C): void {
  enter(tx, noun, before, tx.get<Sitting>(SITTING, noun.kind, before.id));
}

/**
 * To be called in the transaction that changes a record, with what it was before: keeps that state where a sitting
 * ends with it, and says who changes it now.
 */
export function keepBefore<C extends object>(
  tx: Writer,
  noun: Noun<C>,
  before: Kept & C,
  doing: Doing,
): void {
  const sitting = tx.get<Sitting>(SITTING, noun.kind, before.id);
  const judges = noun.judgesVersions === true && versionRecordedSince(tx, before.updatedAt);
  if (sitting && !judges && continues(sitting, before.updatedAt, doing)) return;
  enter(tx, noun, before, sitting);
  beginHistory(tx, noun.kind, before.id, doing);
}

/** To be called in the transaction that deletes a record: what it was stays in its history, and can be brought back. */
export function keepDeleted<C extends object>(
  tx: Writer,
  noun: Noun<C>,
  before: Kept & C,
  doing: Doing,
): void {
  enter(tx, noun, before, tx.get<Sitting>(SITTING, noun.kind, before.id));
  beginHistory(tx, noun.kind, before.id, { ...doing, why: 'deleted' });
}

/** The states that a record has left, oldest first; the present one is not among them. */
export function readHistory(db: Reader, kind: string, record: string): HistoryEntry[] {
  return db.all<HistoryEntry>(`${ENTRIES} ORDER BY h.n`, kind, record);
}

/** Who last changed a record, and why; undefined for one that nobody has touched since it came. */
export function presentDoing(db: Reader, kind: string, record: string): Omit<Doing, 'at'> | undefined {
  return db.get<Sitting>(SITTING, kind, record);
}

/** What an entry of a record's history says, in today's format; undefined when there is none of that number. */
export function readEntry<C extends object>(
  db: Reader,
  noun: Noun<C>,
  record: string,
  n: number,
): C | undefined {
  const row = db.get<StateRow>(
    `SELECT s.id, s.hash, s.kind, s.record, s.format, s.content FROM history h JOIN state s ON s.id = h.state
     WHERE h.kind = ? AND h.record = ? AND h.n = ?`,
    ...[noun.kind, record, n],
  );
  return row && readState(noun, row);
}

/** The records of a kind that were deleted, each with the entry that holds what it was, and who deleted it. */
export function deletedRecords(
  db: Reader,
  kind: string,
): { record: string; n: number; at: string; by: string }[] {
  return db.all(
    `SELECT s.record, max(h.n) AS n, s.began AS at, s.by FROM sitting s
     JOIN history h ON h.kind = s.kind AND h.record = s.record
     WHERE s.kind = ? AND s.why = 'deleted' GROUP BY s.record ORDER BY s.began DESC`,
    kind,
  );
}
