import { join } from 'node:path';
import type { FileReader } from '@service/library/read-ahead';
import { composeService, type ComposedService } from '@service/compose';
import { openAtStart } from '@service/open-at-start';
import { RunKeys } from '@service/security/run-keys';
import type { LoopbackArguments } from './arguments';
import { keepPort, keptPort } from './kept-port';
import type { MachineFolders } from './machine-folders';
import { openBrowser } from './open-browser';
import { serveLoopback, type Loopback, type Serving } from './serve';

export interface HostStart {
  asked: LoopbackArguments;
  folders: MachineFolders;
  /** The folder of the built program: its workers, with the page beside it. */
  programs: string;
  /** Has begun to read the library. */
  reader: FileReader | undefined;
  /** Settles when the host is to stop. */
  stop: Promise<void>;
}

/** Serves on the port asked for, or on the kept one while it is free, or on any. */
async function serve(asked: number | undefined, config: string, serving: Omit<Serving, 'port'>) {
  if (asked !== undefined) return serveLoopback({ ...serving, port: asked });
  const kept = keptPort(config);
  const onKept = kept && (await serveLoopback({ ...serving, port: kept }).catch(() => undefined));
  const loopback = onKept || (await serveLoopback({ ...serving, port: 0 }));
  keepPort(config, loopback.port);
  return loopback;
}

/** Says where Stillroom is; where someone sits at the terminal, Enter gives another address. */
function tellAddress(loopback: Loopback): string {
  const address = loopback.newAddress();
  console.log(`Stillroom is at ${address}`);
  if (process.stdin.isTTY) {
    console.log('That address works once. Press Enter for another.');
    process.stdin.on('data', () => console.log(`Stillroom is at ${loopback.newAddress()}`));
  }
  return address;
}

/** Opens what was asked for. The first screen tells of trouble too; whoever looks at the terminal should not have to wonder. */
async function open({ session }: ComposedService, asked: LoopbackArguments): Promise<void> {
  const demonstration = await openAtStart(session, asked);
  if (demonstration) console.log(`A fresh demonstration library is in ${demonstration}`);
  if (session.trouble) console.error(`${session.trouble.message}\n${session.trouble.advice}`);
}

/** The address comes first: its page says that the library is being opened until it is. */
async function serveUntil(
  stop: Promise<void>,
  { service, session }: ComposedService,
  { asked, programs, folders: { config, documents } }: HostStart,
  opened: Promise<void>,
): Promise<void> {
  let tidy = (): void => undefined;
  const rendererFolder = join(programs, '../renderer');
  const serving = { service, rendererFolder, keys: new RunKeys(), opened: () => tidy() };
  const loopback = await serve(asked.port, config, serving);
  try {
    const address = tellAddress(loopback);
    if (asked.open) tidy = openBrowser(address, documents);
    // A demonstration library that cannot be made ends the host.
    await Promise.all([opened, stop]);
  } finally {
    tidy();
    session.changes.end();
    await loopback.close();
  }
}

/** Opens the library and serves the page until it is told to stop; then closes the library. */
export async function host(start: HostStart): Promise<void> {
  const { asked, folders, programs, reader, stop } = start;
  const composed = composeService({ ...folders, reader, workersFolder: programs });
  const { session } = composed;
  if (asked.library !== undefined && asked.backups !== undefined)
    session.places.chooseBackupFolder(asked.library, asked.backups);
  const opened = open(composed, asked);
  // It is waited for below; should the port not be had before that, nobody waits for it any more.
  opened.catch(() => undefined);
  try {
    await serveUntil(stop, composed, start, opened);
  } finally {
    await session.close();
  }
}
