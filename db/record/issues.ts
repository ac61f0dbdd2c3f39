import type { Noun } from '@core/record/noun';
import type { Reader, Writer } from '../database';
import type { Doing } from './history';
import type { Kept } from './record-table';
import { putState, stateOf } from './state';

interface Issue {
  n: number;
  hash: string;
}

/** A state that was issued on paper, by its hash. */
interface IssueOf extends Pick<Doing, 'at' | 'by'> {
  kind: string;
  record: string;
  n: number;
  state: string;
}

/** The last by its time: one of another library may have come under a later number, since its own was taken here. */
function lastIssue(db: Reader, kind: string, record: string): Issue | undefined {
  return db.get<Issue>(
    `SELECT i.n, s.hash FROM issue i JOIN state s ON s.id = i.state
     WHERE i.kind = ? AND i.record = ? ORDER BY i.at DESC, i.n DESC LIMIT 1`,
    kind,
    record,
  );
}

/** The first number that no issue of a record bears, of any library that was met. */
export function nextIssue(db: Reader, kind: string, record: string): number {
  const [last] = db.all<{ n: number | null }>(
    'SELECT max(n) AS n FROM issue WHERE kind = ? AND record = ?',
    ...[kind, record],
  );
  return (last?.n ?? 0) + 1;
}

/** Every issue, by record and number, with the hash of the state that was issued. */
export function readIssues(db: Reader): IssueOf[] {
  return db.all<IssueOf>(`${ISSUES} ORDER BY i.kind, i.record, i.n`);
}

const ISSUES = `SELECT i.kind, i.record, i.n, s.hash AS state, i.at, i.by FROM issue i JOIN state s ON s.id = i.state`;

/** The issues of one record, by their numbers. */
export function readIssuesOf(db: Reader, kind: string, record: string): IssueOf[] {
  return db.all<IssueOf>(`${ISSUES} WHERE i.kind = ? AND i.record = ? ORDER BY i.n`, kind, record);
}

/** Writes an issue of a state that is kept already, by its number in this library. */
export function insertIssue(
  tx: Writer,
  { kind, record, n, at, by }: Omit<IssueOf, 'state'>,
  state: number,
): void {
  tx.run(
    'INSERT INTO issue (kind, record, n, state, at, by) VALUES (?, ?, ?, ?, ?, ?)',
    ...[kind, record, n, state, at, by],
  );
}

/** The number under which a record was issued as it is; null where it changed since its last issue, or never was. */
export function issueOf<C extends object>(db: Reader, noun: Noun<C>, record: Kept & C): number | null {
  const last = lastIssue(db, noun.kind, record.id);
  return last?.hash === stateOf(noun, record.id, noun.read(record)).hash ? last.n : null;
}

/**
 * Issues a record as it is: under the number of its last issue where nothing changed since, else under the next.
 * To be called in a transaction.
 */
export function issueNow<C extends object>(
  tx: Writer,
  noun: Noun<C>,
  record: Kept & C,
  { at, by }: Pick<Doing, 'at' | 'by'>,
): number {
  const known = issueOf(tx, noun, record);
  if (known !== null) return known;
  const n = nextIssue(tx, noun.kind, record.id);
  const state = putState(tx, noun, record.id, noun.read(record));
  insertIssue(tx, { kind: noun.kind, record: record.id, n, at, by }, state);
  return n;
}
