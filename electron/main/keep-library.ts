import { answerOver } from '@service/bridge/answer';
import type { Answered, Asked, Port } from '@service/bridge/messages';
import { composeService, type HostParts } from '@service/compose';
import type { LibrarySession } from '@service/library/session';
import { openAtStart } from '@service/open-at-start';
import type { OpenedNotice, ServiceCalls } from './service-calls';

const openFolder = (session: LibrarySession): string | null =>
  session.currentOrNull()?.library.folder ?? null;

/** What main may ask. @param begin called once the page may ask too */
function callsOn(session: LibrarySession, begin: () => void): ServiceCalls {
  return {
    async open(asked) {
      const opening = openAtStart(session, asked);
      // The page is answered from now on: it is told what is being opened until that is there.
      begin();
      await opening;
      return openFolder(session);
    },
    async openOther({ library, demo }) {
      if (library === undefined) await openAtStart(session, { library, demo });
      else await session.open(library);
      return openFolder(session);
    },
    offer: (folder) => session.places.offer(folder),
    folder: (token) => session.places.folder(token) ?? null,
    fold: async () => void (await session.currentOrNull()?.library.rewrite()),
    close: () => session.close(),
  };
}

/** Answers main and the page over the process's own port. */
export function keepLibrary(parts: HostParts): void {
  const { service, session } = composeService(parts);
  const port: Port<Answered, Asked> = {
    post: (message) => process.parentPort.postMessage(message),
    listen: (hear) => void process.parentPort.on('message', ({ data }) => hear(data as Asked)),
  };
  let begin = (): void => undefined;
  const begun = new Promise<void>((resolve) => (begin = resolve));
  let told: string | null = null;

  /** Main reopens the same library, should this process ever be lost. */
  function tellWhatIsOpen(): void {
    const folder = openFolder(session);
    if (folder === told) return;
    told = folder;
    bridge.notify({ folder } satisfies OpenedNotice);
  }

  const pages = {
    async fetch(request: Request): Promise<Response> {
      await begun;
      try {
        return await service.fetch(request);
      } finally {
        tellWhatIsOpen();
      }
    },
  };
  const bridge = answerOver(
    port,
    pages,
    callsOn(session, () => begin()),
  );
}
