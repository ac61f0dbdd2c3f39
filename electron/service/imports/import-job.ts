import type { Outcome } from '@core/imports/plan-row';
import type { TableRow } from '@core/imports/row';
import type { Subject } from '@core/imports/subjects';
import { Problem } from '@core/problems/problem';
import type { Reader, Writer } from '@db/database';
import { openBytes } from '@db/library/file/library-bytes';
import type { LoggedStatement } from '@db/library/log/log-format';
import type { Engine } from '@db/library/sql/engine';
import { migrations } from '@db/migrations/list';
import type { Doing } from '@db/record/history';
import type { Kept } from '@db/record/record-table';
import { v7 } from 'uuid';
import { NotingWriter } from './noting-writer';
import { formulasTaker } from './subjects/formulas';
import { limitsTaker } from './subjects/limits';
import { materialsTaker } from './subjects/materials';
import { TableImport, type ImportParts } from './table-import';
import { takeBack, takeIn, type Taken } from './take-in';

export type ImportJob =
  | { kind: 'begin'; table: string; ours: Uint8Array; about: Subject; parts: ImportParts }
  | { kind: 'plan'; table: string; rows: TableRow[] }
  | { kind: 'take-in' | 'take-back'; table: string; ours: Uint8Array; doing: Doing }
  | { kind: 'done'; table: string }
  | { kind: 'end'; table: string };

/** What was written on a copy of the library: as the statements that did it where they are few, else as the whole. */
export type OnCopy = { noun: string } & Pick<Taken<Kept>, 'added' | 'changed' | 'now'> &
  ({ statements: LoggedStatement[] } | { bytes: Uint8Array });

export type ImportAnswer = Outcome[] | OnCopy | null;

interface Held {
  table: TableImport;
  /** The library as it was when the table came; gone once the table is written. */
  copy: Engine | null;
  /** What would stand in the library once the copy has taken its place. */
  next: Taken<Kept> | null;
}

/** How many tables are held: the last can be taken back. */
const MOST_HELD = 5;
/** How many of them hold a copy of the library, which may be large: one in each of two windows. */
const MOST_COPIES = 2;
const held = new Map<string, Held>();

/** A table of each kind, held as one of records that this module knows no more of. */
function tableOf(db: Reader, about: Subject, parts: ImportParts): TableImport {
  const as = <T>(table: T): TableImport => table as unknown as TableImport;
  switch (about) {
    case 'formulas':
      return as(new TableImport(parts.file, formulasTaker(db, v7)));
    case 'limits':
      return as(new TableImport(parts.file, limitsTaker(db)));
    case 'materials':
      return as(new TableImport(parts.file, materialsTaker(db, parts)));
  }
}

const openCopy = async (bytes: Uint8Array): Promise<Engine> =>
  (await openBytes(bytes, migrations.length, { known: true, given: true })).engine;

function heldOf(id: string): Held {
  const one = held.get(id);
  if (one) return one;
  throw new Problem({
    code: 'not-found',
    title: 'This table is no longer held here.',
    advice: 'Choose its file again. What was taken in stays taken in.',
  });
}

function end(id: string): null {
  held.get(id)?.copy?.close();
  held.delete(id);
  return null;
}

async function begin({
  table: id,
  ours,
  about,
  parts,
}: Extract<ImportJob, { kind: 'begin' }>): Promise<null> {
  const copy = await openCopy(ours);
  held.set(id, { table: tableOf(copy, about, parts), copy, next: null });
  for (const old of [...held.keys()].slice(0, -MOST_HELD)) end(old);
  const copies = [...held].filter(([, one]) => one.copy).map(([old]) => old);
  for (const old of copies.slice(0, -MOST_COPIES)) end(old);
  return null;
}

async function plan(id: string, rows: readonly TableRow[]): Promise<Outcome[]> {
  const { table, copy } = heldOf(id);
  if (copy) return table.plan(copy, rows);
  throw new Problem({
    code: 'conflict',
    title: 'This table is taken in already.',
    advice: 'Choose its file again to look at it once more.',
  });
}

async function write(
  id: string,
  ours: Uint8Array,
  work: (tx: Writer, table: TableImport) => Taken<Kept>,
): Promise<OnCopy> {
  const one = heldOf(id);
  const copy = await openCopy(ours);
  try {
    const tx = new NotingWriter(copy);
    copy.control('BEGIN');
    one.next = work(tx, one.table);
    copy.control('COMMIT');
    const { added, changed, now } = one.next;
    const told = { noun: one.table.taker.repository.noun.kind, added, changed, now };
    return tx.statements ? { ...told, statements: tx.statements } : { ...told, bytes: copy.exportBytes() };
  } finally {
    copy.close();
  }
}

/** What was written on the copy stands in the library by now. */
function done(id: string): null {
  const one = heldOf(id);
  if (one.next) one.table.written = one.next.written;
  one.next = null;
  one.copy?.close();
  one.copy = null;
  return null;
}

/** Does a part of the work of taking a table in, on a copy of the library, in this thread. @throws Problem */
export async function performImport(job: ImportJob): Promise<ImportAnswer> {
  switch (job.kind) {
    case 'begin':
      return begin(job);
    case 'plan':
      return plan(job.table, job.rows);
    case 'take-in':
      return write(job.table, job.ours, (tx, table) => takeIn(tx, table, job.doing, v7));
    case 'take-back':
      return write(job.table, job.ours, (tx, table) => takeBack(tx, table, job.doing));
    case 'done':
      return done(job.table);
    case 'end':
      return end(job.table);
  }
}
