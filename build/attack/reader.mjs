// Reads a library from the outside: the file by the sqlite3 program, the log by the few lines below, which follow the
// description of its format and share no code with Stillroom.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/** What the sqlite3 program says of the file; undefined where that program is not installed. */
export function readFile(folder, sql) {
  const asked = spawnSync('sqlite3', ['-readonly', join(folder, 'library.sqlite'), sql], {
    encoding: 'utf8',
  });
  if (asked.error?.code === 'ENOENT') return undefined;
  return asked.status === 0 ? asked.stdout.trim() : `failed: ${asked.stderr.trim()}`;
}

const check = (before, text) => createHash('sha256').update(before).update(text).digest('hex').slice(0, 32);

/** The transactions of a log whose checks hold one after another, up to the first that does not. */
export function readLog(bytes) {
  const text = bytes.toString('utf8').replace(/\0[\s\S]*$/, '');
  const [first = '', ...lines] = text.split('\n');
  const [, , , sequence, chain] = first.split(' ');
  let at = { sequence: Number(sequence), chain };
  const transactions = [];
  for (const line of lines) {
    if (line.startsWith('file ')) continue;
    const [size, found] = line.split(' ', 2);
    const json = line.slice(size.length + 34);
    if (found !== check(at.chain, json)) break;
    at = { sequence: at.sequence + 1, chain: found };
    transactions.push({ ...JSON.parse(json), sequence: at.sequence });
  }
  return transactions;
}

/** The numbers of the edits in the file or the log, wherever an opener that was killed left the log. */
export function readRows(folder) {
  const inFile = readFile(folder, 'SELECT n FROM edit');
  if (inFile === undefined) return undefined;
  const rows = new Set(inFile === '' ? [] : inFile.split('\n').map(Number));
  const logs = readdirSync(folder).filter((name) => name === 'library.log' || name.endsWith('.taken'));
  for (const name of logs.filter(
    (each) => !each.startsWith('.library.lock') && existsSync(join(folder, each)),
  ))
    for (const { do: statements } of readLog(readFileSync(join(folder, name))))
      for (const [sql, n] of statements) if (sql.startsWith('INSERT INTO edit')) rows.add(n);
  return rows;
}
