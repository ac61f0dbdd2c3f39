import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { LibrarySession } from './library/session';

/** What the command line asks for, on any host. */
export interface AskedAtStart {
  /** The library folder to open, absolute; undefined opens the last one, or none. */
  library: string | undefined;
  /** Open a fresh demonstration library in a temporary folder instead. */
  demo: boolean;
}

/**
 * Opens what was asked for. What stands in the way of a library is kept for the first screen (`session.trouble`);
 * a demonstration library that cannot be made throws.
 * @returns the folder of a new demonstration library, or undefined
 */
export async function openAtStart(session: LibrarySession, asked: AskedAtStart): Promise<string | undefined> {
  if (!asked.demo) {
    await session.start(asked.library);
    return undefined;
  }
  const folder = join(mkdtempSync(join(tmpdir(), 'stillroom-demo-')), 'Demonstration');
  await session.create(folder, 'demonstration', true);
  return folder;
}
