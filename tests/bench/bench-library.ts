import { randomUUID } from 'node:crypto';
import { existsSync } from 'node:fs';
import { readFile, rm } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { MaterialEntry } from '@core/materials/list';
import { writeFormula } from '@db/formulas/drafts';
import { Engine } from '@db/library/sql/engine';
import { readMaterialEntries } from '@db/materials/list';
import { materials as shelf } from '@db/materials/materials';
import { workerRunner } from '@service/emulsions/run-job';
import type { ImportAnswer, ImportJob } from '@service/imports/import-job';
import { createLibraryOpener } from '@service/library/opener';
import { Places } from '@service/library/places';
import { LibrarySession, type LibraryOpener } from '@service/library/session';
import { createService, type Service } from '@service/service';
import { startThread } from '@service/threads/thread';
import { filledLibrary } from './fill-library';
import { generateFormulas } from './formula-generator';
import { generateMaterials } from './library-generator';

const LIBRARY_FILE = 'library.sqlite';
const BUILT = resolve(import.meta.dirname, '../../out/main');
const WORKER = join(BUILT, 'rewrite-worker.js');

type Rewriting = 'in a worker' | 'in this process';

/** A generated library, opened behind the real service. */
export interface BenchLibrary {
  folder: string;
  service: Service;
  session: LibrarySession;
  /** From the call to open it until the first list can be answered, in ms. */
  openedInMs: number;
  /** Closes it and removes its folder. */
  discard(): Promise<void>;
}

function openerFor(rewriting: Rewriting): LibraryOpener {
  const opener = { now: () => new Date(), newId: () => randomUUID() };
  if (rewriting === 'in this process') return createLibraryOpener(opener);
  if (!existsSync(WORKER)) throw new Error('The rewrite worker is not built. Run: npm run build');
  return createLibraryOpener({ ...opener, rewriteWorker: pathToFileURL(WORKER) });
}

/** Makes a library folder with generated contents. They go straight into the file: filling is not measured. */
export async function makeLibrary(materials: number, formulas: number): Promise<string> {
  const { folder } = await filledLibrary((engine) => {
    for (const each of generateMaterials(materials)) shelf.insert(engine, each);
    for (const each of generateFormulas(formulas, materials)) writeFormula(engine, each);
  });
  return folder;
}

/** The materials of a made library as its list knows them. */
export async function entriesOf(folder: string): Promise<MaterialEntry[]> {
  const engine = await Engine.open(await readFile(join(folder, LIBRARY_FILE)));
  const entries = readMaterialEntries(engine);
  engine.close();
  return entries;
}

/** Opens a made library through the same session and service as the hosts do. */
export async function openBenchLibrary(
  folder: string,
  rewriting: Rewriting = 'in a worker',
): Promise<BenchLibrary> {
  const above = resolve(folder, '..');
  const session = new LibrarySession(new Places(above, above), openerFor(rewriting), () => new Date());
  const start = performance.now();
  await session.open(folder);
  const openedInMs = performance.now() - start;
  const service = createService({
    session,
    now: () => new Date(),
    newId: () => randomUUID(),
    runJob: workerRunner(pathToFileURL(join(BUILT, 'emulsions-worker.js'))),
    importing: startThread<ImportJob, ImportAnswer>(pathToFileURL(join(BUILT, 'imports-worker.js'))),
  });
  return {
    folder,
    service,
    session,
    openedInMs,
    discard: async () => {
      await session.close();
      await rm(above, { recursive: true, force: true });
    },
  };
}
