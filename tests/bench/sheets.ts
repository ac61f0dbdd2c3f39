import { batchSheet } from '@core/sheets/batch-sheet';
import { renderSheet } from '@service/sheets/render';
import { AT } from '../unit/sheets/sample-materials';
import { longVersion, MAKER, sampleBatch } from '../unit/sheets/samples';
import { figureFrom, timeOf, type BenchFigure, type BenchSettings } from './measure';

const WARM_UP = 12;

/** How long a batch record of 30 lines takes from values to PDF, warm. */
export async function benchSheets({ quick }: BenchSettings): Promise<BenchFigure[]> {
  const version = longVersion(30);
  const batch = sampleBatch(version);
  const took: number[] = [];
  for (let round = 0; round < WARM_UP + (quick ? 20 : 60); round += 1) {
    // Another date each time, so that nothing of the last sheet could be handed out again.
    const now = new Date(Date.parse(AT) + round * 1000);
    const time = await timeOf(() => renderSheet(batchSheet(batch, version, MAKER, AT), { now }));
    if (round >= WARM_UP) took.push(time);
  }
  return [figureFrom('batch record of 30 lines, warm', took, { atMost: 60 })];
}
