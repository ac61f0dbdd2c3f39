import { v7 } from 'uuid';
import { workerRunner } from './emulsions/bench-worker';
import { createLibraryOpener } from './library/opener';
import { Places } from './library/places';
import { LibrarySession } from './library/session';
import { createService, type Service } from './service';

export interface HostParts {
  /** Where new libraries are made. */
  documents: string;
  /** Where the list of recent libraries is kept. */
  config: string;
  /** The built `rewrite-worker.js`; without one, rewriting a library's file holds the process. */
  rewriteWorker?: URL;
  /** The built `emulsions-worker.js`; without one, the bench's long work holds the process. */
  emulsionsWorker?: URL;
}

export interface ComposedService {
  service: Service;
  session: LibrarySession;
}

/** The service over this machine's real folders, clock and ids; the same for every host. */
export function composeService({
  documents,
  config,
  rewriteWorker,
  emulsionsWorker,
}: HostParts): ComposedService {
  const now = () => new Date();
  const newId = () => v7();
  const runJob = emulsionsWorker ? workerRunner(emulsionsWorker) : undefined;
  const places = new Places(documents, config);
  const backupFolder = (folder: string) => places.backupFolder(folder);
  const opener = createLibraryOpener({ now, newId, rewriteWorker, backupFolder });
  const session = new LibrarySession(places, opener, now);
  return { session, service: createService({ session, now, newId, runJob }) };
}
