/** What can be told from a statement's text alone, before SQLite sees it. */
export interface SqlFacts {
  /** The first word, in capitals. */
  verb: string;
  /** How many `?` it has. */
  parameters: number;
}

const QUOTED_OR_COMMENT =
  /'(?:[^']|'')*'|"(?:[^"]|"")*"|`(?:[^`]|``)*`|\[[^\]]*\]|--[^\n]*|\/\*[\s\S]*?(?:\*\/|$)/g;
/** Functions of time without a time take the present one: https://www.sqlite.org/lang_datefunc.html */
export const PRESENT_TIME =
  /\bcurrent_(?:date|time|timestamp)\b|'now'|\b(?:date|time|datetime|julianday|unixepoch)\s*\(\s*\)|\bstrftime\s*\(\s*'[^']*'\s*\)/i;
const UNREPEATABLE = /\brandom(?:blob)?\s*\(|\blast_insert_rowid\b|\b(?:total_)?changes\s*\(/i;
/** These end the transaction behind our back. */
const ENDS_TRANSACTION = /\bor\s+rollback\b/i;

/**
 * Reads a statement's verb and parameter count, and refuses what the library cannot replay or count:
 * several statements in one, named or numbered parameters, values that SQL makes up itself.
 * Throws an ordinary error: each of these is a bug in the caller.
 */
export function readSql(sql: string): SqlFacts {
  const bare = sql.replace(QUOTED_OR_COMMENT, (part) =>
    part.startsWith('-') || part.startsWith('/') ? ' ' : '_',
  );
  if (/;\s*\S/.test(bare)) throw new Error(`One statement at a time: ${sql}`);
  if (/\?\d|[:@$]\w/.test(bare)) throw new Error(`Parameters are written as plain "?": ${sql}`);
  if (UNREPEATABLE.test(sql) || PRESENT_TIME.test(sql))
    throw new Error(`A replay could not repeat this; bind the value instead: ${sql}`);
  if (ENDS_TRANSACTION.test(bare)) throw new Error(`"OR ROLLBACK" would end the transaction early: ${sql}`);
  return {
    verb: /^\s*([a-z]+)/i.exec(bare)?.[1]?.toUpperCase() ?? '',
    parameters: bare.split('?').length - 1,
  };
}
