import { createHash, randomBytes } from 'node:crypto';
import { basename, dirname, join } from 'node:path';
import { errorCode, isMissing, type FileFacts, type FileSystem } from './file-system';

/** How a file on disk looked when we last read or wrote it. */
export interface FileIdentity {
  size: number;
  mtimeMs: number;
  ino: number;
  sha256: string;
}

export interface WriteOptions {
  /** Called after the new bytes stand beside the old file and just before they replace it; throws to stop. */
  beforeReplace?: () => Promise<void>;
  /** The hash of the bytes, where it is known. */
  sha256?: string;
  platform?: NodeJS.Platform;
}

export interface Written {
  identity: FileIdentity;
  /** False when the folder could not be flushed: the file is in place, but a power cut might undo the rename. */
  durable: boolean;
}

const HELD_BY_ANOTHER = new Set(['EPERM', 'EACCES', 'EBUSY']);
const FOLDERS_CANNOT_SYNC = new Set(['EPERM', 'EISDIR', 'EINVAL', 'EACCES', 'ENOTSUP', 'EBADF']);
const FIRST_PAUSE_MS = 20;
const LONGEST_PAUSE_MS = 500;
const PATIENCE_MS = 15_000;
/** A lock taken away is of no more use; a log is, and is not swept. */
const TEMPORARY = /^\.(?:.+\.(\d+)-[0-9a-f]{12}\.part|library\.lock\.(\d+)-[0-9a-f]{12}\.taken)$/;

export function sha256Of(bytes: Uint8Array): string {
  return createHash('sha256').update(bytes).digest('hex');
}

/** A name in the same folder that nobody else uses, recognisable to `sweepTemporaryFiles`. */
export function temporaryPath(target: string): string {
  return join(dirname(target), `.${basename(target)}.${process.pid}-${randomBytes(6).toString('hex')}.part`);
}

/** Whether a name is that of a file which somebody is going to put in the place of `target`. */
export function isTemporaryOf(target: string, name: string): boolean {
  return name.startsWith(`.${basename(target)}.`) && TEMPORARY.test(name) && name.endsWith('.part');
}

/**
 * Replaces `target` by `bytes`, wholly or not at all: written beside, flushed, renamed over, folder flushed.
 * On failure before the rename the old file stands untouched and nothing is left beside it.
 */
export async function writeWholeFile(
  fs: FileSystem,
  target: string,
  bytes: Uint8Array,
  options: WriteOptions = {},
): Promise<Written> {
  const existing = await existingTarget(fs, target);
  const temporary = temporaryPath(existing.path);
  let written: FileFacts;
  try {
    written = await writeBytes(fs, temporary, bytes, existing.mode);
    await options.beforeReplace?.();
    await renameWithPatience(fs, temporary, existing.path, options.platform ?? process.platform);
  } catch (error) {
    await fs.unlink(temporary).catch(() => undefined);
    throw error;
  }
  const durable = await syncFolder(fs, dirname(existing.path), options.platform ?? process.platform);
  // A rename keeps these, and asking again could fail now that the new file is in place.
  const { size, mtimeMs, ino } = written;
  return { identity: { size, mtimeMs, ino, sha256: options.sha256 ?? sha256Of(bytes) }, durable };
}

/** A link is followed, so that the file it points at is replaced; the file keeps its mode. */
async function existingTarget(fs: FileSystem, target: string): Promise<{ path: string; mode?: number }> {
  try {
    const path = await fs.realpath(target);
    return { path, mode: (await fs.stat(path)).mode & 0o777 };
  } catch (error) {
    if (isMissing(error)) return { path: target };
    throw error;
  }
}

async function writeBytes(
  fs: FileSystem,
  path: string,
  bytes: Uint8Array,
  mode?: number,
): Promise<FileFacts> {
  const handle = await fs.open(path, 'wx', mode);
  try {
    let done = 0;
    while (done < bytes.length) {
      const count = await handle.write(bytes, done, bytes.length - done, done);
      if (count <= 0) throw Object.assign(new Error('The disk took no more bytes.'), { code: 'EIO' });
      done += count;
    }
    await handle.sync();
  } finally {
    await handle.close();
  }
  const facts = await fs.stat(path);
  if (facts.size !== bytes.length)
    throw Object.assign(new Error('The file came out too short.'), { code: 'EIO' });
  return facts;
}

/** On Windows a scanner or sync client may hold the target for a while: waits for it, up to 15 seconds. */
async function renameWithPatience(
  fs: FileSystem,
  from: string,
  to: string,
  platform: NodeJS.Platform,
): Promise<void> {
  let waited = 0;
  let pause = FIRST_PAUSE_MS;
  for (;;) {
    try {
      await fs.rename(from, to);
      return;
    } catch (error) {
      const passing = platform === 'win32' && HELD_BY_ANOTHER.has(errorCode(error) ?? '');
      if (!passing || waited >= PATIENCE_MS) throw error;
    }
    await fs.pause(pause);
    waited += pause;
    pause = Math.min(pause * 2, LONGEST_PAUSE_MS);
  }
}

/** Flushes a folder's entries. True when done, or where the system has no such thing (Windows). */
async function syncFolder(fs: FileSystem, folder: string, platform: NodeJS.Platform): Promise<boolean> {
  try {
    const handle = await fs.open(folder, 'r');
    try {
      await handle.sync();
    } finally {
      await handle.close();
    }
    return true;
  } catch (error) {
    return platform === 'win32' && FOLDERS_CANNOT_SYNC.has(errorCode(error) ?? '');
  }
}

/** As `syncFolder`, for the log. */
export function syncFolderNow(
  fs: FileSystem,
  folder: string,
  platform: NodeJS.Platform = process.platform,
): boolean {
  try {
    const fd = fs.openSync(folder, 'r');
    try {
      fs.fsyncSync(fd);
    } finally {
      fs.closeSync(fd);
    }
    return true;
  } catch (error) {
    return platform === 'win32' && FOLDERS_CANNOT_SYNC.has(errorCode(error) ?? '');
  }
}

/** Removes half-written files of ours whose process is gone. Touches nothing else; failures do not matter. */
export async function sweepTemporaryFiles(
  fs: FileSystem,
  folder: string,
  isRunning: (pid: number) => boolean,
): Promise<void> {
  const names = await fs.readdir(folder).catch(() => []);
  for (const name of names) {
    const [, ofPart, ofLock] = TEMPORARY.exec(name) ?? [];
    const pid = ofPart ?? ofLock;
    if (pid !== undefined && !isRunning(Number(pid)))
      await fs.unlink(join(folder, name)).catch(() => undefined);
  }
}
