import { Problem } from '@core/problems/problem';
import { dueBackup } from '../backups/backup-due';
import type { Backup, BackupReason } from '../backups/backup-file';
import { listBackups, rotateBackups } from '../backups/backups';
import { diskProblem } from '../file/disk-problem';
import { lockedProblem } from '../lock/lock';
import type { ChangeLog } from '../log/log';
import type { Position } from '../log/log-format';
import { writeRevision } from '../file/meta';
import { sameFile } from '../file/outside';
import { prepareRestore } from '../backups/restore';
import { changedOutside, type RewriteResult } from './rewrite';
import {
  isReadOnly,
  libraryPath,
  noteOutside,
  refuseWhenClosed,
  writableLog,
  type LibraryState,
} from '../state';
import { writeWholeFile } from '../file/whole-file';

/** Folds the log into the file, with a backup when one is due. Throws Problem; the log then still holds everything. */
export async function fold(state: LibraryState): Promise<void> {
  refuseWhenClosed(state);
  if (isReadOnly(state) || state.position.sequence === state.folded) return;
  const { fileSystem, backupFolder, now } = state.settled;
  // A backup folder that cannot be read must not keep the file from being written; the backup itself then says why.
  const newest = (await listBackups(fileSystem, backupFolder).catch(() => []))[0];
  await rewriteNow(state, dueBackup(newest, now()));
}

/** Folds the log and makes a backup, whether or not anything changed. Throws Problem when either fails. */
export async function foldWithBackup(state: LibraryState, reason: BackupReason): Promise<Backup> {
  writableLog(state);
  return makeBackup(state, reason);
}

/** Puts a backup in place of the present state, which is backed up first. Throws Problem; the present then stands. */
export async function restoreBackup(state: LibraryState, name: string): Promise<void> {
  const log = writableLog(state);
  state.restoring = true;
  try {
    await makeBackup(state, 'restore');
    const { settled, id, position, revision } = state;
    const restored = await prepareRestore(settled, name, { ...position, id, revision });
    try {
      const written = await writeWholeFile(settled.fileSystem, libraryPath(state), restored.bytes, {
        beforeReplace: () => refuseForeignFile(state),
      });
      state.identity = written.identity;
    } catch (error) {
      restored.engine.close();
      throw error;
    }
    state.engine.close();
    state.engine = restored.engine;
    state.position = restored.position;
    state.folded = restored.position.sequence;
    state.revision = revision + 1;
    restart(log, { libraryId: id, ...restored.position });
  } catch (error) {
    noteOutside(state, error);
    throw diskProblem(error, 'restore the backup');
  } finally {
    state.restoring = false;
  }
}

/** The file is in place by now, so a log that cannot be restarted just yet is no failure: the next change waits for it. */
function restart(log: ChangeLog, header: Position & { libraryId: string }): void {
  try {
    log.restartAt(header);
  } catch {
    // Kept in mind by the log, which takes no change before it has worked.
  }
}

async function makeBackup(state: LibraryState, reason: BackupReason): Promise<Backup> {
  const result = await rewriteNow(state, reason);
  if (!result.backup) throw result.backupProblem ?? new Error('The rewriter made no backup.');
  return result.backup;
}

async function rewriteNow(state: LibraryState, reason: BackupReason | undefined): Promise<RewriteResult> {
  await refuseLostLock(state);
  const { settled, position, log, identity } = state;
  if (!log) throw new Error('Only a library open for writing is rewritten.');
  const logLength = log.length;
  const { backupFolder, now } = settled;
  let result: RewriteResult;
  try {
    result = await settled.rewriter({
      folder: settled.folder,
      expectedSha256: identity.sha256,
      logLength,
      through: position.sequence,
      backup: reason && { folder: backupFolder, reason, at: now().toISOString() },
    });
  } catch (error) {
    noteOutside(state, error);
    throw diskProblem(error, 'write the library file');
  }
  adopt(state, result, position, () => log.startAfter(logLength, { libraryId: state.id, ...position }));
  if (result.backup)
    await rotateBackups(settled.fileSystem, backupFolder, now(), settled.backupLimits).catch(() => []);
  return result;
}

/** Takes over what the rewrite did. The log is cut only once the file is known to survive a power cut. */
function adopt(state: LibraryState, result: RewriteResult, position: Position, cutLog: () => void): void {
  state.rewriteProblem = result.backupProblem;
  if (!result.identity) return;
  state.identity = result.identity;
  state.revision = result.revision;
  state.folded = position.sequence;
  writeRevision(state.engine, result.revision);
  try {
    if (!result.durable) throw Object.assign(new Error('The folder could not be flushed.'), { code: 'EIO' });
    cutLog();
  } catch (error) {
    // Records that the file holds already do no harm: they are passed over, and cut at the next rewrite.
    state.rewriteProblem = diskProblem(error, 'tidy the change log (the library itself is saved)');
  }
}

/** Someone may have taken the lock over. It is not taken back: two writers are worse than one that stops. */
async function refuseLostLock(state: LibraryState): Promise<void> {
  const holder = await state.lock?.holderIfNotUs().catch(() => undefined);
  if (!holder) return;
  state.readOnlyBecause = lockedProblem(holder);
  throw state.readOnlyBecause;
}

async function refuseForeignFile(state: LibraryState): Promise<void> {
  const path = libraryPath(state);
  if (!(await sameFile(state.settled.fileSystem, path, state.identity))) throw changedOutside(path);
}

/** Shows others that we are alive, and stops writing once the lock is someone else's. */
export async function refreshLock(state: LibraryState): Promise<void> {
  try {
    await refuseLostLock(state);
    await state.lock?.refresh();
  } catch (error) {
    // A lock that cannot be read or written just now is tried again in half a minute.
    if (!(error instanceof Problem)) return;
  }
}
