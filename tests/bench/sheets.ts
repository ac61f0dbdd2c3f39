import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { SheetJob } from '@service/sheets/job';
import { startThread } from '@service/threads/thread';
import { AT } from '../unit/sheets/sample-materials';
import { longVersion, MAKER, sampleBatch } from '../unit/sheets/samples';
import { figureFrom, timeOf, type BenchFigure, type BenchSettings } from './measure';

const WARM_UP = 12;
const WORKER = pathToFileURL(join(resolve(import.meta.dirname, '../../out/main'), 'sheets-worker.js'));

/** How long a batch record of 30 lines takes from values to PDF, warm, in the thread that prints it. */
export async function benchSheets({ quick }: BenchSettings): Promise<BenchFigure[]> {
  const version = longVersion(30);
  const of = { batch: sampleBatch(version), version, decisions: [], withdrawn: [], outcome: null };
  const printing = startThread<SheetJob, Uint8Array>(WORKER);
  const took: number[] = [];
  for (let round = 0; round < WARM_UP + (quick ? 20 : 60); round += 1) {
    // Another date each time, so that nothing of the last sheet could be handed out again.
    const printedAt = new Date(Date.parse(AT) + round * 1000).toISOString();
    const job = {
      subject: { kind: 'batch' as const, of },
      settings: MAKER,
      printedAt,
      replaceUnprintable: false,
    };
    const time = await timeOf(() => printing.run(job));
    if (round >= WARM_UP) took.push(time);
  }
  return [figureFrom('batch record of 30 lines, warm', took, { atMost: 60 })];
}
