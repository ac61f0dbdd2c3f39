import { join } from 'node:path';
import { Problem } from '@core/problems/problem';
import type { Engine } from './sql/engine';
import type { LibraryLock } from './lock/lock';
import type { ChangeLog } from './log/log';
import type { LoggedStatement, Position } from './log/log-format';
import type { Settled } from './options';
import { changedOutside, LIBRARY_FILE } from './folding/rewrite';
import type { FileIdentity } from './file/whole-file';

/** An open library: what is in memory, and how the disk was left. */
export interface LibraryState {
  readonly settled: Settled;
  readonly id: string;
  /** Undefined when reading only. */
  readonly log: ChangeLog | undefined;
  readonly lock: LibraryLock | undefined;
  /** The hash of the log as it was when opened, for one who only reads it. */
  readonly logSha256: string | undefined;
  engine: Engine;
  identity: FileIdentity;
  /** The hashes that the file may have, by the log. */
  files: readonly string[];
  position: Position;
  /** The last change that is in the file. */
  folded: number;
  revision: number;
  readOnlyBecause: Problem | undefined;
  /** Why the last rewrite or backup failed. */
  rewriteProblem: Problem | undefined;
  changedOutside: boolean;
  /** Whether SQLite has found the file whole since it was opened. */
  checked: boolean;
  /** The change that could not be saved because the library was taken over just then. */
  unsaved: readonly LoggedStatement[] | undefined;
  /** Another state takes the present one's place just now. */
  replacing: boolean;
  closed: boolean;
}

export function isReadOnly(state: LibraryState): boolean {
  return state.readOnlyBecause !== undefined || state.changedOutside;
}

export function libraryPath(state: LibraryState): string {
  return join(state.settled.folder, LIBRARY_FILE);
}

/** Remembers a change from outside, or that somebody took the library over; nothing is written any more then. */
export function noteOutside(state: LibraryState, error: unknown): void {
  if (!(error instanceof Problem)) return;
  if (error.code === 'library-changed-outside') state.changedOutside = true;
  if (error.code === 'library-locked') state.readOnlyBecause ??= error;
}

export function refuseWhenClosed(state: LibraryState): void {
  if (!state.closed) return;
  throw new Problem({ code: 'no-library', title: 'The library has been closed.', advice: 'Open it again.' });
}

/** Notes outside of the library's folder how it stands, wherever its log may not reach back to this any more. */
export function rememberState({ settled, id, position: { sequence, chain } }: LibraryState): void {
  settled.memory?.remember(settled.folder, { id, sequence, chain });
}

/** The log, when changes may be made. Throws Problem when not. */
export function writableLog(state: LibraryState): ChangeLog {
  refuseWhenClosed(state);
  if (state.readOnlyBecause?.code === 'library-locked' && state.log) throw state.readOnlyBecause;
  if (state.changedOutside) throw changedOutside(libraryPath(state));
  if (state.readOnlyBecause || !state.log) {
    const { message = '', advice = '', facts } = state.readOnlyBecause ?? {};
    throw new Problem({
      code: 'library-read-only',
      title: `Nothing can be changed here. ${message}`,
      advice,
      facts,
    });
  }
  if (state.replacing) {
    throw new Problem({
      code: 'conflict',
      title: 'The library is being written to disk as a whole just now.',
      advice: 'Wait until that is done, then try again. Nothing was changed.',
    });
  }
  return state.log;
}
