import { monitorEventLoopDelay } from 'node:perf_hooks';
import { materials, readMaterial } from '@db/materials/materials';
import { makeLibrary, openBenchLibrary, type BenchLibrary } from './bench-library';
import { materialId } from './library-generator';
import { figureFrom, type BenchFigure, type BenchSettings } from './measure';

/** What no request may hold the process for (ms). */
const HOLD_LIMIT_MS = 50;
const NS_PER_MS = 1e6;
const ROUNDS = 3;
const SETTLE_MS = 50;

interface Rewrite {
  /** From the call until the new file stands. */
  tookMs: number;
  /** The longest time that nothing else could run. */
  heldMs: number;
}

async function rewriteOnce(library: BenchLibrary, number: number): Promise<Rewrite> {
  const db = library.session.current().library;
  const before = readMaterial(db, materialId(number));
  if (!before) throw new Error('The first materials were not generated.');
  db.transaction((tx) => materials.update(tx, before, { ...before, notes: `${before.notes} rewrite` }));
  const held = monitorEventLoopDelay({ resolution: 1 });
  held.enable();
  // The monitor sees a stall by a timer that comes late, so it needs to have ticked before.
  await new Promise((next) => setTimeout(next, SETTLE_MS));
  held.reset();
  const start = performance.now();
  await db.rewrite();
  const tookMs = performance.now() - start;
  await new Promise((next) => setTimeout(next, SETTLE_MS));
  held.disable();
  return { tookMs, heldMs: held.max / NS_PER_MS };
}

async function rewritesAt(materials: number, where: 'in a worker' | 'in this process'): Promise<Rewrite[]> {
  const library = await openBenchLibrary(await makeLibrary(materials, materials / 10), where);
  try {
    const rounds: Rewrite[] = [];
    for (let round = 0; round < ROUNDS; round++) rounds.push(await rewriteOnce(library, round));
    return rounds;
  } finally {
    await library.discard();
  }
}

/** How long a whole-file rewrite takes and holds the process, with and without a worker; only reported. */
export async function benchRewrites(settings: BenchSettings): Promise<BenchFigure[]> {
  const figures: BenchFigure[] = [];
  let needsWorkerFrom: number | null = null;
  for (const materials of settings.quick ? [250, 5_000] : [250, 500, 1_000, 2_000, 5_000, 100_000]) {
    const of = `${materials.toLocaleString('en')} materials + ${(materials / 10).toLocaleString('en')} formulas`;
    const here = await rewritesAt(materials, 'in this process');
    const aside = await rewritesAt(materials, 'in a worker');
    const held = figureFrom(
      `rewrite without a worker holds the process, ${of}`,
      here.map((r) => r.heldMs),
    );
    if (held.p50 > HOLD_LIMIT_MS) needsWorkerFrom ??= materials;
    figures.push(
      held,
      figureFrom(
        `rewrite in the worker holds the process, ${of}`,
        aside.map((r) => r.heldMs),
      ),
      figureFrom(
        `rewrite in the worker takes, ${of}`,
        aside.map((r) => r.tookMs),
      ),
    );
  }
  settings.note(
    needsWorkerFrom === null
      ? `no size measured holds the process for more than ${HOLD_LIMIT_MS} ms without a worker`
      : `a rewrite needs a worker from about ${needsWorkerFrom.toLocaleString('en')} materials on (more than ${HOLD_LIMIT_MS} ms)`,
  );
  return figures;
}
