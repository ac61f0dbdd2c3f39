import { alikePairs } from '@core/lookalikes/look-alikes';
import { readDocument } from '@db/exchange/read-document';
import { readSketches } from '@db/lookalikes/sketches';
import { performMeeting, type Met } from '@service/meeting/meeting-job';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { Engine } from '@db/library/sql/engine';
import { inPieces } from '@service/exports/in-pieces';
import { makeLibrary } from './bench-library';
import { figureFrom, timeOf, type BenchFigure, type BenchSettings } from './measure';

const MATERIALS = 5_000;
const FORMULAS = 1_000;
const AT = '2026-06-01T00:00:00.000Z';

async function opened(folder: string): Promise<Engine> {
  return Engine.open(await readFile(join(folder, 'library.sqlite')));
}

/** Theirs has changed every tenth material since; every hundredth was changed on both sides. */
function change(engine: Engine, every: number, notes: string): void {
  engine.control('BEGIN');
  const ids = engine.all<{ id: string }>('SELECT id FROM material ORDER BY id');
  for (const [at, { id }] of ids.entries())
    if (at % every === 0) engine.run('UPDATE material SET notes = ? WHERE id = ?', notes, id);
  engine.control('COMMIT');
}

/** Merging two libraries of 5,000 materials and 1,000 formulas; look-alikes among 5,000; the library as a document. */
export async function benchMerging({ quick }: BenchSettings): Promise<BenchFigure[]> {
  const folder = await makeLibrary(MATERIALS, FORMULAS);
  const ours = await opened(folder);
  change(ours, 100, 'ours');
  const theirs = await opened(folder);
  change(theirs, 10, 'theirs');
  const [ourBytes, theirBytes] = [ours.exportBytes(), theirs.exportBytes()];
  const merging: number[] = [];
  const comparing: number[] = [];
  for (let round = 0; round < (quick ? 2 : 5); round += 1) {
    const other = { kind: 'library' as const, bytes: theirBytes.slice(), name: 'North Bench' };
    const decisions = { rules: {}, records: {}, fields: {} };
    const doing = { by: '', at: AT, why: 'merged', library: 'ours' };
    let met: Met | undefined;
    const compared = await timeOf(async () => {
      met = (await performMeeting({
        ...{ kind: 'begin', meeting: 'bench', ours: ourBytes.slice(), other, at: AT },
      })) as Met;
    });
    if ((met?.relations['both changed'] ?? 0) < MATERIALS / 100) throw new Error('Nothing differed.');
    comparing.push(compared);
    const applied = await timeOf(() => performMeeting({ kind: 'apply', meeting: 'bench', decisions, doing }));
    merging.push(compared + applied);
  }
  const alike: number[] = [];
  for (let round = 0; round < (quick ? 3 : 10); round += 1)
    alike.push(await timeOf(() => inPieces(alikePairs(readSketches(ours)))));
  const documents = [await timeOf(() => inPieces(readDocument(ours, { id: 'x', name: 'x', writtenAt: AT })))];
  ours.close();
  theirs.close();
  return [
    figureFrom('two libraries of 5,000 + 1,000 compared', comparing, {}),
    figureFrom('two libraries of 5,000 + 1,000 compared and merged', merging, { atMost: 5_000 }),
    figureFrom('look-alikes among 5,000 materials', alike, { atMost: 2_000 }),
    figureFrom('the same library read as a document', documents, {}),
  ];
}
