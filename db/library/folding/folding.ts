import { Problem } from '@core/problems/problem';
import { dueBackup } from '../backups/backup-due';
import type { Backup, BackupReason } from '../backups/backup-file';
import { listBackups, readBackup, rotateBackups } from '../backups/backups';
import { copyToSecondPlace } from '../backups/second-place';
import { diskProblem } from '../file/disk-problem';
import { takenOverProblem } from '../lock/lock-holder';
import { Engine } from '../sql/engine';
import type { ChangeLog } from '../log/log';
import type { LogHeader, Position } from '../log/log-format';
import { writeRevision } from '../file/meta';
import { sameFile } from '../file/outside';
import type { PreparedState, StateToFollow } from '../backups/restore';
import { changedOutside, type RewriteResult } from './rewrite';
import {
  isReadOnly,
  libraryPath,
  noteOutside,
  refuseWhenClosed,
  rememberState,
  writableLog,
  type LibraryState,
} from '../state';
import { writeWholeFile, type FileIdentity } from '../file/whole-file';

/** Folds the log into the file, with a backup when one is due. Throws Problem; the log then still holds everything. */
export async function fold(state: LibraryState): Promise<void> {
  refuseWhenClosed(state);
  if (isReadOnly(state) || state.position.sequence === state.folded) return;
  const { fileSystem, backupFolder, now } = state.settled;
  // A backup folder that cannot be read must not keep the file from being written; the backup itself then says why.
  const backups = await listBackups(fileSystem, backupFolder).catch(() => []);
  await rewriteNow(state, dueBackup(backups, now()));
}

/** Folds the log and makes a backup, whether or not anything changed. Throws Problem when either fails. */
export async function foldWithBackup(state: LibraryState, reason: BackupReason): Promise<Backup> {
  writableLog(state);
  return makeBackup(state, reason);
}

/** Puts a backup in place of the present state, which is backed up first. Throws Problem; the present then stands. */
export async function restoreBackup(state: LibraryState, name: string): Promise<void> {
  const { fileSystem, backupFolder } = state.settled;
  await putInPlace(state, 'restore', async () => ({
    bytes: await readBackup(fileSystem, backupFolder, name),
    why: 'restored',
  }));
}

/** What made the state that takes the present one's place. */
export type StateReason = 'merge' | 'import';
const MADE_BY: Record<StateReason, string> = { merge: 'merged', import: 'taken in' };

/**
 * Puts a state that was made from the present one in its place, which is backed up first.
 * @param from the last change of the state that it was made from
 * @returns that backup. Throws Problem conflict when more was changed since; the present then stands
 */
export async function takeState(
  state: LibraryState,
  bytes: Uint8Array,
  from: number,
  reason: StateReason,
): Promise<Backup> {
  return putInPlace(state, reason, (present) => {
    if (present.sequence !== from) throw changedSince(reason);
    return Promise.resolve({ bytes, why: MADE_BY[reason] });
  });
}

const ONCE_MORE: Record<StateReason, string> = {
  merge: 'Compare the two once more, then take it in.',
  import: 'Take the table in once more.',
};

function changedSince(reason: StateReason): Problem {
  return new Problem({
    code: 'conflict',
    title: 'Something was changed in this library meanwhile.',
    advice: `${ONCE_MORE[reason]} Nothing was changed by this.`,
  });
}

const WORDS = {
  restore: 'restore the backup',
  merge: 'write what was merged',
  import: 'write what was taken in',
} as const;

type NextState = (present: Position) => Promise<Pick<StateToFollow, 'bytes' | 'why'>>;

/**
 * The present is backed up while what follows it is made ready: each is the work of a thread, and neither needs the
 * other. The backup folds what is in the log, which counts as a writing of the file.
 */
async function backedUpAndPrepared(
  state: LibraryState,
  reason: 'restore' | StateReason,
  next: NextState,
): Promise<{ before: Backup; prepared: PreparedState; revision: number }> {
  const { settled, id, position } = state;
  const revision = state.revision + (position.sequence === state.folded ? 0 : 1);
  const prepare = async (): Promise<PreparedState> => {
    const given = await next(position);
    return settled.preparer({
      ...given,
      present: { ...position, id, revision },
      at: settled.now().toISOString(),
    });
  };
  const [made, ready] = await Promise.allSettled([makeBackup(state, reason), prepare()]);
  // Without a backup nothing is replaced, whatever came of the other.
  if (made.status === 'rejected') throw made.reason as Error;
  if (ready.status === 'rejected') throw ready.reason as Error;
  if (state.revision !== revision) throw new Error('The backup wrote the file more often than foreseen.');
  return { before: made.value, prepared: ready.value, revision };
}

/**
 * Where what is put in place was made from the present, changes go on until it is ready, and hinder it; while the file
 * is replaced they are refused.
 */
