import { randomBytes } from 'node:crypto';
import { Problem } from '@core/problems/problem';
import { Engine } from '@db/library/sql/engine';
import { openLibrary, type LibraryOptions, type OpenLibrary } from '@db/library/open-library';
import { z } from 'zod';
import { FaultyFileSystem } from '../faulty-file-system';
import { commands, say } from './commands';
import { killOptions, makeEdit } from './edits';

// A host on a disk that fails: below Node, by a library loaded before libc, or here, where there is none. It says each
// edit, attachment and backup that was acknowledged. Whatever fails must fail with a reason, and leave all as it was.
const command = z.discriminatedUnion('do', [
  z.object({
    do: z.literal('try'),
    folder: z.string(),
    /** What fails here, without the loaded library. */
    faulty: z.object({ at: z.number(), kind: z.string(), forGood: z.boolean() }).optional(),
  }),
  /** All works again: what is made now must be kept. */
  z.object({ do: z.literal('go on') }),
  z.object({ do: z.literal('close') }),
]);

const EDITS = 8;
const disk = new FaultyFileSystem();
const options: LibraryOptions = {
  ...killOptions,
  fileSystem: process.argv[2] === 'faulty' ? disk.fs : undefined,
  // Only when told: the folder is copied as it stands meanwhile.
  rewriteAfterLogBytes: 1_000_000,
};
let folder = '';
let library: OpenLibrary | undefined;
let wasReadOnly = false;
let next = 1;

async function attempt(work: () => unknown): Promise<boolean> {
  try {
    await work();
    return true;
  } catch (error) {
    if (error instanceof Problem) return false;
    throw error;
  }
}

async function edit(to: OpenLibrary): Promise<void> {
  // Said to be under way first: should the process end in the midst of it, it may be there or not.
  say(`maybe ${next}`);
  if (await attempt(() => makeEdit(to, next))) say((next += 1) - 1);
}

async function tryOut(folder: string): Promise<void> {
  await attempt(async () => (library = await openLibrary(folder, options)));
  wasReadOnly = library?.readOnly === true;
  for (let count = 0; library && count < EDITS; count += 1) {
    await edit(library);
    const kept = library;
    if (count % 3 === 0) await attempt(() => kept.rewrite());
    if (count % 4 === 1)
      await attempt(async () => say(`attachment ${await kept.attachments.put(randomBytes(3_000))}`));
    if (count === 6) await attempt(async () => say(`backup ${(await kept.backUp()).name}`));
  }
  disk.disarm();
  say('tried');
}

(await Engine.open()).close();
say('warm');

async function goOn(): Promise<void> {
  // Opened for reading while the disk failed, it is opened again; one that was open for writing must go on by itself.
  if (wasReadOnly) await library?.close();
  if (wasReadOnly || !library) library = await openLibrary(folder, options);
  if (library.readOnly) say(`read-only: ${library.status().readOnlyBecause?.message}`);
  else {
    makeEdit(library, next);
    say((next += 1) - 1);
  }
}

for await (const asked of commands(command)) {
  if (asked.do === 'try') {
    next = 1;
    folder = asked.folder;
    const { at, kind, forGood } = asked.faulty ?? { at: 0, kind: '', forGood: false };
    if (forGood) disk.armForGood(at, kind);
    else disk.arm(at, kind);
    await tryOut(folder);
  } else if (asked.do === 'go on') {
    await goOn();
    say('went on');
  } else {
    await library?.close();
    library = undefined;
    say('closed');
  }
}
process.exit(0);
