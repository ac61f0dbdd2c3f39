import { beforeEach, describe, expect, it } from 'vitest';
import { Engine } from '@db/library/sql/engine';
import { SqlError } from '@db/library/sql/sql-error';
import { problemOf } from './sample-library';

let engine: Engine;

beforeEach(async () => {
  engine = await Engine.open();
  engine.script(
    'CREATE TABLE p (id INTEGER PRIMARY KEY); CREATE TABLE t (a TEXT UNIQUE, b REAL CHECK (b < 10), p INTEGER REFERENCES p(id)) STRICT',
  );
});

describe('the engine', () => {
  it('reads rows as objects and the first row or undefined', () => {
    engine.run('INSERT INTO t (a, b) VALUES (?, ?)', 'x', 1.5);
    engine.run('INSERT INTO t (a, b) VALUES (?, ?)', 'y', null);
    expect(engine.all('SELECT a, b FROM t ORDER BY a')).toEqual([
      { a: 'x', b: 1.5 },
      { a: 'y', b: null },
    ]);
    expect(engine.get('SELECT a FROM t WHERE a = ?', 'z')).toBeUndefined();
    expect(engine.get("SELECT '?;:x' AS a -- ?\n FROM t WHERE a = ?", 'x')).toEqual({ a: '?;:x' });
  });

  it('keeps any text that SQLite can keep', () => {
    const text = 'Crème 🧴 “q.s.” \u0001 ' + 'x'.repeat(10_000);
    engine.run('INSERT INTO t (a) VALUES (?)', text);
    expect(engine.get('SELECT a FROM t')).toEqual({ a: text });
  });

  it('refuses text that would come back changed', async () => {
    await problemOf(() => engine.run('INSERT INTO t (a) VALUES (?)', 'a\0b'), 'invalid-input');
    await problemOf(() => engine.run('INSERT INTO t (a) VALUES (?)', 'a\ud800'), 'invalid-input');
  });

  it.each([
    ['too few values', 'INSERT INTO t (a, b) VALUES (?, ?)', ['x']],
    ['too many values', 'INSERT INTO t (a) VALUES (?)', ['x', 1]],
    ['NaN', 'INSERT INTO t (b) VALUES (?)', [NaN]],
    ['infinity', 'INSERT INTO t (b) VALUES (?)', [Infinity]],
    ['two statements', 'DELETE FROM t; DELETE FROM t', []],
    ['named parameters', 'INSERT INTO t (a) VALUES (:a)', ['x']],
    ['random values', 'INSERT INTO t (b) VALUES (random())', []],
    ['the clock', "INSERT INTO t (a) VALUES (datetime('now'))", []],
    ['a statement that ends the transaction', 'INSERT OR ROLLBACK INTO t (a) VALUES (?)', ['x']],
    ['a change of schema', 'DROP TABLE t', []],
    ['a pragma', 'PRAGMA foreign_keys = OFF', []],
    ['reading in place of a change', 'SELECT 1', []],
  ])('refuses %s as a bug', (_what, sql, values) => {
    expect(() => engine.run(sql, ...(values as (string | number)[]))).toThrow();
    expect(engine.all('SELECT * FROM t')).toEqual([]);
  });

  it('refuses changes on the reading side, however they are dressed', () => {
    expect(() => engine.all("INSERT INTO t (a) VALUES ('x') RETURNING a")).toThrow(/run\(\)/);
    expect(() => engine.get("WITH v AS (SELECT 'x' AS a) INSERT INTO t (a) SELECT a FROM v")).toThrow(
      /run\(\)/,
    );
    expect(engine.get('WITH v AS (SELECT 1 AS a) SELECT a FROM v')).toEqual({ a: 1 });
    engine.run("WITH v AS (SELECT 'x' AS a) INSERT INTO t (a) SELECT a FROM v");
    expect(engine.all('SELECT a FROM t')).toEqual([{ a: 'x' }]);
  });

  it.each([
    ['unique', "INSERT INTO t (a) VALUES ('x')"],
    ['check', 'INSERT INTO t (b) VALUES (11)'],
    ['foreign-key', 'INSERT INTO t (p) VALUES (99)'],
    ['constraint', "INSERT INTO t (b) VALUES ('much')"],
    ['sql', 'INSERT INTO nowhere VALUES (1)'],
  ])('names what was wrong: %s', (kind, sql) => {
    engine.run("INSERT INTO t (a) VALUES ('x')");
    try {
      engine.run(sql);
      expect.unreachable();
    } catch (error) {
      expect(error).toBeInstanceOf(SqlError);
      expect((error as SqlError).kind).toBe(kind);
    }
  });

  it('goes on after an export, foreign keys still on', () => {
    engine.run("INSERT INTO t (a) VALUES ('x')");
    engine.exportBytes();
    engine.run("INSERT INTO t (a) VALUES ('y')");
    expect(() => engine.run('INSERT INTO t (p) VALUES (99)')).toThrow(SqlError);
  });

  it('keeps going over more statements than it keeps prepared', () => {
    for (let n = 0; n < 900; n += 1) expect(engine.get(`SELECT ${n} AS n`)).toEqual({ n });
  });
});
