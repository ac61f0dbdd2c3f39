import type { Noun } from '@core/record/noun';
import type { Reader, Writer } from '../database';
import type { Doing } from './history';
import type { Kept } from './record-table';
import { putState, stateOf } from './state';

interface Issue {
  n: number;
  hash: string;
}

function lastIssue(db: Reader, kind: string, record: string): Issue | undefined {
  return db.get<Issue>(
    `SELECT i.n, s.hash FROM issue i JOIN state s ON s.id = i.state
     WHERE i.kind = ? AND i.record = ? ORDER BY i.n DESC LIMIT 1`,
    kind,
    record,
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
  const n = (lastIssue(tx, noun.kind, record.id)?.n ?? 0) + 1;
  tx.run(
    'INSERT INTO issue (kind, record, n, state, at, by) VALUES (?, ?, ?, ?, ?, ?)',
    ...[noun.kind, record.id, n, putState(tx, noun, record.id, noun.read(record)), at, by],
  );
  return n;
}
