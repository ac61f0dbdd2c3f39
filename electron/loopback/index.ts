import { randomBytes } from 'node:crypto';
import { homedir } from 'node:os';
import { join } from 'node:path';
import { Problem } from '@core/problems/problem';
import { composeService } from '@service/compose';
import { openAtStart } from '@service/open-at-start';
import type { RequestHandler } from '@service/security/hosted-app';
import { readArguments } from './arguments';
import { machineFolders } from './machine-folders';
import { openBrowser } from './open-browser';
import { serveLoopback } from './serve';

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

async function serveUntil(
  stop: Promise<void>,
  service: RequestHandler,
  port: number,
  open: boolean,
): Promise<void> {
  const key = randomBytes(32).toString('base64url');
  const loopback = await serveLoopback({ service, rendererFolder: RENDERER_FOLDER, port, key });
  console.log(`Stillroom is at ${loopback.address}`);
  if (open) openBrowser(loopback.address);
  await stop;
  await loopback.close();
}

async function main(): Promise<void> {
  const asked = readArguments(process.argv.slice(2));
  // From here on a signal waits for the library to be open, and then closes it.
  const stop = stopSignal();
  const machine = { platform: process.platform, home: homedir(), env: process.env };
  const { service, session } = composeService({
    ...machineFolders(machine),
    workersFolder: import.meta.dirname,
  });
  try {
    if (asked.library !== undefined && asked.backups !== undefined)
      session.places.chooseBackupFolder(asked.library, asked.backups);
    const demonstration = await openAtStart(session, asked);
    if (demonstration) console.log(`A fresh demonstration library is in ${demonstration}`);
    // The first screen tells it too; whoever looks at the terminal should not have to wonder.
    if (session.trouble) console.error(`${session.trouble.message}\n${session.trouble.advice}`);
    await serveUntil(stop, service, asked.port, asked.open);
  } finally {
    await session.close();
  }
}

main()
  .catch(fail)
  .finally(() => process.exit());
