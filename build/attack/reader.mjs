// Reads a library from the outside: the file by the sqlite3 program, the log by the few lines below, which follow the
// description of its format and share no code with Stillroom. What the log adds, sqlite3 itself adds to its own copy.
import { spawn, spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';

const FILE = 'library.sqlite';

/** Whether the sqlite3 program is here to ask. */
export const hasSqlite3 = spawnSync('sqlite3', ['-version']).error === undefined;

/** One sqlite3 program that is asked for one thing after another; a broken one is replaced. */
class Sqlite3 {
  #child;
  #heard = '';
  #tell = () => undefined;

  stop() {
    this.#child?.stdin.end();
    this.#child = undefined;
  }

  /** What it answers to a script. Throws what it says is wrong. */
  async ask(script) {
    this.#child ??= this.#start();
    this.#heard = '';
    this.#child.stdin.write(`${script}\n.print ${END}\n`);
    while (!this.#heard.endsWith(`${END}\n`) && this.#child) await new Promise((done) => (this.#tell = done));
    const said = this.#heard.slice(0, -END.length - 1).trim();
    const wrong = /^(?:Parse e|Runtime e|E)rror.*/im.exec(said);
    if (!wrong && this.#child) return said;
    this.stop();
    throw new Error(`sqlite3: ${wrong?.[0] ?? said}`);
  }

  #start() {
    // What it says is wrong comes in its place among what it answers.
    const child = spawn('sh', ['-c', 'exec sqlite3 -batch :memory: 2>&1'], {
      stdio: ['pipe', 'pipe', 'inherit'],
    });
    child.stdout.setEncoding('utf8').on('data', (text) => {
      this.#heard += text;
      this.#tell();
    });
    child.stdin.on('error', () => undefined);
    // What goes with a deleted record goes by the tables' own rules, as it does where the log was written.
    child.stdin.write('PRAGMA foreign_keys = ON;\n');
    child.on('close', () => {
      if (this.#child === child) this.#child = undefined;
      this.#tell();
    });
    return child;
  }
}

const END = '-- end of the answer --';
const sqlite3 = new Sqlite3();

/** Lets the sqlite3 program go. */
export const stopReading = () => sqlite3.stop();

/** What the sqlite3 program says of a file, of which it reads a copy that stays until the next. */
function restoreAndAsk(folder, sql, name) {
  return sqlite3.ask(`.restore ${quoted(join(folder, name))}\n${sql};`);
}

let turn = Promise.resolve();

/** One library after another: what was read last must still be there when its log is added. */
function inTurn(work) {
  const done = turn.then(work);
  turn = done.then(
    () => undefined,
    () => undefined,
  );
  return done;
}

/** What the sqlite3 program says of one file alone. */
export const readFile = (folder, sql, name = FILE) => inTurn(() => restoreAndAsk(folder, sql, name));

const check = (before, text) => createHash('sha256').update(before).update(text).digest('hex').slice(0, 32);

/** The transactions of a log whose checks hold one after another, up to the first that does not, and where it starts. */
export function readLog(bytes) {
  const text = bytes.toString('utf8').replace(/\0[\s\S]*$/, '');
  const [first = '', ...lines] = text.split('\n');
  const [, , library, sequence, chain] = first.split(' ');
  const start = { sequence: Number(sequence), chain };
  let at = start;
  const transactions = [];
  for (const line of lines) {
    if (line.startsWith('file ')) continue;
    const [size, found] = line.split(' ', 2);
    const json = line.slice(size.length + 34);
    if (found !== check(at.chain, json)) break;
    at = { sequence: at.sequence + 1, chain: found };
    transactions.push({ ...JSON.parse(json), ...at });
  }
  return { library, start, transactions };
}

/** The log under its name, or where an opener that was killed left it. */
function logOf(folder) {
  const path = join(folder, 'library.log');
  if (existsSync(path)) return readLog(readFileSync(path));
  const left = readdirSync(folder)
    .filter((name) => name.startsWith('.library.log.') && name.endsWith('.taken'))
    .map((name) => join(folder, name))
    .sort((a, b) => statSync(b).mtimeMs - statSync(a).mtimeMs);
  return left[0] === undefined ? undefined : readLog(readFileSync(left[0]));
}

function quoted(value) {
  if (value === null) return 'NULL';
  return typeof value === 'number' ? String(value) : `'${value.replaceAll("'", "''")}'`;
}

/** A logged statement with its values put in. */
function asSql([sql, ...values]) {
  let next = 0;
  return `${sql.replace(/'(?:[^']|'')*'|\?/g, (found) => (found === '?' ? quoted(values[next++]) : found))};`;
}

/** The changes of the log that the file has not; throws when the two do not belong together. */
function beyond(meta, log) {
  if (!log) return [];
  const [id, sequence, chain] = meta.split('|');
  if (log.library !== id) throw new Error('the log belongs to another library');
  if (log.start.sequence > Number(sequence)) throw new Error('the log starts after the file ends');
  const meeting = [log.start, ...log.transactions].find((at) => at.sequence === Number(sequence));
  if (meeting && meeting.chain !== chain) throw new Error('the log goes on from another state than the file');
  return log.transactions.filter((each) => each.sequence > Number(sequence));
}

const WHOLE =
  'PRAGMA integrity_check; PRAGMA foreign_key_check; SELECT id, sequence, chain FROM library_meta';
const EDITS = `SELECT json_object(
  'check', (SELECT group_concat(integrity_check) FROM pragma_integrity_check),
  'edits', (SELECT json_group_array(json_array(n, text, half)) FROM (SELECT * FROM edit ORDER BY n)))`;

/**
 * Runs a query that answers JSON over file and log together, or over another file, such as a backup, alone.
 * @throws {Error} when sqlite3 finds the file broken, or file and log do not belong together
 */
export const readBoth = (folder, query, name = FILE) => inTurn(() => readBothNow(folder, query, name));

async function readBothNow(folder, query, name) {
  const said = await restoreAndAsk(folder, WHOLE, name);
  const [verdict, meta = ''] = said.split('\n');
  if (verdict !== 'ok') throw new Error(`sqlite3 finds ${said}`);
  const changes = beyond(meta, name === FILE ? logOf(folder) : undefined);
  const sql = changes.flatMap(({ do: statements }) => statements.map(asSql));
  return JSON.parse(await sqlite3.ask(['BEGIN;', ...sql, 'COMMIT;', `${query};`].join('\n')));
}

/** How the text of an edit has to be; written anew here, so that a fault there would show. */
const textOf = (n) => `${n}:é🧴`.repeat(1 + ((n * 7919) % 97) * (n % 50 === 0 ? 40 : 1));

/**
 * The numbers of the edits in file and log, as the outside finds them; undefined where sqlite3 is not installed.
 * @param textNumber which number an edit's text is made of
 * @throws {Error} when any of it is not as it was made
 */
export async function readEdits(folder, textNumber = (n) => n, name = FILE) {
  if (!hasSqlite3) return undefined;
  const { check: verdict, edits } = await readBoth(folder, EDITS, name);
  if (verdict !== 'ok') throw new Error(`sqlite3 finds ${verdict}`);
  for (const [n, text, half] of edits)
    if (text !== textOf(textNumber(n)) || half !== n / 2) throw new Error(`edit ${n} is not as it was made`);
  return new Set(edits.map(([n]) => n));
}

/**
 * Compares what the outside finds with what was acknowledged. Answers what is wrong.
 * @param maybe edits under way when the process went: there or not
 */
export async function judge(folder, acknowledged, { maybe = [], textNumber } = {}) {
  let found;
  try {
    found = await readEdits(folder, textNumber);
  } catch (error) {
    return [error.message];
  }
  if (!found) return [];
  const lost = [...acknowledged].filter((n) => !found.has(n)).map((n) => `edit ${n} is lost`);
  const known = new Set([...acknowledged, ...maybe]);
  return [...lost, ...[...found].filter((n) => !known.has(n)).map((n) => `edit ${n} was never acknowledged`)];
}

/** Every row of every table, of file and log together, in the order that they are given in. */
export async function readTables(folder, tables) {
  const found = [];
  for (const [table, columns] of Object.entries(tables)) {
    const named = columns.map((column) => `"${column}"`).join(', ');
    const rows = `SELECT json_array(${named}) AS row FROM "${table}" ORDER BY ${named}`;
    found.push(await readBoth(folder, `SELECT json_group_array(json(row)) FROM (${rows})`));
  }
  return found;
}
