import { homedir } from 'node:os';
import { Problem } from '@service/problems/problem';
import { readAhead } from '@service/library/read-ahead';
import { readArguments } from './arguments';
import { machineFolders } from './machine-folders';

// All that is imported here is small: the library's file is being read while the service is loaded.

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

async function main(): Promise<void> {
  const asked = readArguments(process.argv.slice(2));
  // From here on a signal waits for the library to be open, and then closes it.
  const stop = stopSignal();
  const folders = machineFolders({ platform: process.platform, home: homedir(), env: process.env });
  const programs = import.meta.dirname;
  const reader = readAhead(programs, { ...asked, config: folders.config });
  const { host } = await import('./host');
  await host({ asked, folders, programs, reader, stop });
}

main()
  .catch(fail)
  .finally(() => process.exit());
