import type { FileReader } from '@db/library/opening/read-file';
import { v7 } from 'uuid';
import { workerRunner } from './emulsions/run-job';
import type { ExportJob } from './exports/job';
import type { ImportAnswer, ImportJob } from './imports/import-job';
import { createLibraryOpener } from './library/opener';
import { KnownPositions } from './library/known-positions';
import { Places } from './library/places';
import { LibrarySession } from './library/session';
import type { MeetingAnswer, MeetingJob } from './meeting/meeting-job';
import { createService, type Service } from './service';
import type { SheetJob } from './sheets/job';
import { builtWorker } from './threads/built-worker';
import { startThread } from './threads/thread';

export interface HostParts {
  /** Where new libraries are made. */
  documents: string;
  /** Where the list of recent libraries is kept. */
  config: string;
  /** Under which a page lists folders to choose from; left out where the system's own dialog does that. */
  home?: string;
  /** The folder of the built workers; without them, long work holds the process (tests, development). */
  workersFolder?: string;
  /** Reads libraries' files; a host that began to read one before anything else was loaded gives its own. */
  reader?: FileReader;
}

export interface ComposedService {
  service: Service;
  session: LibrarySession;
}

/** The service over this machine's real folders, clock and ids; the same for every host. */
export function composeService({
  documents,
  config,
  home,
  workersFolder,
  reader,
}: HostParts): ComposedService {
  const now = () => new Date();
  const newId = () => v7();
  const rewriteWorker = builtWorker(workersFolder, 'rewrite');
  const emulsionsWorker = builtWorker(workersFolder, 'emulsions');
  const sheetsWorker = builtWorker(workersFolder, 'sheets');
  const runJob = emulsionsWorker && workerRunner(emulsionsWorker);
  const exportsWorker = builtWorker(workersFolder, 'exports');
  const exporting = exportsWorker && startThread<ExportJob, Uint8Array>(exportsWorker);
  const meetingWorker = builtWorker(workersFolder, 'meeting');
  const meeting = meetingWorker && startThread<MeetingJob, MeetingAnswer>(meetingWorker);
  const importsWorker = builtWorker(workersFolder, 'imports');
  const importing = importsWorker && startThread<ImportJob, ImportAnswer>(importsWorker);
  const printing = sheetsWorker && startThread<SheetJob, Uint8Array>(sheetsWorker);
  const places = new Places(documents, config, home);
  const backupFolder = (folder: string) => places.backupFolder(folder);
  const backupCopies = (folder: string) => places.backupCopies(folder);
  const memory = new KnownPositions(config);
  const onNote = () => session.changes.tellLibrary();
  const opener = createLibraryOpener({
    now,
    newId,
    rewriteWorker,
    reader,
    backupFolder,
    backupCopies,
    memory,
    onNote,
  });
  const session: LibrarySession = new LibrarySession(places, opener, now);
  return {
    session,
    service: createService({ session, now, newId, runJob, printing, exporting, meeting, importing }),
  };
}
