import { join } from 'node:path';
import { isMissing, type FileSystem } from './file-system';
import type { ChangeLog } from '../log/log';
import { LIBRARY_FILE } from '../folding/rewrite';
import { readLog } from '../log/read-log';
import { sha256Of, type FileIdentity } from './whole-file';

/** Whether the files are as we left them; 'unknown' when they cannot be read just now. */
export type Outside = 'same' | 'changed' | 'unknown';

/** How we left the library. */
export interface Left {
  identity: FileIdentity;
  /** Hashes that the file may come to have: what an owner before us was going to write. */
  files: readonly string[];
  /** Our own log, or undefined when reading only; then the hash that it had. */
  log: ChangeLog | undefined;
  logSha256: string | undefined;
}

/** Compares the disk with how we left it: cheaply first, by content where that leaves a doubt. */
export async function lookOutside(
  fs: FileSystem,
  folder: string,
  left: Left,
): Promise<{ verdict: Outside; identity?: FileIdentity }> {
  try {
    const identity = await sameFile(fs, join(folder, LIBRARY_FILE), left);
    if (!identity) return { verdict: 'changed' };
    const same = left.log ? left.log.isAsLeft() : sameContent(fs, folder, left.logSha256);
    return { verdict: same ? 'same' : 'changed', identity };
  } catch (error) {
    return { verdict: isMissing(error) ? 'changed' : 'unknown' };
  }
}

/** The file's identity as it is now, if its content is what it was or was going to be. */
export async function sameFile(
  fs: FileSystem,
  path: string,
  { identity, files }: Pick<Left, 'identity' | 'files'>,
): Promise<FileIdentity | undefined> {
  const { size, mtimeMs, ino } = await fs.stat(path);
  if (size === identity.size && mtimeMs === identity.mtimeMs && ino === identity.ino) return identity;
  const sha256 = sha256Of(await fs.readFile(path));
  return sha256 === identity.sha256 || files.includes(sha256) ? { size, mtimeMs, ino, sha256 } : undefined;
}

function sameContent(fs: FileSystem, folder: string, sha256: string | undefined): boolean {
  const now = readLog(fs, folder);
  return (now && sha256Of(now)) === sha256;
}
