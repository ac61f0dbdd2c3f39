import { cpSync, existsSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Problem } from '@core/problems/problem';
import { openLibrary } from '@db/library/open-library';
import { recoverFromBackup, recoverFromLog, type Recovered } from '@db/library/opening/recovery';
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
async function meet(sample: Sample, damage: Damage, judge: Judge, tally: Tally): Promise<void> {
  const { folder } = sample;
  const lock = readFileSync(join(folder, 'library.lock'));
  const { what, file, log } = damage;
  tally.rounds += 1;
  const isWithOffers = tally.rounds % OFFERS_EVERY === 0;
  putFiles(folder, damage);
  putBackups(folder, isWithOffers);
  const problem = await openAndJudge(sample, judge, tally).catch((error: unknown) => error);
  if (problem instanceof Problem) {
    tally.told += 1;
    const now = filesOf(folder);
    if (!now.file.equals(file) || !now.log.equals(log)) tally.silent.push(`${what}: refused, and changed`);
    if (isWithOffers) await takeOffers(problem, { sample, damage, judge, tally });
  } else if (problem !== undefined) tally.silent.push(`${what}: ${String(problem)}`);
  putBackups(folder, false);
  writeFileSync(join(folder, 'library.lock'), lock);
}

/** The backups that the library had before it was damaged, or none. */
function putBackups(folder: string, wanted: boolean): void {
  const backups = join(folder, 'backups');
  const kept = `${folder} backups`;
  if (!existsSync(kept)) renameSync(backups, kept);
  rmSync(backups, { recursive: true, force: true });
  if (wanted) cpSync(kept, backups, { recursive: true });
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

interface Round {
  sample: Sample;
  damage: Damage;
  judge: Judge;
  tally: Tally;
}

/** Opens it in each way that the refusal offers. An offer that cannot be kept is a loss. */
async function takeOffers({ facts }: Problem, round: Round): Promise<void> {
  const { folder } = round.sample;
  const backup = facts.newestBackup as { name: string } | null | undefined;
  if (facts.goodLog) await takeOffer('with what holds of its log', withoutRest, round);
  if (facts.asItIs) await takeOffer('as it is', withoutRest, round);
  if (backup) await takeOffer('from its backup', fromBackup, round);

  function withoutRest() {
    return recoverFromLog(folder, attackOptions);
  }
  function fromBackup() {
    return recoverFromBackup(folder, backup?.name ?? '', attackOptions);
  }
}

/** It must open, with nothing in it but acknowledged edits; whatever was replaced must be kept, byte for byte. */
async function takeOffer(how: string, open: () => Promise<Recovered>, round: Round): Promise<void> {
  const { sample, damage, judge, tally } = round;
  const { folder, edits } = sample;
  tally.offers += 1;
  putFiles(folder, damage);
  putBackups(folder, true);
  const wrong: string[] = [];
  try {
    const { library, log } = await open();
    await library.close();
    // What stands in a file that is not as it was written is for its maker to judge.
    if (how !== 'as it is') wrong.push(...(await judge(folder, [], { maybe: upTo(edits) })));
    if (log && !readFileSync(log.keptAs).equals(damage.log)) wrong.push('the log is not kept as it was');
    if (how !== 'with what holds of its log' && !isKept(folder, damage.file))
      wrong.push('the file is not kept as it was');
  } catch (error) {
    wrong.push(String(error));
  }
  if (wrong.length > 0)
    tally.silent.push(`${damage.what}, opened ${how} as offered: ${wrong.slice(0, 3).join('; ')}`);
}

/** Whether these bytes stand somewhere among the backups. */
function isKept(folder: string, bytes: Buffer): boolean {
  const backups = join(folder, 'backups');
  return readdirSync(backups).some((name) => readFileSync(join(backups, name)).equals(bytes));
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