async function putInPlace(
  state: LibraryState,
  reason: 'restore' | StateReason,
  next: NextState,
): Promise<Backup> {
  const log = writableLog(state);
  state.replacing = reason === 'restore';
  try {
    const { settled, id, position } = state;
    const { before, prepared, revision } = await backedUpAndPrepared(state, reason, next);
    const engine = await Engine.open(prepared.bytes, { given: true });
    try {
      // Of a restore this cannot be: changes are refused meanwhile.
      if (reason !== 'restore' && state.position.sequence !== position.sequence) throw changedSince(reason);
      state.replacing = true;
      const written = await writeWholeFile(settled.fileSystem, libraryPath(state), prepared.bytes, {
        sha256: prepared.sha256,
        beforeReplace: async () => {
          await refuseForeignFile(state);
          log.announceFile(prepared.sha256);
        },
      });
      adoptFile(state, written.identity);
    } catch (error) {
      engine.close();
      throw error;
    }
    state.engine.close();
    state.engine = engine;
    state.position = prepared.position;
    state.folded = prepared.position.sequence;
    state.revision = revision + 1;
    restart(log, { libraryId: id, ...prepared.position, fileSha256: state.identity.sha256 });
    rememberState(state);
    return before;
  } catch (error) {
    noteOutside(state, error);
    throw diskProblem(error, WORDS[reason]);
  } finally {
    state.replacing = false;
  }
}

/** The file is in place by now, so a log that cannot be restarted just yet is no failure: the next change waits for it. */
function restart(log: ChangeLog, header: LogHeader): void {
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
  try {
    refuseLostLock(state);
  } catch (error) {
    throw diskProblem(error, 'write the library file');
  }
  const { settled, position, log, identity, files } = state;
  if (!log) throw new Error('Only a library open for writing is rewritten.');
  const logLength = log.length;
  const { backupFolder, now } = settled;
  let result: RewriteResult;
  try {
    result = await settled.rewriter(
      {
        folder: settled.folder,
        expected: [identity.sha256, ...files],
        checked: state.checked,
        logLength,
        through: position.sequence,
        backup: reason && { folder: backupFolder, reason, at: now().toISOString() },
      },
      (sha256) => log.announceFile(sha256),
    );
  } catch (error) {
    noteOutside(state, error);
    noteDamage(state, error);
    throw diskProblem(error, 'write the library file');
  }
  state.checked = true;
  adopt(state, result, position, (fileSha256) =>
    log.startAfter(logLength, { libraryId: state.id, ...position, fileSha256 }),
  );
  if (result.backup) {
    await rotateBackups(settled.fileSystem, backupFolder, now(), settled.backupLimits).catch(() => []);
    state.rewriteProblem ??= await copyToSecondPlace(settled, result.backup.name);
  }
  return result;
}

/** Takes over what the rewrite did. The log is cut only once the file is known to survive a power cut. */
function adopt(
  state: LibraryState,
  result: RewriteResult,
  position: Position,
  cutLog: (fileSha256: string) => void,
): void {
  state.rewriteProblem = result.backupProblem;
  if (!result.identity) return;
  adoptFile(state, result.identity);
  state.revision = result.revision;
  state.folded = position.sequence;
  writeRevision(state.engine, result.revision);
  rememberState(state);
  try {
    if (!result.durable) throw Object.assign(new Error('The folder could not be flushed.'), { code: 'EIO' });
    cutLog(result.identity.sha256);
  } catch (error) {
    // Records that the file holds already do no harm: they are passed over, and cut at the next rewrite.
    noteOutside(state, error);
    state.rewriteProblem = diskProblem(error, 'tidy the change log (the library itself is saved)');
  }
}

function adoptFile(state: LibraryState, identity: FileIdentity): void {
  state.identity = identity;
  state.files = [identity.sha256];
}

/** Someone may have taken the library over. It is not taken back: two writers are worse than one that stops. */
function refuseLostLock(state: LibraryState): void {
  const holder = state.lock?.heldByOther();
  if (!holder) return;
  state.readOnlyBecause = takenOverProblem(holder);
  throw state.readOnlyBecause;
}

async function refuseForeignFile(state: LibraryState): Promise<void> {
  const path = libraryPath(state);
  if (!(await sameFile(state.settled.fileSystem, path, state))) throw changedOutside(path);
}

/** Looks through the file as it was opened, before it is folded over. A fault found stops all writing. */
export async function checkFile(state: LibraryState): Promise<void> {
  if (state.closed || state.checked) return;
  const { settled, identity, files } = state;
  try {
    await settled.checker({ folder: settled.folder, expected: [identity.sha256, ...files] });
    state.checked = true;
  } catch (error) {
    noteDamage(state, error);
    throw diskProblem(error, 'check the library file');
  }
}

/** What on the disk cannot be followed any more must not be added to. */
function noteDamage(state: LibraryState, error: unknown): void {
  if (error instanceof Problem && error.code === 'library-damaged') state.readOnlyBecause ??= stopped(error);
}

function stopped({ message: title, facts }: Problem): Problem {
  const wayOut =
    facts.file === 'library.log'
      ? 'All that was saved is still open here: save it as a copy on the library’s page.'
      : 'Close the library and open it again to restore its newest good backup.';
  return new Problem({
    code: 'library-damaged',
    title,
    advice: `Nothing is written here any more, so that nothing is made worse. ${wayOut}`,
    facts,
  });
}

/** Shows others that we are alive, and stops writing once the library is someone else's. */
export function refreshLock(state: LibraryState): void {
  try {
    refuseLostLock(state);
    state.lock?.refresh();
  } catch {
    // Noted in the state; a lock that cannot be read just now is looked at again in half a minute.
  }
}
