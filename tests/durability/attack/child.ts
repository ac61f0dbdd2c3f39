import { setImmediate } from 'node:timers/promises';
import { Engine } from '@db/library/sql/engine';
import { createWorkerRewriter } from '@db/library/folding/worker-rewriter';
import { openLibrary, type OpenLibrary } from '@db/library/open-library';
import { z } from 'zod';
import { commands, say } from './commands';
import { killOptions, makeEdit } from './edits';

// Edits libraries as fast as it can, folding often, until it is killed. Each acknowledged edit is a line on stdout: which
// library, which edit. It is started before it is needed, so that a round costs what it tries and not a start.
const asked = z.object({ folders: z.array(z.string()), manner: z.string() });

(await Engine.open()).close();
say('warm');

for await (const { folders, manner } of commands(asked))
  await Promise.all(folders.map((folder, index) => editForEver(folder, index, manner)));

async function editForEver(folder: string, index: number, manner: string): Promise<void> {
  const rewriter =
    manner === 'worker' ? createWorkerRewriter(new URL('./rewrite-worker.js', import.meta.url)) : undefined;
  const library = await openLibrary(folder, {
    ...killOptions,
    rewriter,
    rewriteAfterIdleMs: 5,
    rewriteAfterLogBytes: 4_000,
  });
  let last = library.get<{ last: number }>('SELECT last FROM tally')?.last ?? 0;
  for (;;) {
    makeEdit(library, last + 1);
    last += 1;
    say(`${index} ${last}`);
    if (Math.random() < 0.2) library.rewrite().catch(stop);
    if (Math.random() < 0.01) library.backUp().catch(stop);
    if (Math.random() < 0.005) await putInPlace(library).catch(stop);
    await setImmediate();
  }
}

/** What a merge does to the files: a state made from the present one takes its place. */
async function putInPlace(library: OpenLibrary): Promise<void> {
  const { bytes, sequence } = await library.snapshot();
  await library.takeState(bytes, sequence, 'merge');
}

function stop(error: unknown): void {
  console.error(error);
  process.exit(1);
}
