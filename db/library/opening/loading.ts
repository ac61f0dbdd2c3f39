import { join } from 'node:path';
import { Problem } from '@core/problems/problem';
import { writeBackup } from '../backups/backup-file';
import { newestGoodBackup } from '../backups/backups';
import { diskProblem } from '../file/disk-problem';
import type { Engine } from '../sql/engine';
import { isMissing, type FileFacts, type FileSystem } from '../file/file-system';
import { openBytes } from '../file/library-bytes';
import { ChangeLog } from '../log/log';
import type { LogContents } from '../log/log-format';
import { writeRevision, type LibraryMeta } from '../file/meta';
import type { Settled } from '../options';
import { followLog } from '../log/replay';
import { LIBRARY_FILE, LOG_FILE } from '../folding/rewrite';
import { isAboutLog, salvageLog, withGoodPart } from '../log/salvage';
import { migrate, pendingMigrations } from '../../migrations/runner';
import { sha256Of, writeWholeFile, type FileIdentity } from '../file/whole-file';

export interface Loaded {
  engine: Engine;
  meta: LibraryMeta;
  identity: FileIdentity;
  /** Undefined when there was no log, or one wholly older than the file: a new one is due. */
  logLength: number | undefined;
  /** How long the log was as found. */
  logSize: number | undefined;
  replayed: number;
  tornBytes: number;
}

/** Refuses what is not a library's folder, by what is there. Throws Problem library-missing or library-not-one. */
export async function refuseOtherThanLibrary(settled: Settled): Promise<void> {
  const { fileSystem: fs, folder } = settled;
  const place = await factsOf(fs, folder);
  if (!place) throw await missingLibrary(settled, 'The folder of this library is not there any more.');
  if (!place.isDirectory) throw notALibraryFolder('This is a file; a library is a folder.');
  const file = await factsOf(fs, join(folder, LIBRARY_FILE));
  if (!file) throw await missingLibrary(settled, 'There is no library.sqlite in this folder.');
  if (!file.isFile) throw notALibraryFolder('In this folder, library.sqlite is not a file.');
  for (const companion of ['library.sqlite-wal', 'library.sqlite-journal']) {
    if (((await factsOf(fs, join(folder, companion)))?.size ?? 0) > 0) throw openInAnotherTool(companion);
  }
}

/**
 * Reads file and log and replays what the file does not hold. The log is read first: should its owner rewrite
 * the file meanwhile, the file is then newer than the log we have, never older.
 */
export async function loadFromDisk(settled: Settled): Promise<Loaded> {
  const { fileSystem: fs, folder, migrations } = settled;
  try {
    const logBytes = await readIfThere(fs, join(folder, LOG_FILE));
    const path = join(folder, LIBRARY_FILE);
    const { size, mtimeMs, ino } = await fs.stat(path);
    const bytes = await fs.readFile(path);
    const { engine, meta } = await openBytes(bytes, migrations.length);
    try {
      pendingMigrations(engine, migrations);
      const log = logBytes && replayLog(settled, engine, meta, logBytes);
      const records = log?.records ?? [];
      return {
        engine,
        meta: { ...meta, ...position(records.at(-1) ?? meta) },
        identity: { size, mtimeMs, ino, sha256: sha256Of(bytes) },
        logLength: log && log.end >= meta.sequence ? log.length : undefined,
        logSize: logBytes?.length,
        replayed: records.length,
        tornBytes: log?.torn ?? 0,
      };
    } catch (error) {
      engine.close();
      throw error;
    }
  } catch (error) {
    throw await withNewestBackup(settled, diskProblem(error, 'read the library'));
  }
}

/** Opens the log for writing: cut to what holds, or started anew. */
export function openLog(settled: Settled, loaded: Loaded): ChangeLog {
  const { fileSystem: fs, folder } = settled;
  const path = join(folder, LOG_FILE);
  try {
    if (loaded.logLength !== undefined) return ChangeLog.continueAt(fs, path, loaded.logLength);
    const { id, sequence, chain } = loaded.meta;
    return ChangeLog.create(fs, path, { libraryId: id, sequence, chain });
  } catch (error) {
    throw diskProblem(error, 'open the change log');
  }
}

