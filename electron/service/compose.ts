import { v7 } from 'uuid';
import { libraryOpener } from './library/opener';
import { Places } from './library/places';
import { LibrarySession } from './library/session';
import { createService, type Service } from './service';

export interface HostFolders {
  /** Where new libraries are made. */
  documents: string;
  /** Where the list of recent libraries is kept. */
  config: string;
}

export interface ComposedService {
  service: Service;
  session: LibrarySession;
}

/** The service over this machine's real folders, clock and ids; the same for every host. */
export function composeService({ documents, config }: HostFolders): ComposedService {
  const now = () => new Date();
  const session = new LibrarySession(new Places(documents, config), libraryOpener, now);
  return { session, service: createService({ session, now, newId: () => v7() }) };
}
