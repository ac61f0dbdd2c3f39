import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Problem } from '@core/problems/problem';
import { openLibrary } from '@db/library/open-library';
import { recoverFromLog } from '@db/library/opening/recovery';
import {
  attackOptions,
  emptyTally,
  filesOf,
  makeSample,
  putFiles,
  upTo,
  type Judge,
  type Sample,
  type Tally,
} from './sample';

/** What is offered is tried in one of so many rounds: it costs as much as twenty others. */
const OFFERS_EVERY = 20;

export interface Damaging {
  rounds: number;
  /** Every place in turn, instead of `rounds` of them. */
  every: boolean;
  judge: Judge;
}

interface Damage {
  what: string;
  file: Buffer;
  log: Buffer;
}

/**
 * Opens the library with this damage in it, and puts the whole files back. What is refused must be left as it was, byte
 * for byte; what is opened must hold every edit, or tell that it does not, and nothing else.
 */
async function meet(sample: Sample, { what, file, log }: Damage, judge: Judge, tally: Tally): Promise<void> {
  const { folder, edits } = sample;
  const lock = readFileSync(join(folder, 'library.lock'));
  putFiles(folder, { file, log });
  tally.rounds += 1;
  const problem = await openAndJudge(sample, judge, tally).catch((error: unknown) => error);
  if (problem instanceof Problem) {
    tally.told += 1;
    const now = filesOf(folder);
    if (!now.file.equals(file) || !now.log.equals(log)) tally.silent.push(`${what}: refused, and changed`);
    if (tally.rounds % OFFERS_EVERY === 0) await takeOffer(problem, folder, edits, judge, tally, what);
  } else if (problem !== undefined) tally.silent.push(`${what}: ${String(problem)}`);
  rmSync(join(folder, 'backups'), { recursive: true, force: true });
  writeFileSync(join(folder, 'library.lock'), lock);
}

async function openAndJudge({ folder, edits }: Sample, judge: Judge, tally: Tally): Promise<void> {
  const library = await openLibrary(folder, attackOptions);
  const isTold = library.status().notes.length > 0;
  await library.close();
  const wrong = await judge(folder, upTo(edits));
  if (wrong.length === 0) tally.harmless += 1;
  else if (isTold && wrong.every((each) => each.endsWith(' is lost'))) tally.told += 1;
  else throw new Error(wrong.slice(0, 3).join('; '));
}

/** Opens it in the way that the refusal offers: nothing but acknowledged edits may be in it. */
async function takeOffer(
  { facts }: Problem,
  folder: string,
  edits: number,
  judge: Judge,
  tally: Tally,
  what: string,
): Promise<void> {
  if (!facts.goodLog) return;
  tally.offers += 1;
  const { library } = await recoverFromLog(folder, attackOptions);
  await library.close();
  const wrong = await judge(folder, [], { maybe: upTo(edits) });
  if (wrong.length > 0) tally.silent.push(`${what}, opened as offered: ${wrong.slice(0, 3).join('; ')}`);
}

/** So many places, spread evenly over a length, or every one. */
function* placesIn(length: number, { rounds, every }: Damaging): Generator<number> {
  const step = every ? 1 : Math.max(1, Math.floor(length / Math.max(1, Math.floor(rounds / 2))));
  for (let at = every ? 0 : Math.floor(Math.random() * step); at < length; at += step) yield at;
}

/** Flips bits of file and log, the first zeros after the log's records included. */
export async function flipBits(folder: string, damaging: Damaging): Promise<Tally> {
  const sample = await makeSample(folder, damaging.every);
  const tally = emptyTally();
  const flipped = (bytes: Buffer, bit: number) => {
    const copy = Buffer.from(bytes);
    copy[bit >> 3] = (copy[bit >> 3] ?? 0) ^ (1 << (bit & 7));
    return copy;
  };
  const { file, log } = sample;
  for (const bit of placesIn(file.length * 8, damaging))
    await meet(
      sample,
      { what: `bit ${bit} of the file`, file: flipped(file, bit), log },
      damaging.judge,
      tally,
    );
  for (const bit of placesIn((log.indexOf(0) + 1024) * 8, damaging))
    await meet(
      sample,
      { what: `bit ${bit} of the log`, file, log: flipped(log, bit) },
      damaging.judge,
      tally,
    );
  return tally;
}

/** Cuts file and log short: the log as far as a kilobyte into the zeros after its records. */
export async function cutShort(folder: string, damaging: Damaging): Promise<Tally> {
  const sample = await makeSample(folder, damaging.every);
  const tally = emptyTally();
  const { file, log } = sample;
  for (const cut of placesIn(file.length, damaging))
    await meet(
      sample,
      { what: `file cut at ${cut}`, file: file.subarray(0, cut), log },
      damaging.judge,
      tally,
    );
  for (const cut of placesIn(log.indexOf(0) + 1024, damaging))
    await meet(sample, { what: `log cut at ${cut}`, file, log: log.subarray(0, cut) }, damaging.judge, tally);
  return tally;
}
