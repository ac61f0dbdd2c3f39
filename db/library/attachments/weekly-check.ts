import { join } from 'node:path';
import { Problem } from '@core/problems/problem';
import { errorCode, isMissing, type FileSystem } from '../file/file-system';
import { sha256Of, writeWholeFile } from '../file/whole-file';

const WEEK_MS = 7 * 86_400_000;
const STAMP = '.checked';
const NAME = /^[0-9a-f]{64}$/;
/** Between two attachments, so that work goes on undisturbed; longer while there is work. */
const PAUSE_MS = 10;
const PAUSE_WHILE_BUSY_MS = 2_000;
/** So many are named where several are faulty. */
const NAMED = 8;

/** An attachment that a record shows, in words that go on a sentence: “the photo of Hedgerow Wax”. */
export interface AttachmentInUse {
  sha256: string;
  words: string;
}

export interface FaultyAttachment {
  sha256: string;
  fault: 'damaged' | 'missing';
  /** What shows it; empty where only an earlier state of a record does. */
  words: string[];
}

export interface Checking {
  fs: FileSystem;
  /** The folder of the attachments. */
  folder: string;
  now: () => Date;
  /** What has to be there. */
  inUse: () => readonly AttachmentInUse[];
  /** Asked before each: true ends the check, which is then due again. */
  isOver: () => boolean;
  /** Whether the maker is at work just now. */
  isBusy: () => boolean;
}

/**
 * Compares every attachment with its hash, once a week, and looks for those that records show and that are not there.
 * As long as any is faulty the check is due again. Answers those; undefined when it is not due, or was ended.
 */
export async function checkWeekly(checking: Checking): Promise<FaultyAttachment[] | undefined> {
  const { fs, folder, now, inUse, isOver, isBusy } = checking;
  const shown = wordsOf(inUse());
  const kept = await keptIn(fs, folder);
  if ((kept.length === 0 && shown.size === 0) || !(await isDue(checking))) return undefined;
  const faulty: FaultyAttachment[] = [];
  for (const sha256 of new Set([...kept, ...shown.keys()])) {
    if (isOver()) return undefined;
    const fault = await faultOf(fs, join(folder, sha256.slice(0, 2), sha256), sha256);
    if (fault) faulty.push({ sha256, fault, words: shown.get(sha256) ?? [] });
    await fs.pause(isBusy() ? PAUSE_WHILE_BUSY_MS : PAUSE_MS);
  }
  if (faulty.length === 0)
    await writeWholeFile(fs, join(folder, STAMP), Buffer.from(`${now().toISOString()}\n`));
  return faulty;
}

function wordsOf(inUse: readonly AttachmentInUse[]): Map<string, string[]> {
  const shown = new Map<string, string[]>();
  for (const { sha256, words } of inUse) shown.set(sha256, [...(shown.get(sha256) ?? []), words]);
  return shown;
}

async function keptIn(fs: FileSystem, folder: string): Promise<string[]> {
  const groups = await fs.readdir(folder).catch(() => []);
  const kept: string[] = [];
  for (const group of groups.filter((name) => name.length === 2))
    kept.push(...(await namesIn(fs, join(folder, group))).filter((name) => NAME.test(name)));
  return kept;
}

/** What a folder holds; nothing where it is a file that somebody put there, or gone by now. */
async function namesIn(fs: FileSystem, folder: string): Promise<string[]> {
  try {
    return await fs.readdir(folder);
  } catch (error) {
    if (errorCode(error) === 'ENOTDIR' || isMissing(error)) return [];
    throw error;
  }
}

/** Says which attachments the disk has damaged or lost, by what shows them. */
export function faultyAttachments(faulty: readonly FaultyAttachment[]): Problem {
  const count = faulty.length;
  const isOne = count === 1;
  const gone = faulty.filter(({ fault }) => fault === 'missing').length;
  const how =
    gone === 0
      ? `${isOne ? 'is' : 'are'} damaged`
      : gone === count
        ? `${isOne ? 'is' : 'are'} missing`
        : 'are damaged or missing';
  return new Problem({
    code: 'library-damaged',
    title: `${isOne ? 'One attachment' : `${count} attachments`} of this library ${how}.`,
    advice:
      `${named(faulty)} Add the original ${isOne ? 'file' : 'files'} again where ${isOne ? 'it is' : 'they are'} shown, ` +
      'or copy the attachments folder from a copy of this library. All else is untouched.',
    facts: { attachments: faulty.map(({ sha256 }) => sha256) },
  });
}

function named(faulty: readonly FaultyAttachment[]): string {
  const all = faulty.flatMap(({ words, fault }) => words.map((each) => `${each} (${fault})`));
  const earlier = faulty.filter(({ words }) => words.length === 0).length;
  const parts = all.slice(0, NAMED);
  if (all.length > NAMED) parts.push(`${all.length - NAMED} more`);
  if (earlier > 0) parts.push(`${earlier} that only earlier states of records show`);
  return `${sentence(parts.join('; '))}.`;
}

function sentence(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

async function isDue({ fs, folder, now }: Checking): Promise<boolean> {
  const stamp = await fs.readFile(join(folder, STAMP)).catch(() => undefined);
  const last = stamp && Date.parse(Buffer.from(stamp).toString('utf8').trim());
  const age = now().getTime() - (last ?? Number.NaN);
  // A time in the future was written by a clock gone wrong.
  return !(age >= 0 && age < WEEK_MS);
}

async function faultOf(
  fs: FileSystem,
  path: string,
  sha256: string,
): Promise<FaultyAttachment['fault'] | undefined> {
  try {
    return sha256Of(await fs.readFile(path)) === sha256 ? undefined : 'damaged';
  } catch (error) {
    return isMissing(error) ? 'missing' : 'damaged';
  }
}
