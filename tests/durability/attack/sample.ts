import { cpSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { createLibrary, openLibrary } from '@db/library/open-library';
import { Engine } from '@db/library/sql/engine';
import { FaultyFileSystem } from '../faulty-file-system';
import { killOptions, makeEdit } from './edits';

/** The files of a library as they were found at some moment. */
export interface Files {
  file: Buffer;
  log: Buffer;
}

export interface Sample extends Files {
  folder: string;
  edits: number;
}

/** What a reader that shares no code with Stillroom finds wrong in a folder that must hold these edits. */
export type Judge = (
  folder: string,
  acknowledged: Iterable<number>,
  more?: { maybe?: Iterable<number> },
) => Promise<string[]>;

/** How many rounds were made, in how many of them the damage was told, and in which something else was opened in silence. */
export interface Tally {
  rounds: number;
  told: number;
  harmless: number;
  offers: number;
  silent: string[];
}

export const emptyTally = (): Tally => ({ rounds: 0, told: 0, harmless: 0, offers: 0, silent: [] });

/** Nobody pulls a plug here, so nobody waits for flushes. */
export const attackOptions = { ...killOptions, fileSystem: new FaultyFileSystem().fs };

export const upTo = (n: number): number[] => Array.from({ length: n }, (_, index) => index + 1);

export function filesOf(folder: string): Files {
  return {
    file: readFileSync(join(folder, 'library.sqlite')),
    log: readFileSync(join(folder, 'library.log')),
  };
}

export function putFiles(folder: string, { file, log }: Files): void {
  writeFileSync(join(folder, 'library.sqlite'), file);
  writeFileSync(join(folder, 'library.log'), log);
}

/** The lock as left by a process that is gone: no process has this number. */
export function leaveLock(folder: string, held: object): void {
  writeFileSync(join(folder, 'library.lock'), `${JSON.stringify({ ...held, pid: 999_999_999 })}\n`);
}

/** Lays the library's file out in the smallest pages that SQLite has, so that every bit of it can be tried. */
async function shrink(folder: string): Promise<void> {
  const engine = await Engine.open(readFileSync(join(folder, 'library.sqlite')));
  engine.script('PRAGMA page_size = 512; VACUUM;');
  writeFileSync(join(folder, 'library.sqlite'), engine.exportBytes());
  engine.close();
  rmSync(join(folder, 'library.log'));
}

/**
 * A small library with changes in the file and in the log, as a stopped process leaves it.
 * @param tiny as small as it can be
 */
export async function makeSample(folder: string, tiny: boolean): Promise<Sample> {
  const [first, second, third] = tiny ? [1, 1, 2] : [4, 3, 3];
  await (await createLibrary(folder, attackOptions)).close();
  if (tiny) await shrink(folder);
  const made = await openLibrary(folder, attackOptions);
  const edits = upTo(first + second + third);
  for (const n of edits.slice(0, first)) makeEdit(made, n);
  await made.close();
  const next = await openLibrary(folder, attackOptions);
  for (const n of edits.slice(first, first + second)) makeEdit(next, n);
  await next.rewrite();
  for (const n of edits.slice(first + second)) makeEdit(next, n);
  const held = JSON.parse(readFileSync(join(folder, 'library.lock'), 'utf8')) as object;
  const target = `${folder} left`;
  cpSync(folder, target, { recursive: true });
  leaveLock(target, held);
  await next.close();
  return { ...filesOf(target), folder: target, edits: edits.length };
}
