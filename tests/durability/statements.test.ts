import { describe, expect, it } from 'vitest';
import { readSql } from '@db/library/sql/sql-text';
import { Engine } from '@db/library/sql/engine';

/* What a statement may say: it is repeated from the log, on another day, and must come to the same. */

describe('a statement of a repository', () => {
  it.each<[string, string, number]>([
    ['SELECT 1', 'SELECT', 0],
    ['  insert into t values (?, ?)', 'INSERT', 2],
    ["UPDATE t SET a = 'really?' WHERE b = ? -- and c = ?", 'UPDATE', 1],
    ['SELECT "odd ? name", [other ?], `third ?` FROM t WHERE a = ?', 'SELECT', 1],
    ["SELECT 'it''s; done' /* ; ?1 :name */ FROM t;", 'SELECT', 0],
    ["SELECT value ->> '$.a' FROM json_each(?)", 'SELECT', 1],
    ["SELECT strftime('%Y', made_at), date(made_at), datetime(?) FROM t", 'SELECT', 1],
    ['WITH a AS (SELECT 1) DELETE FROM t', 'WITH', 0],
    ['/* nothing */', '', 0],
  ])('is known by its verb and its parameters: %s', (sql, verb, parameters) => {
    expect(readSql(sql)).toEqual({ verb, parameters });
  });

  it.each([
    ['two at once', 'DELETE FROM t; DELETE FROM u', /One statement/],
    ['two, with a comment between', 'DELETE FROM t; -- then\nDELETE FROM u', /One statement/],
    ['a numbered parameter', 'SELECT ?1', /Parameters/],
    ['a named parameter', 'SELECT :name', /Parameters/],
    ['a named parameter of another kind', 'SELECT @name, $other', /Parameters/],
    ['chance', 'INSERT INTO t VALUES (random())', /could not repeat/],
    ['chance in capitals', 'INSERT INTO t VALUES (RandomBlob (4))', /could not repeat/],
    ['the present moment', "INSERT INTO t VALUES (datetime('now'))", /could not repeat/],
    ['the present moment, unsaid', 'INSERT INTO t VALUES (datetime())', /could not repeat/],
    ['the present day, unsaid', 'INSERT INTO t VALUES (date ( ))', /could not repeat/],
    ['the seconds of now', 'INSERT INTO t VALUES (unixepoch())', /could not repeat/],
    ['the year of now', "INSERT INTO t VALUES (strftime('%Y'))", /could not repeat/],
    ['the day of now', 'INSERT INTO t VALUES (julianday())', /could not repeat/],
    ['a keyword of time', 'INSERT INTO t VALUES (CURRENT_TIMESTAMP)', /could not repeat/],
    ['what the connection counted', 'SELECT changes()', /could not repeat/],
    ['all that the connection counted', 'SELECT total_changes()', /could not repeat/],
    ['the last row', 'SELECT last_insert_rowid()', /could not repeat/],
    ['an end of the transaction', 'INSERT OR ROLLBACK INTO t VALUES (1)', /end the transaction/],
  ])('is refused where it holds %s', (_, sql, why) => {
    expect(() => readSql(sql)).toThrow(why);
  });

  it('that is not refused for its time gives the same at another time', async () => {
    // SQLite itself: with a time given these functions say nothing of now.
    const engine = await Engine.open();
    const said = engine.get("SELECT date('2026-02-28', '+1 day') AS day, unixepoch('1970-01-02') AS seconds");
    expect(said).toEqual({ day: '2026-03-01', seconds: 86_400 });
    engine.close();
  });
});
