import { join } from 'node:path';
import { Problem } from '@core/problems/problem';
import type { FileSystem } from '../file/file-system';
import { sha256Of, writeWholeFile } from '../file/whole-file';

const WEEK_MS = 7 * 86_400_000;
const STAMP = '.checked';
const NAME = /^[0-9a-f]{64}$/;
/** Between two attachments, so that work goes on undisturbed. */
const PAUSE_MS = 10;

export interface Checking {
  fs: FileSystem;
  /** The folder of the attachments. */
  folder: string;
  now: () => Date;
  /** Asked before each: true ends the check, which is then due again. */
  isOver: () => boolean;
}

/** Compares every attachment with its hash, once a week. Answers those that are damaged; undefined when it is not due. */
export async function checkWeekly(checking: Checking): Promise<string[] | undefined> {
  const { fs, folder, now, isOver } = checking;
  const groups = await fs.readdir(folder).catch(() => []);
  if (groups.length === 0 || !(await isDue(checking))) return undefined;
  const damaged: string[] = [];
  for (const group of groups.filter((name) => name.length === 2)) {
    for (const name of await fs.readdir(join(folder, group))) {
      if (isOver()) return undefined;
      if (NAME.test(name) && !(await isWhole(fs, join(folder, group, name), name))) damaged.push(name);
      await fs.pause(PAUSE_MS);
    }
  }
  await writeWholeFile(fs, join(folder, STAMP), Buffer.from(`${now().toISOString()}\n`));
  return damaged;
}

/** Says which attachments the disk has damaged. */
export function damagedAttachments(names: readonly string[]): Problem {
  return new Problem({
    code: 'library-damaged',
    title:
      names.length === 1
        ? 'One attachment in this library is damaged.'
        : `${names.length} attachments in this library are damaged.`,
    advice:
      'The disk changed them. Attach the original files again, or copy the attachments folder from a backup of your ' +
      'disk; all else is untouched.',
    facts: { attachments: names },
  });
}

async function isDue({ fs, folder, now }: Checking): Promise<boolean> {
  const stamp = await fs.readFile(join(folder, STAMP)).catch(() => undefined);
  const last = stamp && Date.parse(Buffer.from(stamp).toString('utf8').trim());
  const age = now().getTime() - (last ?? Number.NaN);
  // A time in the future was written by a clock gone wrong.
  return !(age >= 0 && age < WEEK_MS);
}

async function isWhole(fs: FileSystem, path: string, name: string): Promise<boolean> {
  const bytes = await fs.readFile(path).catch(() => undefined);
  return bytes !== undefined && sha256Of(bytes) === name;
}
