import { homedir } from 'node:os';
import { join } from 'node:path';
import { Problem } from '@service/problems/problem';
import { composeService, type ComposedService } from '@service/compose';
import { openAtStart } from '@service/open-at-start';
import { RunKeys } from '@service/security/run-keys';
import { readArguments, type LoopbackArguments } from './arguments';
import { keepPort, keptPort } from './kept-port';
import { machineFolders, type MachineFolders } from './machine-folders';
import { openBrowser } from './open-browser';
import { serveLoopback, type Loopback, type Serving } from './serve';

const RENDERER_FOLDER = join(import.meta.dirname, '../renderer');

function fail(error: unknown): void {
  if (error instanceof Problem) console.error(`${error.message}\n${error.advice}`);
  else console.error(error);
  process.exitCode = 1;
}

/** Settles at the first signal to stop. More of them change nothing: a library may be about to close. */
function stopSignal(): Promise<void> {
  return new Promise((stop) => {
    for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP', 'SIGBREAK'] as const) {
      process.on(signal, () => stop());
    }
  });
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

async function serveUntil(
  stop: Promise<void>,
  { service, session }: ComposedService,
  asked: LoopbackArguments,
  { config, documents }: MachineFolders,
): Promise<void> {
  let tidy = (): void => undefined;
  const serving = { service, rendererFolder: RENDERER_FOLDER, keys: new RunKeys(), opened: () => tidy() };
  const loopback = await serve(asked.port, config, serving);
  const address = tellAddress(loopback);
  if (asked.open) tidy = openBrowser(address, documents);
  await stop;
  tidy();
  session.changes.end();
  await loopback.close();
}

async function main(): Promise<void> {
  const asked = readArguments(process.argv.slice(2));
  // From here on a signal waits for the library to be open, and then closes it.
  const stop = stopSignal();
  const machine = { platform: process.platform, home: homedir(), env: process.env };
  const folders = machineFolders(machine);
  const composed = composeService({ ...folders, workersFolder: import.meta.dirname });
  const { session } = composed;
  try {
    if (asked.library !== undefined && asked.backups !== undefined)
      session.places.chooseBackupFolder(asked.library, asked.backups);
    const demonstration = await openAtStart(session, asked);
    if (demonstration) console.log(`A fresh demonstration library is in ${demonstration}`);
    // The first screen tells it too; whoever looks at the terminal should not have to wonder.
    if (session.trouble) console.error(`${session.trouble.message}\n${session.trouble.advice}`);
    await serveUntil(stop, composed, asked, folders);
  } finally {
    await session.close();
  }
}

main()
  .catch(fail)
  .finally(() => process.exit());
