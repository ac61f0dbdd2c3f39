import { randomUUID } from 'node:crypto';
import { join } from 'node:path';
import type { Problem } from '@core/problems/problem';
import type { Migration } from '../migrations/runner';
import type { Reader } from '../database';
import type { AttachmentInUse } from './attachments/weekly-check';
import { nodeFileSystem, type FileSystem } from './file/file-system';
import { LONGEST_LOG } from './log/log-limits';
import type { LibraryMemory } from './opening/remembered';
import { performCheck, type Checker } from './folding/check';
import { createInlineRewriter, type Rewriter } from './folding/rewrite';
import { createInlineReader, type FileReader, type ReadProgress } from './opening/read-file';
import { prepareState, type StatePreparer } from './backups/restore';
import { USUAL_LIMITS, type RotationLimits } from './backups/rotation';

export interface LibraryOptions {
  migrations: readonly Migration[];
  now: () => Date;
  /** Makes ids of libraries and copies; UUIDs. */
  makeId: () => string;
  /** Without one, rewriting happens in this process and holds it. */
  rewriter?: Rewriter;
  fileSystem?: FileSystem;
  /** Shown to whoever finds the library locked. */
  version?: string;
  /** What to do when someone else has the library open. Default: read-only. */
  ifLocked?: 'read-only' | 'refuse';
  /** Take the lock from whoever holds it; the maker asked for it. */
  takeOver?: boolean;
  readOnly?: boolean;
  /** Default: `backups` in the library's folder. */
  backupFolder?: string;
  backupLimits?: RotationLimits;
  /** A second folder, such as one on another disk, to which every backup is copied. */
  backupCopies?: string;
  /**
   * A rewrite follows in a pause of so many ms once the log is so long, in bytes, and at once when it is twice that.
   * Default: by the size of the file (`foldAfter`).
   */
  rewriteAfterIdleMs?: number;
  rewriteAfterLogBytes?: number;
  /** From this length on the log takes no more changes before it is folded. */
  longestLogBytes?: number;
  /** Looks through the file that was opened, in a pause after that; in this process when left out. */
  checker?: Checker;
  /** Makes a state ready to take the present one's place; in this process when left out. */
  preparer?: StatePreparer;
  /** Reads the file when it is opened; in this process when left out. */
  reader?: FileReader;
  /** Told how much of the file has been read, where the reader can tell. */
  onReading?: ReadProgress;
  /** What this computer keeps of libraries outside of their folders. */
  memory?: LibraryMemory;
  /** What records show of attachments, so that one which is gone is missed; nothing when left out. */
  attachmentsInUse?: (library: Reader) => AttachmentInUse[];
  /** Told when `status().notes` has changed by itself. */
  onNote?: () => void;
  /** Told of what went wrong in the background; also in `status()`. */
  onProblem?: (problem: Problem) => void;
}

export type Settled = Required<
  Omit<LibraryOptions, 'onProblem' | 'onReading' | 'rewriteAfterLogBytes' | 'memory' | 'backupCopies'>
> & {
  memory: LibraryMemory | undefined;
  rewriteAfterLogBytes: number | undefined;
  backupCopies: string | undefined;
  onReading: ReadProgress | undefined;
  onProblem: (problem: Problem) => void;
  folder: string;
  /** Names this opener in the lock file. */
  instance: string;
};

export function settle(given: string, options: LibraryOptions): Settled {
  const fileSystem = options.fileSystem ?? nodeFileSystem;
  const folder = realFolder(fileSystem, given);
  return {
    ...options,
    folder,
    fileSystem,
    instance: randomUUID(),
    rewriter: options.rewriter ?? createInlineRewriter(fileSystem),
    version: options.version ?? 'development',
    ifLocked: options.ifLocked ?? 'read-only',
    takeOver: options.takeOver ?? false,
    readOnly: options.readOnly ?? false,
    backupFolder: options.backupFolder ?? join(folder, 'backups'),
    backupLimits: options.backupLimits ?? USUAL_LIMITS,
    backupCopies: options.backupCopies,
    rewriteAfterIdleMs: options.rewriteAfterIdleMs ?? 2000,
    rewriteAfterLogBytes: options.rewriteAfterLogBytes,
    longestLogBytes: options.longestLogBytes ?? LONGEST_LOG,
    memory: options.memory,
    checker: options.checker ?? ((job) => performCheck(fileSystem, job)),
    preparer: options.preparer ?? ((state) => prepareState(options.migrations, state)),
    reader: options.reader ?? createInlineReader(fileSystem),
    onReading: options.onReading,
    attachmentsInUse: options.attachmentsInUse ?? (() => []),
    onNote: options.onNote ?? (() => undefined),
    onProblem: options.onProblem ?? (() => undefined),
  };
}

/** A folder reached by a link is known by where it really is: two openings by two names are of one library. */
function realFolder(fs: FileSystem, folder: string): string {
  try {
    return fs.realpathSync(folder);
  } catch {
    // There is none yet, or none any more: whoever reads it next says so.
    return folder;
  }
}
