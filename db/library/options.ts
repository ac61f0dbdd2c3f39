import { randomUUID } from 'node:crypto';
import { join } from 'node:path';
import type { Problem } from '@core/problems/problem';
import type { Migration } from '../migrations/runner';
import { nodeFileSystem, type FileSystem } from './file/file-system';
import { createInlineRewriter, type Rewriter } from './folding/rewrite';
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
  /** A rewrite follows after this pause (ms) without a change, or when the log is this long (bytes). */
  rewriteAfterIdleMs?: number;
  rewriteAfterLogBytes?: number;
  /** Told of what went wrong in the background; also in `status()`. */
  onProblem?: (problem: Problem) => void;
}

export type Settled = Required<Omit<LibraryOptions, 'onProblem'>> & {
  onProblem: (problem: Problem) => void;
  folder: string;
  /** Names this opener in the lock file. */
  instance: string;
};

export function settle(folder: string, options: LibraryOptions): Settled {
  const fileSystem = options.fileSystem ?? nodeFileSystem;
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
    rewriteAfterIdleMs: options.rewriteAfterIdleMs ?? 2000,
    rewriteAfterLogBytes: options.rewriteAfterLogBytes ?? 8_000_000,
    onProblem: options.onProblem ?? (() => undefined),
  };
}
