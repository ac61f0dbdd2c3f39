import { join } from 'node:path';
import { Problem } from '@core/problems/problem';
import { writeBackup, type Backup, type BackupOrder } from '../backups/backup-file';
import { diskProblem } from '../file/disk-problem';
import type { FileSystem } from '../file/file-system';
import { checkContents, openBytes } from '../file/library-bytes';
import { decodeLog } from '../log/log-format';
import { changedOutside as logChangedOutside } from '../log/log-place';
import { writeRevision } from '../file/meta';
import { recordsBeyond, replay } from '../log/replay';
import { sha256Of, writeWholeFile, type FileIdentity } from '../file/whole-file';

export const LIBRARY_FILE = 'library.sqlite';
export const LOG_FILE = 'library.log';

/** What a rewrite needs to know; plain data, so that it can be handed to a worker. */
export interface RewriteJob {
  folder: string;
  /** The hashes that the file may have, by the log; anything else on disk is someone else's and stays. */
  expected: string[];
  /** Whether SQLite has found the file whole since it was opened. */
  checked: boolean;
  /** How much of the log to fold in, in bytes, and the sequence it must lead to. */
  logLength: number;
  through: number;
  backup?: BackupOrder;
}

export interface RewriteResult {
  /** The file as written; undefined when the log had nothing new and the file stayed. */
  identity?: FileIdentity;
  revision: number;
  /** False when the folder could not be flushed: the log must be kept whole. */
  durable: boolean;
  backup?: Backup;
  /** Why the backup was not made, when the rewrite itself went well. */
  backupProblem?: Problem;
}

/** Told the hash of the new file before it replaces the old one; throws when it must not. */
export type Announce = (sha256: string) => void | Promise<void>;
export type Rewriter = (job: RewriteJob, announce: Announce) => Promise<RewriteResult>;

/**
 * Folds the log into the library file: file and log are read from disk, replayed, checked, and written whole.
 * Works from the disk alone and so runs anywhere. Throws Problem; then the old file stands.
 */
export async function performRewrite(
  fs: FileSystem,
  job: RewriteJob,
  announce: Announce,
): Promise<RewriteResult> {
  try {
    return await foldAndWrite(fs, job, announce);
  } catch (error) {
    throw diskProblem(error, 'write the library file');
  }
}

/** Runs the rewrite in this process; for tests, and where no worker can be had. */
export function createInlineRewriter(fs: FileSystem): Rewriter {
  return (job, announce) => performRewrite(fs, job, announce);
}

async function foldAndWrite(fs: FileSystem, job: RewriteJob, announce: Announce): Promise<RewriteResult> {
  const target = join(job.folder, LIBRARY_FILE);
  const before = await fs.stat(target);
  const bytes = await fs.readFile(target);
  const found = sha256Of(bytes);
  if (!job.expected.includes(found)) throw changedOutside(target);
  const log = decodeLog((await fs.readFile(join(job.folder, LOG_FILE))).subarray(0, job.logLength), {
    part: true,
  });
  const { engine, meta } = await openBytes(bytes, Number.MAX_SAFE_INTEGER, { known: job.checked });
  try {
    const records = recordsBeyond(meta, log);
    replay(engine, log.bytes, records);
    const reached = records.at(-1)?.sequence ?? meta.sequence;
    if (reached !== job.through) throw logChangedOutside(join(job.folder, LOG_FILE));
    if (records.length === 0)
      return { revision: meta.revision, durable: true, ...(await backUp(fs, job, bytes)) };

    const revision = meta.revision + 1;
    writeRevision(engine, revision);
    checkContents(engine);
    const rewritten = engine.exportBytes();
    const written = await writeWholeFile(fs, target, rewritten, {
      beforeReplace: async () => {
        const now = await fs.stat(target);
        const same = now.size === before.size && now.mtimeMs === before.mtimeMs && now.ino === before.ino;
        if (!same && sha256Of(await fs.readFile(target)) !== found) throw changedOutside(target);
        await announce(sha256Of(rewritten));
      },
    });
    return { ...written, revision, ...(await backUp(fs, job, rewritten)) };
  } finally {
    engine.close();
  }
}

async function backUp(
  fs: FileSystem,
  job: RewriteJob,
  bytes: Uint8Array,
): Promise<Pick<RewriteResult, 'backup' | 'backupProblem'>> {
  if (!job.backup) return {};
  try {
    return { backup: await writeBackup(fs, job.backup, job.through, bytes) };
  } catch (error) {
    return { backupProblem: diskProblem(error, 'make a backup') };
  }
}

/** The file on disk is not the one we know. */
export function changedOutside(path: string): Problem {
  return new Problem({
    code: 'library-changed-outside',
    title: 'Another program changed the library file while it was open here.',
    advice: 'Nothing was overwritten. Save what you have here as a copy, then open the library again.',
    facts: { file: path },
  });
}
