import { randomBytes } from 'node:crypto';
import { basename, dirname, join } from 'node:path';
import { Problem } from '@core/problems/problem';
import { errorCode, isMissing, type FileSystem } from '../file/file-system';

/**
 * How a log changes hands. Each owner has a log file of its own: the one before is first renamed away, then read to
 * its end, and its content put under the log's name again as a new file. Whoever owned it finds after its next write
 * that another file has that name, and acknowledges nothing. So a write counts exactly when it came before the renaming.
 */
const NO_LINKS = new Set(['EPERM', 'ENOTSUP', 'EOPNOTSUPP', 'ENOSYS', 'EMLINK', 'UNKNOWN']);
const TAKEN = /^\.(.+)\.\d+-[0-9a-f]{12}\.taken$/;

/**
 * Gives the file `from` the name `to`, which nothing may have. Throws EEXIST. Answers false when it kept its old name
 * too, because that could not be removed.
 */
export function putInPlace(fs: FileSystem, from: string, to: string): boolean {
  try {
    fs.linkSync(from, to);
  } catch (error) {
    if (!NO_LINKS.has(errorCode(error) ?? '')) throw error;
    // A disk without links, such as a memory stick: as near as it comes.
    if (exists(fs, to)) throw Object.assign(new Error('It is there already.'), { code: 'EEXIST' });
    fs.renameSync(from, to);
    return true;
  }
  return removeQuietly(fs, from);
}

/**
 * Renames a file away, so that nobody finds it under its name. Answers where it is, or undefined when it is not there.
 * @param of whose place the new name tells
 */
export function takeAway(fs: FileSystem, path: string, of = path): string | undefined {
  const name = `.${basename(of)}.${process.pid}-${randomBytes(6).toString('hex')}.taken`;
  const away = join(dirname(path), name);
  try {
    fs.renameSync(path, away);
    return away;
  } catch (error) {
    if (isMissing(error)) return undefined;
    throw error;
  }
}

/** Logs renamed away by an opener that was stopped before it had put its own in place; the latest first. */
export function takenAway(fs: FileSystem, path: string): string[] {
  const folder = dirname(path);
  return fs
    .readdirSync(folder)
    .filter((name) => TAKEN.exec(name)?.[1] === basename(path))
    .map((name) => join(folder, name))
    .sort((a, b) => timeOf(fs, b) - timeOf(fs, a));
}

function timeOf(fs: FileSystem, path: string): number {
  try {
    return fs.statSync(path).mtimeMs;
  } catch {
    return 0;
  }
}

/** Where the log really is: a link is followed. Throws ENOENT for a link to nothing. */
export function realLogPath(fs: FileSystem, path: string): string {
  try {
    return fs.realpathSync(path);
  } catch (error) {
    if (isMissing(error)) return path;
    throw error;
  }
}

export function exists(fs: FileSystem, path: string): boolean {
  try {
    fs.statSync(path);
    return true;
  } catch (error) {
    if (isMissing(error)) return false;
    throw error;
  }
}

/** Removes a file that nobody needs. Answers false when it is still there: it is swept at the next opening. */
export function removeQuietly(fs: FileSystem, path: string): boolean {
  try {
    fs.unlinkSync(path);
    return true;
  } catch (error) {
    return isMissing(error);
  }
}

/** The log under its name is not the one that we have open. */
export function changedOutside(path: string): Problem {
  return new Problem({
    code: 'library-changed-outside',
    title: 'Another program changed this library while it was open here.',
    advice: 'Nothing was overwritten. Save what you have here as a copy, then open the library again.',
    facts: { file: path },
  });
}
