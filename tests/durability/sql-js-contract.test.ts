import initSqlJs from 'sql.js';
import { handedOver } from '@db/library/sql/handed-over';
import { beforeAll, describe, expect, it } from 'vitest';

// What the library relies on in sql.js, which changed under the same names at 1.15.2. Should one of these fail
// after an upgrade, read what changed before touching anything else.
let SQL: Awaited<ReturnType<typeof initSqlJs>>;

beforeAll(async () => {
  SQL = await initSqlJs();
});

function fresh() {
  const db = new SQL.Database();
  db.run('PRAGMA foreign_keys = ON; CREATE TABLE t (a INTEGER PRIMARY KEY, b)');
  return db;
}

describe('sql.js after export()', () => {
  it('keeps pragmas', () => {
    const db = fresh();
    db.run('PRAGMA recursive_triggers = ON');
    db.export();
    expect(db.exec('PRAGMA foreign_keys')[0]?.values).toEqual([[1]]);
    expect(db.exec('PRAGMA recursive_triggers')[0]?.values).toEqual([[1]]);
  });

  it('keeps prepared statements, temporary tables and last_insert_rowid', () => {
    const db = fresh();
    const insert = db.prepare('INSERT INTO t (b) VALUES (?)');
    insert.run(['x']);
    db.run('CREATE TEMP TABLE passing (a)');
    db.export();
    insert.run(['y']);
    expect(db.exec('SELECT count(*) FROM t, (SELECT count(*) FROM passing)')[0]?.values).toEqual([[2]]);
    expect(db.exec('SELECT last_insert_rowid()')[0]?.values).toEqual([[2]]);
  });

  it('throws inside a transaction, which goes on', () => {
    const db = fresh();
    db.run('BEGIN');
    db.run("INSERT INTO t (b) VALUES ('x')");
    expect(() => db.export()).toThrow();
    db.run('COMMIT');
    expect(db.exec('SELECT count(*) FROM t')[0]?.values).toEqual([[1]]);
  });

  it('gives whole pages even when nothing was ever written, and the same bytes twice', () => {
    expect(new SQL.Database().export().length).toBe(4096);
    const db = fresh();
    expect(Buffer.from(db.export()).equals(Buffer.from(db.export()))).toBe(true);
  });

  it('throws an Error once closed', () => {
    const db = fresh();
    db.close();
    expect(() => db.export()).toThrow(Error);
  });

  it('keeps user_version and application_id', () => {
    const db = fresh();
    db.run('PRAGMA user_version = 7; PRAGMA application_id = 42');
    const again = new SQL.Database(db.export());
    expect(again.exec('PRAGMA user_version')[0]?.values).toEqual([[7]]);
    expect(again.exec('PRAGMA application_id')[0]?.values).toEqual([[42]]);
  });
});

describe('sql.js when opening', () => {
  it('takes zero bytes for an empty database, and junk without a word', () => {
    expect(new SQL.Database(new Uint8Array()).exec('SELECT count(*) FROM sqlite_schema')[0]?.values).toEqual([
      [0],
    ]);
    const junk = new SQL.Database(new Uint8Array(8192).fill(65));
    expect(() => junk.exec('SELECT * FROM sqlite_schema')).toThrow(/not a database/);
  });

  it('copies a Uint8Array but writes into a Buffer, so that none may be handed in', () => {
    const file = fresh().export();
    const array = new Uint8Array(file);
    new SQL.Database(array).run("INSERT INTO t (b) VALUES ('x')");
    expect(Buffer.from(array).equals(Buffer.from(file))).toBe(true);
    const buffer = Buffer.from(file);
    new SQL.Database(buffer).run("INSERT INTO t (b) VALUES ('x')");
    expect(buffer.equals(Buffer.from(file))).toBe(false);
  });

  it('works in memory that is handed over, grows into what lies behind it, and beyond', () => {
    const file = fresh().export();
    const memory = new SharedArrayBuffer(file.length + 64 * 1024);
    const bytes = new Uint8Array(memory, 0, file.length);
    bytes.set(file);
    const db = new SQL.Database(handedOver(bytes));
    const add = (count: number) => {
      for (let i = 0; i < count; i++) db.run('INSERT INTO t (b) VALUES (?)', ['x'.repeat(3000)]);
    };
    add(10);
    const behind = Buffer.from(new Uint8Array(memory, file.length));
    expect(behind.includes('x'.repeat(3000))).toBe(true);
    add(100);
    expect(db.exec('SELECT count(*), sum(length(b)) FROM t')[0]?.values).toEqual([[110, 330_000]]);
    expect(db.exec('PRAGMA integrity_check')[0]?.values).toEqual([['ok']]);
    const again = new SQL.Database(db.export());
    expect(again.exec('SELECT count(*) FROM t')[0]?.values).toEqual([[110]]);
  });
});

describe('sql.js when running', () => {
  it('stops at the first error of several statements and keeps what came before', () => {
    const db = fresh();
    expect(() => db.run("INSERT INTO t (b) VALUES ('x'); INSERT INTO nowhere VALUES (1)")).toThrow();
    expect(db.exec('SELECT count(*) FROM t')[0]?.values).toEqual([[1]]);
  });

  it('binds NaN and missing values as NULL without a word', () => {
    const db = fresh();
    db.run('INSERT INTO t (a, b) VALUES (?, ?)', [1, NaN]);
    db.run('INSERT INTO t (a, b) VALUES (?, ?)', [2]);
    expect(db.exec('SELECT b FROM t')[0]?.values).toEqual([[null], [null]]);
  });

  it('rolls user_version back with the transaction', () => {
    const db = fresh();
    db.run('BEGIN; PRAGMA user_version = 3; ROLLBACK');
    expect(db.exec('PRAGMA user_version')[0]?.values).toEqual([[0]]);
  });

  it('has FTS4 and STRICT tables', () => {
    const db = fresh();
    db.run('CREATE VIRTUAL TABLE f USING fts4(x); CREATE TABLE s (a INTEGER) STRICT');
    expect(() => db.run("INSERT INTO s VALUES ('x')")).toThrow(/cannot store/);
  });
});
