import type { Fields } from '@core/record/field';
import type { Reader, SqlValue, Writer } from '../database';
import { columnsOf, type Row } from './columns';
import { contentReading, listTables, type ListRows, type ListTable } from './lists';

/** What every record has beside its content. */
export interface Kept {
  id: string;
  revision: number;
  createdAt: string;
  updatedAt: string;
}

/** Records as rows, plain: read in a few queries here, put together elsewhere, such as in a worker thread. */
export interface RecordRows {
  records: Row[];
  /** Of every table beside, by its ending, in order within each record. */
  lists: Record<string, Row[]>;
}

const OWN = ['id', 'revision', 'created_at', 'updated_at'];
/** SQLite takes 32,766 parameters; a few hundred at a time keep the process answering. */
const AT_ONCE = 500;

/** The present of a noun in typed tables of its own, read and written as its fields describe it. */
export class RecordTable<C extends Kept> {
  readonly #columns;
  readonly #lists: ListTable[];
  readonly #reading: ReturnType<typeof contentReading>;
  readonly #insert: string;
  readonly #update: string;

  /**
   * @param table the noun's table, by whose name those beside begin
   * @param parse validates what was read: another tool may have written to the file
   */
  constructor(
    readonly table: string,
    fields: Fields,
    readonly parse: (read: unknown) => C,
  ) {
    this.#columns = columnsOf(fields);
    this.#lists = listTables(fields);
    this.#reading = contentReading(fields);
    const names = [...OWN, ...this.#columns.map(({ name }) => name)];
    this.#insert = insertInto(table, names);
    this.#update = `UPDATE ${table} SET ${names.slice(1).map((name) => `${name} = ?`)} WHERE id = ?`;
  }

  /** The one with that id, or undefined. */
  read(db: Reader, id: string): C | undefined {
    return this.assemble(this.readRows(db, [id]))[0];
  }

  /** Those with these ids that exist, by id. */
  readMany(db: Reader, ids: Iterable<string>): Map<string, C> {
    const wanted = [...new Set(ids)];
    const found = new Map<string, C>();
    for (let at = 0; at < wanted.length; at += AT_ONCE)
      for (const one of this.assemble(this.readRows(db, wanted.slice(at, at + AT_ONCE))))
        found.set(one.id, one);
    // In the order asked for.
    return new Map(wanted.flatMap((id) => (found.has(id) ? [[id, found.get(id)!] as const] : [])));
  }

  /** The rows of those with these ids, in no order; at most a few hundred ids. */
  readRows(db: Reader, ids: readonly string[]): RecordRows {
    const marks = ids.map(() => '?').join(', ');
    const records = db.all<Row>(`SELECT * FROM ${this.table} WHERE id IN (${marks})`, ...ids);
    const lists = this.#lists.map(({ ending, order }) => [
      ending,
      db.all<Row>(
        `SELECT * FROM ${this.table}_${ending} WHERE ${this.table}_id IN (${marks}) ORDER BY ${this.table}_id, ${order}`,
        ...ids,
      ),
    ]);
    return { records, lists: Object.fromEntries(lists) as Record<string, Row[]> };
  }

  /** Puts records together from their rows. */
  assemble(rows: RecordRows): C[] {
    return this.unvalidated(rows).map((one) => this.parse(one));
  }

  /** Records as their rows say them: for whoever tells by something else that they are whole, or parses them then. */
  unvalidated({ records, lists }: RecordRows): Kept[] {
    const sorted = Object.entries(lists).map(([ending, rows]) => [ending, this.#byRecord(rows)] as const);
    return records.map((row) => {
      const own = sorted.map(([ending, rows]) => [ending, rows.get(row.id) ?? []] as const);
      return {
        id: row.id,
        revision: row.revision,
        createdAt: row.created_at,
        updatedAt: row.updated_at,
        ...this.#reading(row, Object.fromEntries(own) as ListRows),
      } as Kept;
    });
  }

  /** Adds many, some rows to a statement: a table of thousands comes in at once. */
  insertMany(tx: Writer, added: readonly C[]): void {
    const names = [...OWN, ...this.#columns.map(({ name }) => name)];
    insertRows(
      tx,
      this.table,
      names,
      added.map((one) => this.#own(one)),
    );
    for (const list of this.#lists) {
      const rows = added.flatMap((one) =>
        list.rows(contentOf(one)).map((row): SqlValue[] => [one.id, ...row]),
      );
      insertRows(tx, `${this.table}_${list.ending}`, [`${this.table}_id`, ...list.columns], rows);
    }
  }

  insert(tx: Writer, added: C): void {
    tx.run(this.#insert, ...this.#own(added));
    for (const list of this.#lists) this.#insertRows(tx, added.id, list, list.rows(contentOf(added)));
  }

  /** Rewrites one; a list that did not change is left alone, which keeps log records small. */
  update(tx: Writer, before: C, after: C): void {
    const [id, ...rest] = this.#own(after);
    tx.run(this.#update, ...rest, id ?? null);
    for (const list of this.#lists) {
      const now = list.rows(contentOf(after));
      if (fingerprint(list.rows(contentOf(before))) === fingerprint(now)) continue;
      tx.run(`DELETE FROM ${this.table}_${list.ending} WHERE ${this.table}_id = ?`, after.id);
      this.#insertRows(tx, after.id, list, now);
    }
  }

  /** Takes one away with its lists; the database refuses where something points at it. */
  remove(tx: Writer, id: string): void {
    tx.run(`DELETE FROM ${this.table} WHERE id = ?`, id);
  }

  #own(kept: C): SqlValue[] {
    const { id, revision, createdAt, updatedAt } = kept;
    return [id, revision, createdAt, updatedAt, ...this.#columns.map(({ write }) => write(contentOf(kept)))];
  }

  #insertRows(tx: Writer, id: string, { ending, columns }: ListTable, rows: SqlValue[][]): void {
    const sql = insertInto(`${this.table}_${ending}`, [`${this.table}_id`, ...columns]);
    for (const row of rows) tx.run(sql, id, ...row);
  }

  #byRecord(rows: readonly Row[]): Map<SqlValue | undefined, Row[]> {
    const found = new Map<SqlValue | undefined, Row[]>();
    for (const row of rows) {
      const of = row[`${this.table}_id`];
      const list = found.get(of);
      if (list) list.push(row);
      else found.set(of, [row]);
    }
    return found;
  }
}

/** So many values a statement takes, at most: its text is kept once in the log for all its rows. */
const MOST_VALUES = 2_000;

function insertRows(
  tx: Writer,
  table: string,
  columns: readonly string[],
  rows: readonly SqlValue[][],
): void {
  const together = Math.max(1, Math.floor(MOST_VALUES / columns.length));
  const marks = `(${columns.map(() => '?').join(', ')})`;
  const begin = `INSERT INTO ${table} (${columns.join(', ')}) VALUES `;
  const insert = (count: number): string => begin + Array.from({ length: count }, () => marks).join(', ');
  // Made once: it is looked up at every step, and is long.
  const full = insert(together);
  for (let at = 0; at < rows.length; at += together) {
    const some = rows.slice(at, at + together);
    const values: SqlValue[] = [];
    for (const row of some) for (const value of row) values.push(value);
    tx.run(some.length === together ? full : insert(some.length), ...values);
  }
}

function insertInto(table: string, columns: readonly string[]): string {
  return `INSERT INTO ${table} (${columns.join(', ')}) VALUES (${columns.map(() => '?').join(', ')})`;
}

function fingerprint(rows: SqlValue[][]): string {
  return JSON.stringify(rows);
}

function contentOf(kept: object): Record<string, unknown> {
  return kept as Record<string, unknown>;
}
