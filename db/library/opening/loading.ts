import { join } from 'node:path';
import { Problem } from '@core/problems/problem';
import { newestGoodBackup } from '../backups/backups';
import { diskProblem } from '../file/disk-problem';
import { errorCode, isMissing, type FileFacts, type FileSystem } from '../file/file-system';
import { damagedFile, openBytes, type OpenedBytes } from '../file/library-bytes';
import type { LibraryMeta } from '../file/meta';
import { sha256Of, type FileIdentity } from '../file/whole-file';
import { LIBRARY_FILE } from '../folding/rewrite';
import { decodeLog, type LogContents, type LogRecord, type Position } from '../log/log-format';
import { readLog } from '../log/read-log';
import { endOf, meets, recordsBeyond, replayInPieces } from '../log/replay';
import { isAboutLog, salvageLog, withGoodPart } from '../log/salvage';
import type { Settled } from '../options';
import type { Engine } from '../sql/engine';
import { pendingMigrations } from '../../migrations/runner';
import { NOT_AS_MADE, refuseAlteredSchema } from './schema';
import type { ReadFile, ReadProgress } from './read-file';
import {
  alteredFile,
  missingLibrary,
  missingLog,
  newerFile,
  notALibraryFolder,
  openInAnotherTool,
  wayBack,
} from './opening-problems';

export interface Loaded {
  engine: Engine;
  /** Of the file, with the position that the log leads to. */
  meta: LibraryMeta;
  /** The state that the file itself holds. */
  inFile: Position;
  identity: FileIdentity;
  /** The log as found, and what it says; undefined when there was none. */
  log: LogContents | undefined;
  /** Whether the log knows the file by its hash. */
  vouched: boolean;
  replayed: number;
  tornBytes: number;
  /** What is to be told although it stops nothing. */
  notes: Problem[];
}

interface OnDisk extends ReadFile {
  logBytes: Uint8Array | undefined;
}

const ATTEMPTS = 5;

/** Refuses what is not a library's folder, by what is there. Throws Problem library-missing or library-not-one. */
export async function refuseOtherThanLibrary(settled: Settled): Promise<void> {
  const { fileSystem: fs, folder } = settled;
  const place = await factsOf(fs, folder);
  if (!place) throw await missing(settled, 'The folder of this library is not there any more.');
  if (!place.isDirectory) throw notALibraryFolder('This is a file; a library is a folder.');
  const file = await factsOf(fs, join(folder, LIBRARY_FILE));
  if (!file) throw await missing(settled, 'There is no library.sqlite in this folder.');
  if (!file.isFile) throw notALibraryFolder('In this folder, library.sqlite is not a file.');
  for (const companion of ['library.sqlite-wal', 'library.sqlite-journal']) {
    if (((await factsOf(fs, join(folder, companion)))?.size ?? 0) > 0) throw openInAnotherTool(companion);
  }
}

/**
 * Reads file and log and replays what the file does not hold. Whoever has the library open may fold meanwhile: what
 * does not fit together is read again as long as it changes.
 */
export async function loadFromDisk(settled: Settled): Promise<Loaded> {
  try {
    let found = await readBoth(settled);
    for (let attempt = 1; ; attempt += 1) {
      try {
        return await load(settled, found);
      } catch (error) {
        const now = await readBoth(settled);
        if (attempt === ATTEMPTS || isSame(found, now)) throw error;
        found = now;
      }
    }
  } catch (error) {
    throw await withNewestBackup(settled, diskProblem(error, 'read the library'));
  }
}

async function readBoth({ fileSystem: fs, folder, reader, onReading }: Settled): Promise<OnDisk> {
  // The log first: should its owner fold it meanwhile, the file is newer than the log we have, never older.
  const logBytes = readLog(fs, folder);
  const logSize = logBytes?.length ?? 0;
  const told: ReadProgress | undefined = onReading && ((done, of) => onReading(done, of + logSize));
  return { logBytes, ...(await reader(join(folder, LIBRARY_FILE), told)) };
}

function isSame(one: OnDisk, other: OnDisk): boolean {
  const logs = [one.logBytes, other.logBytes].map((bytes) => bytes && sha256Of(bytes));
  return one.identity.sha256 === other.identity.sha256 && logs[0] === logs[1];
}

