import { writeSync } from 'node:fs';
import { setImmediate } from 'node:timers/promises';
import { createWorkerRewriter } from '@db/library/folding/worker-rewriter';
import { openLibrary } from '@db/library/open-library';
import { killOptions, makeEdit } from './edits';

// Edits a library as fast as it can, folding often, until it is killed. Each acknowledged edit is a line on stdout.
const [folder = '', manner = 'inline'] = process.argv.slice(2);
const rewriter =
  manner === 'worker' ? createWorkerRewriter(new URL('./rewrite-worker.js', import.meta.url)) : undefined;
const library = await openLibrary(folder, {
  ...killOptions,
  rewriter,
  rewriteAfterIdleMs: 5,
  rewriteAfterLogBytes: 4_000,
});
let last = library.get<{ last: number }>('SELECT last FROM tally')?.last ?? 0;
writeSync(1, 'ready\n');

for (;;) {
  makeEdit(library, last + 1);
  last += 1;
  writeSync(1, `${last}\n`);
  if (Math.random() < 0.2) library.rewrite().catch(stop);
  if (Math.random() < 0.01) library.backUp().catch(stop);
  await setImmediate();
}

function stop(error: unknown): void {
  console.error(error);
  process.exit(1);
}
