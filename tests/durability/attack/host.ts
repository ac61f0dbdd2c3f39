import { writeSync } from 'node:fs';
import { setTimeout as pause } from 'node:timers/promises';
import { Problem } from '@core/problems/problem';
import { openLibrary } from '@db/library/open-library';
import { killOptions, textOf } from './edits';

// One of two hosts on a folder: edits until its input ends, and says each edit that was acknowledged.
const [folder = '', number = '1', manner = 'open', minutes = '0'] = process.argv.slice(2);
const now = () => new Date(Date.now() + Number(minutes) * 60_000);
const library = await openLibrary(folder, {
  ...killOptions,
  now,
  takeOver: manner === 'take-over',
  rewriteAfterLogBytes: 20_000,
  rewriteAfterIdleMs: 1,
});
let going = true;
process.stdin.on('end', () => (going = false)).resume();
writeSync(1, library.readOnly ? 'read-only ready\n' : 'ready\n');

for (let n = Number(number) * 1_000_000; going; n += 1) {
  try {
    library.transaction((tx) =>
      tx.run('INSERT INTO edit (n, text, half) VALUES (?, ?, ?)', n, textOf(n % 50), n / 2),
    );
    writeSync(1, `${n}\n`);
  } catch (error) {
    if (!(error instanceof Problem) || !library.readOnly) throw error;
    await pause(5);
  }
  if (Math.random() < 0.05) library.rewrite().catch(() => undefined);
  await pause(0);
}
await library.close();
process.exit(0);
