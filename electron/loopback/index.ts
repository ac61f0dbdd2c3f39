import { randomBytes } from 'node:crypto';
import { homedir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { Problem } from '@core/problems/problem';
import { composeService, type ComposedService } from '@service/compose';
import { openAtStart } from '@service/open-at-start';
import { readArguments } from './arguments';
import { machineFolders } from './machine-folders';
import { openBrowser } from './open-browser';
import { serveLoopback, type Loopback } from './serve';

const RENDERER_FOLDER = join(import.meta.dirname, '../renderer');
const REWRITE_WORKER = pathToFileURL(join(import.meta.dirname, 'rewrite-worker.js'));

function fail(error: unknown): void {
  if (error instanceof Problem) console.error(`${error.message}\n${error.advice}`);
  else console.error(error);
  process.exitCode = 1;
}

/** Stops at the first of the signals; more of them change nothing, as the library is being closed. */
function stopOnSignal(loopback: Loopback, { session }: ComposedService): void {
  let stopping = false;
  const stop = async () => {
    if (stopping) return;
    stopping = true;
    try {
      await loopback.close();
      await session.close();
    } catch (error) {
      fail(error);
    }
    process.exit();
  };
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP', 'SIGBREAK'] as const) {
    process.on(signal, () => void stop());
  }
}

async function main(): Promise<void> {
  const asked = readArguments(process.argv.slice(2));
  const machine = { platform: process.platform, home: homedir(), env: process.env };
  const composed = composeService({ ...machineFolders(machine), rewriteWorker: REWRITE_WORKER });
  const { service, session } = composed;
  const demonstration = await openAtStart(session, asked);
  if (demonstration) console.log(`A fresh demonstration library is in ${demonstration}`);
  // The first screen tells it too; whoever looks at the terminal should not have to wonder.
  if (session.trouble) console.error(`${session.trouble.message}\n${session.trouble.advice}`);
  const key = randomBytes(32).toString('base64url');
  const serving = { service, rendererFolder: RENDERER_FOLDER, port: asked.port, key };
  let loopback: Loopback;
  try {
    loopback = await serveLoopback(serving);
  } catch (error) {
    await session.close();
    throw error;
  }
  stopOnSignal(loopback, composed);
  console.log(`Stillroom is at ${loopback.address}`);
  if (asked.open) openBrowser(loopback.address);
}

main().catch(fail);
