import { createHash } from 'node:crypto';
import { formatOf, keptText, liftState, unreadableState, type Noun } from '@core/record/noun';
import type { Reader, Writer } from '../database';

/** A state: what a record was, once, known by the hash of what it says. */
export interface StateRow {
  id: number;
  hash: string;
  kind: string;
  record: string;
  format: number;
  content: string;
}

/** SHA-256 of a state's kind, format, record and canonical content: the same everywhere, and of nothing else. */
export function hashOfState({ kind, format, record, content }: Omit<StateRow, 'id' | 'hash'>): string {
  return createHash('sha256').update(`${kind}\n${format}\n${record}\n${content}`).digest('hex');
}

/** A record's content as a state of today's format, with the hash that it has, or would have. */
export function stateOf<C extends object>(noun: Noun<C>, record: string, content: C): Omit<StateRow, 'id'> {
  const { kind, fields } = noun;
  const format = formatOf(noun as Noun<never>);
  const kept = { kind, format, record, content: keptText(fields, content) };
  return { ...kept, hash: hashOfState(kept) };
}

/** Keeps a state, once however often it is kept. Returns its number in this library. */
export function putState<C extends object>(tx: Writer, noun: Noun<C>, record: string, content: C): number {
  const { hash, ...kept } = stateOf(noun, record, content);
  return putKept(tx, kept, hash);
}

/** Keeps a state that is at hand as text, such as one that an earlier schema held. */
export function putKept(
  tx: Writer,
  kept: Omit<StateRow, 'id' | 'hash'>,
  hash: string = hashOfState(kept),
): number {
  const known = tx.get<{ id: number }>('SELECT id FROM state WHERE hash = ?', hash);
  if (known) return known.id;
  const id = (tx.get<{ last: number | null }>('SELECT max(id) AS last FROM state')?.last ?? 0) + 1;
  tx.run(
    'INSERT INTO state (id, hash, kind, record, format, content) VALUES (?, ?, ?, ?, ?, ?)',
    ...[id, hash, kept.kind, kept.record, kept.format, kept.content],
  );
  return id;
}

/**
 * What a state says, in today's format.
 * @throws Problem library-damaged where it is not what was kept, library-newer for a format from the future
 */
export function readState<C extends object>(noun: Noun<C>, row: StateRow): C {
  if (hashOfState(row) !== row.hash || row.kind !== noun.kind)
    throw unreadableState(noun.name, { kind: row.kind, record: row.record, hash: row.hash });
  return liftState(noun, row.format, row.content);
}

/** The state with that number, or undefined. */
export function stateRow(db: Reader, id: number): StateRow | undefined {
  return db.get<StateRow>('SELECT id, hash, kind, record, format, content FROM state WHERE id = ?', id);
}