async function load(settled: Settled, { logBytes, bytes, identity }: OnDisk): Promise<Loaded> {
  const read: ReadLog | undefined = logBytes && { bytes: logBytes, ...tryDecode(logBytes) };
  const vouched = read?.contents?.files.includes(identity.sha256) === true;
  const { engine, meta } = await openFile(settled, bytes, vouched, read);
  const inFile = { sequence: meta.sequence, chain: meta.chain };
  try {
    if (read?.contents && read.contents.files.length > 0 && !vouched)
      await refuseStrange(settled, { engine, meta }, read.contents);
    if (vouched) pendingMigrations(engine, settled.migrations);
    else await refuseAlteredSchema(engine, settled.migrations);
    const records = read ? await follow(settled, { engine, meta }, read, bytes.length) : [];
    return {
      engine,
      meta: { ...meta, ...(records.length > 0 && read?.contents ? endOf(read.contents) : inFile) },
      inFile,
      identity,
      log: read?.contents,
      vouched,
      replayed: records.length,
      tornBytes: read?.contents?.torn ?? 0,
      notes: read || meta.sequence === 0 ? [] : [missingLog(meta.sequence)],
    };
  } catch (error) {
    const told =
      read && isAboutLog(error)
        ? withGoodPart(error, salvageLog(engine, meta, read.bytes, identity.sha256), {
            keptIn: settled.backupFolder,
            vouched,
          })
        : error;
    engine.close();
    throw told;
  }
}

interface ReadLog {
  bytes: Uint8Array;
  contents?: LogContents;
  damage?: Problem;
}

/** Beside a log of ours that knows another file, or backups of ours, one that is no library of ours is a damaged one. */
async function openFile(
  settled: Settled,
  bytes: Uint8Array,
  known: boolean,
  log: ReadLog | undefined,
): Promise<OpenedBytes> {
  try {
    return await openBytes(bytes, settled.migrations.length, { known, given: true });
  } catch (error) {
    const code = error instanceof Problem && !known ? error.code : undefined;
    if (code !== 'library-not-one' && code !== 'library-newer') throw error;
    const knowsAnother = (log?.contents?.files.length ?? 0) > 0;
    if (knowsAnother || (code === 'library-not-one' && (isOurs(log) || (await hasBackup(settled)))))
      throw damagedFile('it does not begin as it was written');
    throw error;
  }
}

function isOurs(log: ReadLog | undefined): boolean {
  return log !== undefined && Buffer.from(log.bytes.subarray(0, 14)).toString('latin1') === 'stillroom-log ';
}

async function hasBackup({ fileSystem, backupFolder }: Settled): Promise<boolean> {
  return (await newestGoodBackup(fileSystem, backupFolder).catch(() => undefined)) !== undefined;
}

function tryDecode(bytes: Uint8Array): { contents: LogContents } | { damage: Problem } {
  try {
    return { contents: decodeLog(bytes) };
  } catch (error) {
    if (isAboutLog(error)) return { damage: error };
    throw error;
  }
}

/** Replays what the file does not hold. Throws Problem when the log cannot be followed; then the engine is as it was. */
async function follow(
  { onReading }: Settled,
  { engine, meta }: OpenedBytes,
  { bytes, contents, damage }: ReadLog,
  fileSize: number,
): Promise<LogRecord[]> {
  if (!contents) throw damage;
  const records = recordsBeyond(meta, contents);
  const of = fileSize + bytes.length;
  await replayInPieces(engine, bytes, records, (end) => onReading?.(fileSize + end, of));
  return records;
}

/** A file that SQLite finds whole, and that is not the one which the log belongs to. */
async function refuseStrange(
  { migrations }: Settled,
  { engine, meta }: OpenedBytes,
  log: LogContents,
): Promise<never> {
  await refuseAlteredSchema(engine, migrations).catch((error: unknown) => {
    // Of another version it cannot be: this one's log knows it.
    throw error instanceof Problem && error.code === 'library-newer' ? damagedFile(NOT_AS_MADE) : error;
  });
  // The checks of two libraries never meet: one of another name whose changes are these is this one, altered.
  if (meta.id !== log.header.libraryId && meets(meta, log)) throw alteredFile();
  recordsBeyond(meta, log);
  const { sequence } = endOf(log);
  const isLogOlder =
    meta.sequence > sequence || (log.files.length === 1 && meta.sequence > log.header.sequence);
  throw isLogOlder ? newerFile(meta.sequence, sequence) : alteredFile();
}

async function withNewestBackup(settled: Settled, problem: Problem): Promise<Problem> {
  if (problem.code !== 'library-damaged' && problem.code !== 'library-changed-outside') return problem;
  const { fileSystem, backupFolder } = settled;
  const backup = await newestGoodBackup(fileSystem, backupFolder).catch(() => undefined);
  const { code, message: title, advice: first, facts } = problem;
  const isOfFile = code === 'library-damaged' && facts.file === LIBRARY_FILE;
  const advice = isOfFile ? `${first} ${wayBack(backup, backupFolder)}` : first;
  return new Problem(
    { code, title, advice, facts: { ...facts, newestBackup: backup ?? null } },
    { cause: problem },
  );
}

async function missing(settled: Settled, title: string): Promise<Problem> {
  const newestBackup =
    (await newestGoodBackup(settled.fileSystem, settled.backupFolder).catch(() => undefined)) ?? null;
  return missingLibrary(settled.folder, title, newestBackup);
}

async function factsOf(fs: FileSystem, path: string): Promise<FileFacts | undefined> {
  try {
    return await fs.stat(path);
  } catch (error) {
    if (isMissing(error) || errorCode(error) === 'ENOTDIR') return undefined;
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
