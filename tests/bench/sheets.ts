import { batchSheet } from '@core/sheets/batch-sheet';
import { renderSheet } from '@service/sheets/render';
import { AT } from '../unit/sheets/sample-materials';
import { longVersion, MAKER, sampleBatch } from '../unit/sheets/samples';

export interface Figure {
  name: string;
  p50: number;
  p95: number;
  unit: 'ms';
  goal: number;
  ok: boolean;
}

const GOAL_MS = 120;
const WARM_UP = 12;

function quantile(sorted: readonly number[], share: number): number {
  return sorted[Math.min(sorted.length - 1, Math.ceil(share * sorted.length) - 1)] ?? Number.NaN;
}

/** How long a batch record of 30 lines takes from values to PDF, warm. The median is held to the goal. */
export async function benchSheets(rounds = 40): Promise<Figure[]> {
  const version = longVersion(30);
  const batch = sampleBatch(version);
  const took: number[] = [];
  for (let round = 0; round < WARM_UP + rounds; round += 1) {
    const start = performance.now();
    // Another date each time, so that nothing of the last sheet could be handed out again.
    await renderSheet(batchSheet(batch, version, MAKER, AT), {
      now: new Date(Date.parse(AT) + round * 1000),
    });
    if (round >= WARM_UP) took.push(performance.now() - start);
  }
  took.sort((a, b) => a - b);
  const p50 = quantile(took, 0.5);
  const p95 = quantile(took, 0.95);
  return [
    { name: 'batch record of 30 lines, warm', p50, p95, unit: 'ms', goal: GOAL_MS, ok: p50 <= GOAL_MS },
  ];
}
