import { mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Problem } from '@core/problems/problem';
import { createLibrary, openLibrary, type OpenLibrary } from '@db/library/open-library';
import type { LibraryMemory, Remembered } from '@db/library/opening/remembered';
import type { Damaging } from './decay';
import { textOf } from './edits';
import { attackOptions, emptyTally, filesOf, leaveLock, putFiles, type Files, type Tally } from './sample';

/** The files of a computer at a moment, the edits acknowledged there by then, and what it remembers of them. */
interface Moment extends Files {
  edits: readonly number[];
  remembered: Remembered | undefined;
  /** While the library was open there; empty once it was closed. */
  lock: string;
}

/** What a synchronising program makes of a library that was left at a moment. */
interface Arrival {
  what: string;
  files: Partial<Files>;
  /** Left under other names. */
  copies?: Files;
  /** Where all of the other computer comes with it. */
  theirs?: Moment;
}

/** Numbers of edits made on the other computer. */
const THERE = 1000;

class Computer implements LibraryMemory {
  remembered: Remembered | undefined;
  readonly moments: Moment[] = [];
  readonly #folder: string;
  readonly #edits: number[];

  constructor(folder: string, edits: readonly number[] = []) {
    this.#folder = folder;
    this.#edits = [...edits];
  }

  recall(): Remembered | undefined {
    return this.remembered;
  }

  remember(_folder: string, remembered: Remembered): void {
    this.remembered = remembered;
  }

  open(): Promise<OpenLibrary> {
    return openLibrary(this.#folder, { ...attackOptions, memory: this });
  }

  /** Edits in three sittings, folding now and then; a moment after each edit and each closing. */
  async work(from: number): Promise<void> {
    for (let n = from; n < from + 9; n += 3) {
      const library = await this.open();
      for (const edit of [n, n + 1, n + 2]) {
        insert(library, edit);
        this.#edits.push(edit);
        if (edit === n + 1) await library.rewrite();
        this.#keep(readFileSync(join(this.#folder, 'library.lock'), 'utf8'));
      }
      await library.close();
      this.#keep('');
    }
  }

  #keep(lock: string): void {
    const { remembered } = this;
    this.moments.push({ ...filesOf(this.#folder), edits: [...this.#edits], remembered, lock });
  }
}

function insert(library: OpenLibrary, n: number): void {
  library.transaction((tx) =>
    tx.run('INSERT INTO edit (n, text, half) VALUES (?, ?, ?)', n, textOf(n), n / 2),
  );
}

const anyOf = <T>(list: readonly T[]): T => list[Math.floor(Math.random() * list.length)] as T;

function mixed(whole: Buffer, other: Buffer): Buffer {
  const part = Math.random();
  const from = Math.floor(whole.length * part);
  return Buffer.concat([whole.subarray(0, from), other.subarray(Math.floor(other.length * part))]);
}

/** @param round which of the ways it is, in turn */
function arrivalAt(round: number, left: Moment, here: Computer, there: Computer): Arrival {
  const older = anyOf(here.moments.slice(0, here.moments.indexOf(left) + 1));
  const theirs = anyOf(there.moments);
  const cut = <T extends Buffer>(bytes: T) => bytes.subarray(0, Math.floor(bytes.length * Math.random()));
  const ways: Arrival[] = [
    { what: 'an older file', files: { file: older.file, log: left.log } },
    { what: 'an older log', files: { file: left.file, log: older.log } },
    { what: 'both older', files: older },
    { what: 'both older, with conflict copies', files: older, copies: left },
    { what: 'both of the other computer', files: theirs, theirs },
    { what: 'the file of the other computer', files: { file: theirs.file, log: left.log } },
    { what: 'the log of the other computer', files: { file: left.file, log: theirs.log } },
    { what: 'both of the other, ours as conflict copies', files: theirs, copies: left, theirs },
    { what: 'ours, those of the other as conflict copies', files: left, copies: theirs, theirs },
    { what: 'a file half replaced', files: { file: mixed(older.file, left.file), log: left.log } },
    { what: 'a log half replaced', files: { file: left.file, log: mixed(older.log, left.log) } },
    { what: 'a file half copied', files: { file: cut(left.file), log: left.log } },
    { what: 'a log half copied', files: { file: left.file, log: cut(left.log) } },
    { what: 'no log', files: { file: left.file } },
    { what: 'a half file of the other', files: { file: mixed(theirs.file, left.file), log: left.log } },
    { what: 'a half log of the other', files: { file: left.file, log: mixed(theirs.log, left.log) } },
  ];
  return ways[round % ways.length] as Arrival;
}

function lay(folder: string, { files, copies }: Arrival, { lock }: Moment): void {
  rmSync(folder, { recursive: true, force: true });
  mkdirSync(folder, { recursive: true });
  putFiles(folder, { file: Buffer.alloc(0), log: Buffer.alloc(0), ...files });
  if (!files.log) rmSync(join(folder, 'library.log'));
  if (copies) {
    writeFileSync(join(folder, 'library (conflict of another computer).sqlite'), copies.file);
    writeFileSync(join(folder, 'library (conflict of another computer).log'), copies.log);
  }
  if (lock) leaveLock(folder, JSON.parse(lock) as object);
}

/** Which of the edits are told as lost, or not told: opens what arrived, and looks at what is then on the disk. */
async function meet(folder: string, arrival: Arrival, left: Moment, damaging: Damaging, all: number[]) {
  const computer = new Computer(folder);
  computer.remembered = left.remembered;
  lay(folder, arrival, left);
  try {
    const library = await computer.open();
    const isTold = library.status().notes.length > 0;
    await library.close();
    const acknowledged = new Set([...left.edits, ...(arrival.theirs?.edits ?? [])]);
    const wrong = await damaging.judge(folder, acknowledged, { maybe: all });
    if (wrong.length === 0) return 'harmless';
    if (isTold && wrong.every((each) => each.endsWith(' is lost'))) return 'told';
    return wrong.slice(0, 4).join('; ');
  } catch (error) {
    if (!(error instanceof Problem)) return String(error);
    const { file, log } = arrival.files;
    const now = { file: readFileSync(join(folder, 'library.sqlite')), logs: readdirSync(folder) };
    const isSame = file?.equals(now.file) && (!log || readFileSync(join(folder, 'library.log')).equals(log));
    return isSame ? 'told' : 'refused, and changed';
  }
}

/** Two computers change one library, and a synchronising program leaves one of them with what it likes. */
export async function synchronise(folder: string, damaging: Damaging): Promise<Tally> {
  const tally = emptyTally();
  await (await createLibrary(`${folder} here`, attackOptions)).close();
  const here = new Computer(`${folder} here`);
  await here.work(1);
  const parting = here.moments[3];
  if (!parting) throw new Error('There is no moment at which the two parted.');
  mkdirSync(`${folder} there`);
  putFiles(`${folder} there`, parting);
  const there = new Computer(`${folder} there`, parting.edits);
  await there.work(THERE);
  const all = [...here.moments, ...there.moments].flatMap(({ edits }) => edits);
  const leaving = here.moments.slice(4);
  while (tally.rounds < damaging.rounds) {
    const left = anyOf(leaving);
    const arrival = arrivalAt(tally.rounds, left, here, there);
    tally.rounds += 1;
    const verdict = await meet(folder, arrival, left, damaging, all);
    if (verdict === 'told') tally.told += 1;
    else if (verdict === 'harmless') tally.harmless += 1;
    else tally.silent.push(`${arrival.what} (round ${tally.rounds}): ${verdict}`);
  }
  return tally;
}
