import { randomUUID } from 'node:crypto';
import { rm } from 'node:fs/promises';
import { join } from 'node:path';
import { nodeFileSystem, type FileSystem } from '@db/library/file/file-system';
import { createInlineRewriter } from '@db/library/folding/rewrite';
import { openLibrary } from '@db/library/open-library';
import { materials, readMaterial } from '@db/materials/materials';
import { migrations } from '@db/migrations/list';
import { filledLibrary } from './fill-library';
import { materialId } from './library-generator';
import type { BenchFigure, BenchSettings } from './measure';
import { fillRecord, TWENTY_YEARS } from './record-generator';

const EDIT_EVERY_MS = 5_000;
const HOUR_MS = 3_600_000;
const AT_MOST_FILES = 3;

/** The real disk, which counts what is written to it. */
function countingDisk(): { fs: FileSystem; written(): number } {
  let bytes = 0;
  const counted = (count: number): number => ((bytes += count), count);
  const fs: FileSystem = {
    ...nodeFileSystem,
    writeSync: (...call) => counted(nodeFileSystem.writeSync(...call)),
    async open(...call) {
      const handle = await nodeFileSystem.open(...call);
      return { ...handle, write: async (...piece) => counted(await handle.write(...piece)) };
    },
  };
  return { fs, written: () => bytes };
}

/**
 * An hour's steady work on the twenty-year library, an edit every five seconds, without the waiting: after each edit the
 * log is folded if it has grown so long that a pause would have folded it. Closing, which folds the rest, is counted.
 */
export async function benchHour(settings: BenchSettings): Promise<BenchFigure[]> {
  const made = await filledLibrary((engine) => fillRecord(engine, TWENTY_YEARS));
  const { fs, written } = countingDisk();
  const edits = HOUR_MS / EDIT_EVERY_MS;
  // With no pause to wait for, whatever is due after an edit is done before the next.
  const options = { fileSystem: fs, rewriter: createInlineRewriter(fs), rewriteAfterIdleMs: 0 };
  const library = await openLibrary(made.folder, {
    ...options,
    migrations,
    now: () => new Date(),
    makeId: () => randomUUID(),
  });
  for (let number = 0; number < edits; number++) {
    const before = readMaterial(library, materialId(number % 200));
    if (!before) throw new Error('The first materials were not generated.');
    const after = { ...before, notes: `${before.notes} Seen again, ${number}.` };
    library.transaction((tx) => materials.update(tx, before, after));
    await new Promise((next) => setImmediate(next));
    while (library.status().rewriting) await new Promise((next) => setTimeout(next, 5));
  }
  const inLog = written();
  await library.close();
  await rm(join(made.folder, '..'), { recursive: true, force: true });
  settings.note(
    `an hour's ${edits} edits wrote ${(inLog / 1e6).toFixed(1)} MB, closing ${((written() - inLog) / 1e6).toFixed(0)} MB; ` +
      `the file holds ${(made.bytes / 1e6).toFixed(0)} MB`,
  );
  const share = written() / made.bytes;
  return [
    {
      name: `written in an hour of an edit every 5 s, and closing, ${(made.bytes / 1e6).toFixed(0)} MB`,
      ...{ p50: share, p95: share, unit: '× file', peer: null, ratio: null },
      goal: `≤ ${AT_MOST_FILES} × the file`,
      ok: share <= AT_MOST_FILES,
    },
  ];
}
