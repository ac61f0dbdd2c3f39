import { join } from 'node:path';
import { isMissing, type FileSystem } from './file-system';
import type { ChangeLog } from '../log/log';
import { decodeLog, type Position } from '../log/log-format';
import { LIBRARY_FILE, LOG_FILE } from '../folding/rewrite';
import { sha256Of, type FileIdentity } from './whole-file';

/** Whether the files are as we left them; 'unknown' when they cannot be read just now. */
export type Outside = 'same' | 'changed' | 'unknown';

/** How we left the library. */
export interface Left {
  identity: FileIdentity;
  position: Position;
  /** Our own log, or undefined when reading only; then the size it had. */
  log: ChangeLog | undefined;
  logSize: number | undefined;
}

/** Compares the disk with how we left it: cheaply first, by content where that leaves a doubt. */
export async function lookOutside(
  fs: FileSystem,
  folder: string,
  left: Left,
): Promise<{ verdict: Outside; identity?: FileIdentity }> {
  try {
    const identity = await sameFile(fs, join(folder, LIBRARY_FILE), left.identity);
    if (!identity) return { verdict: 'changed' };
    const same = left.log
      ? await sameLog(fs, left.log, left.position)
      : await sameSize(fs, folder, left.logSize);
    return { verdict: same ? 'same' : 'changed', identity };
  } catch (error) {
    return { verdict: isMissing(error) ? 'changed' : 'unknown' };
  }
}

/** The file's identity as it is now, if its content is what it was. */
export async function sameFile(
  fs: FileSystem,
  path: string,
  left: FileIdentity,
): Promise<FileIdentity | undefined> {
  const { size, mtimeMs, ino } = await fs.stat(path);
  if (size === left.size && mtimeMs === left.mtimeMs && ino === left.ino) return left;
  if (size !== left.size || sha256Of(await fs.readFile(path)) !== left.sha256) return undefined;
  return { size, mtimeMs, ino, sha256: left.sha256 };
}

async function sameLog(fs: FileSystem, log: ChangeLog, position: Position): Promise<boolean> {
  if (log.seemsChanged()) return false;
  if (!log.seemsTouched()) return true;
  const { header, records, length } = decodeLogOrNothing(await fs.readFile(log.path));
  return length === log.length && (records.at(-1) ?? header)?.chain === position.chain;
}

function decodeLogOrNothing(
  bytes: Uint8Array,
): Partial<ReturnType<typeof decodeLog>> & { records: Position[] } {
  try {
    return decodeLog(bytes);
  } catch {
    return { records: [] };
  }
}

async function sameSize(fs: FileSystem, folder: string, size: number | undefined): Promise<boolean> {
  try {
    return (await fs.stat(join(folder, LOG_FILE))).size === size;
  } catch (error) {
    if (isMissing(error)) return size === undefined;
    throw error;
  }
}
