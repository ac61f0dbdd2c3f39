import { nodeFileSystem } from '@db/library/file-system';
import { createLibrary, openLibrary, type LibraryOptions } from '@db/library/open-library';
import { recoverFromBackup } from '@db/library/recovery';
import { createInlineRewriter } from '@db/library/rewrite';
import { createWorkerRewriter } from '@db/library/worker-rewriter';
import { migrations } from '@db/migrations/list';
import { fillWithDemonstration } from './demonstration';
import type { LibraryOpener } from './session';

export interface OpenerParts {
  now: () => Date;
  /** A new UUIDv7. */
  newId: () => string;
  /** The built `rewrite-worker.js`; without one, rewriting holds the process (tests, development). */
  rewriteWorker?: URL;
}

/** Makes and opens library folders on the real disk. */
export function createLibraryOpener({ now, newId, rewriteWorker }: OpenerParts): LibraryOpener {
  const options: LibraryOptions = {
    migrations,
    now,
    makeId: newId,
    rewriter: rewriteWorker ? createWorkerRewriter(rewriteWorker) : createInlineRewriter(nodeFileSystem),
    onProblem: (problem) => console.error(`${problem.message}\n${problem.advice}`),
  };
  return {
    create: (folder) => createLibrary(folder, options),
    open: (folder) => openLibrary(folder, options),
    recover: (folder, backupName) => recoverFromBackup(folder, backupName, options),
    takeOver: (folder) => openLibrary(folder, { ...options, takeOver: true }),
    fillWithDemonstration,
  };
}
