import { randomBytes } from 'node:crypto';
import { mkdtempSync } from 'node:fs';
import { homedir, tmpdir } from 'node:os';
import { join } from 'node:path';
import { Problem } from '@core/problems/problem';
import { composeService, type ComposedService } from '@service/compose';
import { readArguments, type LoopbackArguments } from './arguments';
import { machineFolders } from './machine-folders';
import { openBrowser } from './open-browser';
import { serveLoopback, type Loopback } from './serve';

const RENDERER_FOLDER = join(import.meta.dirname, '../renderer');

function fail(error: unknown): void {
  if (error instanceof Problem) console.error(`${error.message}\n${error.advice}`);
  else console.error(error);
  process.exitCode = 1;
}

/** Opens what the command line asks for. What stands in the way is told on the first screen, and here. */
async function openAsked({ session }: ComposedService, { demo, library }: LoopbackArguments): Promise<void> {
  if (demo) {
    const folder = join(mkdtempSync(join(tmpdir(), 'stillroom-demo-')), 'Demonstration');
    await session.create(folder, 'demonstration');
    console.log(`A fresh demonstration library is in ${folder}`);
    return;
  }
  await session.start(library);
  if (session.trouble) console.error(`${session.trouble.message}\n${session.trouble.advice}`);
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
  const composed = composeService(machineFolders(machine));
  await openAsked(composed, asked);
  const key = randomBytes(32).toString('base64url');
  const { service, session } = composed;
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
