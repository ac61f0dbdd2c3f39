import { answerOver } from '@service/bridge/answer';
import type { Answered, Asked, Port } from '@service/bridge/messages';
import { composeService } from '@service/compose';
import { openAtStart } from '@service/open-at-start';
import type { OpenedNotice, ServiceCalls, ServiceFolders } from './service-calls';

/** The utility process that keeps the library: main moves windows meanwhile. Its first argument is its folders, as JSON. */

const folders = JSON.parse(process.argv.at(-1) ?? '') as ServiceFolders;
const { service, session } = composeService({ ...folders, workersFolder: import.meta.dirname });

const port: Port<Answered, Asked> = {
  post: (message) => process.parentPort.postMessage(message),
  listen: (hear) => void process.parentPort.on('message', ({ data }) => hear(data as Asked)),
};

const openFolder = (): string | null => session.currentOrNull()?.library.folder ?? null;

let begin: () => void;
const begun = new Promise<void>((resolve) => (begin = resolve));

const calls: ServiceCalls = {
  async open(asked) {
    try {
      await openAtStart(session, asked);
    } finally {
      begin();
    }
    return openFolder();
  },
  async openOther({ library, demo }) {
    if (library === undefined) await openAtStart(session, { library, demo });
    else await session.open(library);
    return openFolder();
  },
  offer: (folder) => session.places.offer(folder),
  folder: (token) => session.places.folder(token) ?? null,
  fold: async () => void (await session.currentOrNull()?.library.rewrite()),
  close: () => session.close(),
};

let told: string | null = null;

/** Main reopens the same library, should this process ever be lost. */
function tellWhatIsOpen(): void {
  const folder = openFolder();
  if (folder === told) return;
  told = folder;
  bridge.notify({ folder } satisfies OpenedNotice);
}

const bridge = answerOver(
  port,
  {
    async fetch(request) {
      await begun;
      try {
        return await service.fetch(request);
      } finally {
        tellWhatIsOpen();
      }
    },
  },
  calls,
);
