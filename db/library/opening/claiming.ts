import { dirname, join } from 'node:path';
import { Problem } from '@core/problems/problem';
import { diskProblem } from '../file/disk-problem';
import { errorCode, isMissing } from '../file/file-system';
import { isTemporaryOf } from '../file/whole-file';
import { LIBRARY_FILE, LOG_FILE } from '../folding/rewrite';
import { ChangeLog } from '../log/log';
import type { Guard, LogContent } from '../log/new-log';
import { decodeLog, encodeHeader, LOG_FORMAT, type LogContents } from '../log/log-format';
import { putInPlace, realLogPath, removeQuietly, takeAway, takenAway } from '../log/log-place';
import { endOf, recordsBeyond, replay, stateAt } from '../log/replay';
import type { Settled } from '../options';
import type { Loaded } from './loading';
import { wentThrough } from './memory';

/**
 * Makes the log ours alone. Whoever had it may have added to it since it was loaded: what is found then is replayed
 * too. Answers undefined when file or log are no longer those that were loaded; then they are as they were.
 * Throws Problem; then too.
 * @param beforeInstall called when `loaded` is all that there is, and nothing has been written; throws to stop
 */
export function claimLog(
  settled: Settled,
  loaded: Loaded,
  { guard, beforeInstall }: { guard: Guard; beforeInstall: () => void },
): ChangeLog | undefined {
  const { fileSystem: fs, folder, longestLogBytes: longest } = settled;
  const path = realLogPath(fs, join(folder, LOG_FILE));
  let away: string | undefined;
  try {
    away = takeAway(fs, path) ?? takeLeftBehind(settled, path);
    removeUnfinished(settled, path);
    const content = contentFor(loaded, away === undefined ? undefined : fs.readFileSync(away));
    if (!content || !isFileAsLoaded(settled, loaded)) {
      putBack(settled, away, path);
      return undefined;
    }
    guard();
    beforeInstall();
    const log = ChangeLog.install(fs, path, content, { guard, longest }, away);
    removeLeftovers(settled, log, loaded);
    return log;
  } catch (error) {
    putBack(settled, away, path);
    // Another opener was quicker: it has put its own in place, or has taken what was taken away here.
    if (errorCode(error) === 'EEXIST' || isMissing(error)) return undefined;
    throw diskProblem(error, 'open the change log');
  }
}

/**
 * Files that another was about to put in place. It noted so in its log before this became ours, may have been suspended
 * since, and must not put them over ours when it goes on. From now on its log refuses such a note.
 */
function removeUnfinished({ fileSystem: fs, folder }: Settled, log: string): void {
  for (const target of [fs.realpathSync(join(folder, LIBRARY_FILE)), log]) {
    const names = fs.readdirSync(dirname(target)).filter((name) => isTemporaryOf(target, name));
    for (const name of names) {
      try {
        fs.unlinkSync(join(dirname(target), name));
      } catch (error) {
        if (!isMissing(error)) throw error;
      }
    }
  }
}

function takeLeftBehind({ fileSystem: fs }: Settled, path: string): string | undefined {
  const [latest] = takenAway(fs, path);
  return latest && takeAway(fs, latest, path);
}

/** What our log starts with: all of the one before, or a new beginning where that is older than the file. */
function contentFor(loaded: Loaded, found: Uint8Array | undefined): LogContent | undefined {
  const log = loaded.log;
  if (!found || !log) return found || log ? undefined : startAtFile(loaded);
  const now = Buffer.compare(found, log.bytes) === 0 ? log : grown(loaded, found);
  if (!now) return undefined;
  const goesOn = now.format === LOG_FORMAT && loaded.vouched && endOf(now).sequence >= loaded.inFile.sequence;
  if (goesOn) return { bytes: found.subarray(0, now.length), position: endOf(now) };
  const beyond = now.records.findIndex(({ sequence }) => sequence > loaded.inFile.sequence);
  if (beyond < 0) return startAtFile(loaded);
  const from = now.records[beyond - 1]?.end ?? found.indexOf('\n'.charCodeAt(0)) + 1;
  return startAtFile(loaded, found.subarray(from, now.length));
}

function startAtFile({ meta, inFile, identity }: Loaded, records: Uint8Array = new Uint8Array()): LogContent {
  const header = encodeHeader({ libraryId: meta.id, ...inFile, fileSha256: identity.sha256 });
  const { sequence, chain } = meta;
  return { bytes: Buffer.concat([header, records]), position: { sequence, chain } };
}

/** The log as it is now, if it only went on from where it was loaded; what came is then in the engine. */
function grown(loaded: Loaded, found: Uint8Array): LogContents | undefined {
  try {
    const now = decodeLog(found);
    const { sequence, chain } = loaded.meta;
    if (stateAt(sequence, now)?.chain !== chain || !now.files.includes(loaded.identity.sha256))
      return undefined;
    const records = recordsBeyond(loaded.meta, now);
    replay(loaded.engine, found, records);
    Object.assign(loaded.meta, endOf(now));
    loaded.replayed += records.length;
    loaded.log = now;
    return now;
  } catch (error) {
    if (error instanceof Problem) return undefined;
    throw error;
  }
}

function isFileAsLoaded({ fileSystem: fs, folder }: Settled, { identity }: Loaded): boolean {
  const now = fs.statSync(join(folder, LIBRARY_FILE));
  return now.size === identity.size && now.mtimeMs === identity.mtimeMs && now.ino === identity.ino;
}

/** Another opener may have put its own in place meanwhile: then ours stays aside, and the next opening sees to it. */
function putBack({ fileSystem: fs }: Settled, away: string | undefined, path: string): void {
  if (away === undefined) return;
  try {
    putInPlace(fs, away, path);
  } catch {
    // It is found where it is.
  }
}

/**
 * Logs that openers which were stopped had taken away, where ours shows to hold all that they do. Ours itself may be
 * among them: another opener has taken it, and puts it back should it find that it may not.
 */
function removeLeftovers({ fileSystem: fs }: Settled, log: ChangeLog, loaded: Loaded): void {
  for (const left of takenAway(fs, log.path)) {
    try {
      if (log.isAt(left)) continue;
      if (wentThrough(loaded, endOf(decodeLog(fs.readFileSync(left))))) removeQuietly(fs, left);
    } catch {
      // What cannot be read is left for whoever wants to look at it.
    }
  }
}
