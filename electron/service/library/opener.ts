import { DEMO_MOMENT } from '@core/demo/demo-moment';
import { nodeFileSystem } from '@db/library/file/file-system';
import { createLibrary, openLibrary, type LibraryOptions } from '@db/library/open-library';
import type { LibraryMemory } from '@db/library/opening/remembered';
import type { FileReader, ReadProgress } from '@db/library/opening/read-file';
import { recoverFromBackup, recoverFromLog } from '@db/library/opening/recovery';
import { createInlineRewriter } from '@db/library/folding/rewrite';
import {
  createWorkerChecker,
  createWorkerPreparer,
  createWorkerRewriter,
} from '@db/library/folding/worker-rewriter';
import { attachmentsInUse } from '@db/record/attachments-in-use';
import { migrations } from '@db/migrations/list';
import type { LibraryOpener } from './session';

export interface OpenerParts {
  now: () => Date;
  /** A new UUIDv7. */
  newId: () => string;
  /** The built `rewrite-worker.js`; without one, rewriting holds the process (tests, development). */
  rewriteWorker?: URL;
  /** Reads a library's file; without one, in the process itself (tests, development). */
  reader?: FileReader;
  /** Where a library's backups are kept, when not in its own folder. */
  backupFolder?: (libraryFolder: string) => string | undefined;
  /** Where copies of a library's backups go, when anywhere. */
  backupCopies?: (libraryFolder: string) => string | undefined;
  /** What this computer keeps of libraries outside of their folders. */
  memory?: LibraryMemory;
  /** Told when a library has found by itself something that is to be told. */
  onNote?: () => void;
}

/** Makes and opens library folders on the real disk. */
export function createLibraryOpener(parts: OpenerParts): LibraryOpener {
  const { now, newId, rewriteWorker, reader, backupFolder, backupCopies, memory, onNote } = parts;
  const optionsFor = (folder: string, onReading?: ReadProgress): LibraryOptions => ({
    migrations,
    now,
    makeId: newId,
    rewriter: rewriteWorker ? createWorkerRewriter(rewriteWorker) : createInlineRewriter(nodeFileSystem),
    checker: rewriteWorker && createWorkerChecker(rewriteWorker),
    preparer: rewriteWorker && createWorkerPreparer(rewriteWorker),
    reader,
    onReading,
    backupFolder: backupFolder?.(folder),
    backupCopies: backupCopies?.(folder),
    memory,
    attachmentsInUse,
    onNote,
    onProblem: (problem) => console.error(`${problem.message}\n${problem.advice}`),
  });
  return {
    create: (folder) => createLibrary(folder, optionsFor(folder)),
    open: (folder, onReading) => openLibrary(folder, optionsFor(folder, onReading)),
    // Whoever only looks leaves no mark, and is no reason to tell that it was changed elsewhere.
    look: (folder) => openLibrary(folder, { ...optionsFor(folder), readOnly: true, memory: undefined }),
    recover: (folder, backupName) => recoverFromBackup(folder, backupName, optionsFor(folder)),
    recoverLog: (folder) => recoverFromLog(folder, optionsFor(folder)),
    takeOver: (folder) => openLibrary(folder, { ...optionsFor(folder), takeOver: true }),
    async fillWithDemonstration(library) {
      // A maker's own library starts without it.
      const { fillWithDemonstration } = await import('./demonstration');
      await fillWithDemonstration(library);
    },
    async fillWithExamples(library, kind) {
      const { missingExamples, writeExamples } = await import('../limits/starter-set');
      const at = kind === 'demonstration' ? DEMO_MOMENT : now().toISOString();
      const examples = missingExamples(library, newId, at);
      library.transaction((tx) => writeExamples(tx, examples));
    },
  };
}
