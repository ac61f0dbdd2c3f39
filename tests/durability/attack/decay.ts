import { cpSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Problem } from '@core/problems/problem';
import { createLibrary, openLibrary } from '@db/library/open-library';
import { FaultyFileSystem } from '../faulty-file-system';
import { killOptions, makeEdit } from './edits';

/** How many damages of a kind were made, how many of them were told, and which opened with something else in silence. */
export interface Tally {
  rounds: number;
  told: number;
  harmless: number;
  silent: string[];
}

interface Sample {
  folder: string;
  file: Buffer;
  log: Buffer;
  /** As it was before its last changes. */
  older: { file: Buffer; log: Buffer };
  truth: string;
}

const options = { ...killOptions, fileSystem: new FaultyFileSystem().fs };

/** A small library with changes in the file and in the log, as a stopped process leaves it. */
async function makeSample(folder: string): Promise<Sample> {
  const made = await createLibrary(folder, options);
  for (let n = 1; n <= 12; n += 1) makeEdit(made, n);
  await made.close();
  const older = {
    file: readFileSync(join(folder, 'library.sqlite')),
    log: readFileSync(join(folder, 'library.log')),
  };
  const next = await openLibrary(folder, options);
  for (let n = 13; n <= 20; n += 1) makeEdit(next, n);
  await next.rewrite();
  for (let n = 21; n <= 26; n += 1) makeEdit(next, n);
  const truth = contentOf(next);
  const file = readFileSync(join(folder, 'library.sqlite'));
  const log = readFileSync(join(folder, 'library.log'));
  const held = JSON.parse(readFileSync(join(folder, 'library.lock'), 'utf8')) as object;
  const target = `${folder} left`;
  cpSync(folder, target, { recursive: true });
  // As left by a process that is gone: no process has this number.
  writeFileSync(join(target, 'library.lock'), `${JSON.stringify({ ...held, pid: 999_999_999 })}\n`);
  await next.close();
  return { folder: target, file, log, older, truth };
}

function contentOf(library: { all(sql: string): unknown[] }): string {
  return JSON.stringify([
    library.all('SELECT n, text, half FROM edit ORDER BY n'),
    library.all('SELECT last, total FROM tally'),
  ]);
}

/** Opens the library with these bytes in place, and puts the whole ones back. */
async function open(sample: Sample, file: Buffer, log: Buffer, what: string, tally: Tally): Promise<void> {
  const paths = { file: join(sample.folder, 'library.sqlite'), log: join(sample.folder, 'library.log') };
  const lock = readFileSync(join(sample.folder, 'library.lock'));
  writeFileSync(paths.file, file);
  writeFileSync(paths.log, log);
  tally.rounds += 1;
  try {
    const library = await openLibrary(sample.folder, options);
    const { notes } = library.status();
    const isSame = contentOf(library) === sample.truth;
    if (isSame) tally.harmless += 1;
    else if (notes.length > 0) tally.told += 1;
    else tally.silent.push(what);
    await library.close();
  } catch (error) {
    if (error instanceof Problem) tally.told += 1;
    else tally.silent.push(`${what}: ${String(error)}`);
  }
  rmSync(join(sample.folder, 'backups'), { recursive: true, force: true });
  writeFileSync(join(sample.folder, 'library.lock'), lock);
}

const empty = (): Tally => ({ rounds: 0, told: 0, harmless: 0, silent: [] });

/** Flips bits of file and log, spread evenly over all of them: every one when there are enough rounds. */
export async function flipBits(folder: string, rounds: number): Promise<Tally> {
  const sample = await makeSample(folder);
  const tally = empty();
  const written = sample.log.indexOf(0);
  for (const [name, bytes, length] of [
    ['file', sample.file, sample.file.length],
    ['log', sample.log, written],
  ] as const) {
    const step = Math.max(1, Math.floor((length * 8) / Math.max(1, Math.floor(rounds / 2))));
    for (let bit = Math.floor(Math.random() * step); bit < length * 8; bit += step) {
      const flipped = Buffer.from(bytes);
      flipped[bit >> 3] = (flipped[bit >> 3] ?? 0) ^ (1 << (bit & 7));
      const [file, log] = name === 'file' ? [flipped, sample.log] : [sample.file, flipped];
      await open(sample, file, log, `bit ${bit} of the ${name}`, tally);
    }
  }
  return tally;
}

/** Cuts file and log short at places spread evenly over them: at every byte when there are enough rounds. */
export async function cutShort(folder: string, rounds: number): Promise<Tally> {
  const sample = await makeSample(folder);
  const tally = empty();
  for (const [name, length] of [
    ['file', sample.file.length],
    ['log', sample.log.indexOf(0) + 1],
  ] as const) {
    const step = Math.max(1, Math.floor(length / Math.max(1, Math.floor(rounds / 2))));
    for (let cut = Math.floor(Math.random() * step); cut < length; cut += step) {
      const file = name === 'file' ? sample.file.subarray(0, cut) : sample.file;
      const log = name === 'log' ? sample.log.subarray(0, cut) : sample.log;
      await open(sample, file, log, `${name} cut at ${cut}`, tally);
    }
  }
  return tally;
}

/** What synchronising programs do: one file or both replaced by older ones, half of one copied. */
export async function replaceFiles(folder: string, rounds: number): Promise<Tally> {
  const sample = await makeSample(folder);
  const tally = empty();
  const { file, log, older } = sample;
  for (let round = 0; round < rounds; round += 1) {
    const part = Math.random();
    const mixed = (whole: Buffer, other: Buffer) =>
      Buffer.concat([
        whole.subarray(0, Math.floor(whole.length * part)),
        other.subarray(Math.floor(whole.length * part)),
      ]);
    const cases: [string, Buffer, Buffer][] = [
      ['an older file', older.file, log],
      ['an older log', file, older.log],
      ['both older', older.file, older.log],
      [`a file half replaced (${part})`, mixed(older.file, file), log],
      [`a log half replaced (${part})`, file, mixed(older.log, log)],
    ];
    const [what, asFile, asLog] = cases[round % cases.length]!;
    await open(sample, asFile, asLog, what, tally);
  }
  return tally;
}