/**
 * Brings an older library up to date: a backup first, then in memory, then the file written whole. Until that
 * last step the file on disk is the old one.
 */
export async function migrateOnDisk(settled: Settled, loaded: Loaded): Promise<void> {
  const { fileSystem: fs, folder, migrations, now } = settled;
  const { engine, meta } = loaded;
  if (pendingMigrations(engine, migrations).length === 0) return;
  try {
    const order = { folder: settled.backupFolder, reason: 'migration' as const, at: now().toISOString() };
    await writeBackup(fs, order, meta.sequence, engine.exportBytes());
    migrate(engine, migrations, now());
    meta.revision += 1;
    writeRevision(engine, meta.revision);
    const written = await writeWholeFile(fs, join(folder, LIBRARY_FILE), engine.exportBytes());
    loaded.identity = written.identity;
    loaded.replayed = 0;
    if (!written.durable) throw Object.assign(new Error('The folder could not be flushed.'), { code: 'EIO' });
    // The log's records were made for the old schema, and all are in the file now.
    loaded.logLength = undefined;
  } catch (error) {
    throw diskProblem(error, 'bring the library up to date');
  }
}

/** Replays the log; where that cannot be, says in the Problem how much of it holds. */
function replayLog(
  settled: Settled,
  engine: Engine,
  meta: LibraryMeta,
  bytes: Uint8Array,
): LogContents & { end: number } {
  try {
    return followLog(engine, meta, bytes);
  } catch (error) {
    if (!isAboutLog(error)) throw error;
    throw withGoodPart(error, salvageLog(engine, meta, bytes), settled.backupFolder);
  }
}

async function withNewestBackup(settled: Settled, problem: Problem): Promise<Problem> {
  if (problem.code !== 'library-damaged') return problem;
  const newestBackup =
    (await newestGoodBackup(settled.fileSystem, settled.backupFolder).catch(() => undefined)) ?? null;
  const { code, message: title, advice, facts } = problem;
  return new Problem({ code, title, advice, facts: { ...facts, newestBackup } }, { cause: problem });
}

async function missingLibrary(settled: Settled, title: string): Promise<Problem> {
  const newestBackup =
    (await newestGoodBackup(settled.fileSystem, settled.backupFolder).catch(() => undefined)) ?? null;
  return new Problem({
    code: 'library-missing',
    title,
    advice:
      'If it is on another disk or a shared folder, connect that and try again; if it was moved, choose its new ' +
      'place; otherwise restore a backup. No empty library was created in its stead.',
    facts: { folder: settled.folder, newestBackup },
  });
}

function notALibraryFolder(title: string): Problem {
  return new Problem({
    code: 'library-not-one',
    title,
    advice:
      'Choose the folder of a library, or create a new library in an empty folder. Nothing was changed.',
  });
}

function openInAnotherTool(companion: string): Problem {
  return new Problem({
    code: 'library-locked',
    title: 'Another database program has this library open, or did not finish with it.',
    advice: `Close that program so that ${companion} goes, then open the library again. Nothing was changed.`,
    facts: { file: companion },
  });
}

async function factsOf(fs: FileSystem, path: string): Promise<FileFacts | undefined> {
  try {
    return await fs.stat(path);
  } catch (error) {
    if (isMissing(error) || (error instanceof Error && 'code' in error && error.code === 'ENOTDIR'))
      return undefined;
    throw diskProblem(error, 'read the library');
  }
}

/** The bytes of a file, or undefined where there is none. */
export async function readIfThere(fs: FileSystem, path: string): Promise<Uint8Array | undefined> {
  try {
    return await fs.readFile(path);
  } catch (error) {
    if (isMissing(error)) return undefined;
    throw error;
  }
}

function position({ sequence, chain }: { sequence: number; chain: string }): {
  sequence: number;
  chain: string;
} {
  return { sequence, chain };
}
