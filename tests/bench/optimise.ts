import { optimise } from '@core/emulsions/optimise/optimise';
import { OBJECTIVES, type Candidate, type Demand } from '@core/emulsions/optimise/demand';
import { solveWithHighs } from '@service/emulsions/optimiser';
import { benchDemand, generatedCandidates } from './emulsifiers';
import { countSets, exhaustiveOptimum } from './exhaustive';

/** One line of the benchmark table; times in ms, `ratio` is peer / p95 unless the name says otherwise. */
export interface BenchFigure {
  name: string;
  p50: number;
  p95: number;
  unit: string;
  peer: number | null;
  ratio: number | null;
  goal: string;
  ok: boolean;
}

function quantile(sorted: readonly number[], share: number): number {
  return sorted[Math.min(sorted.length - 1, Math.ceil(share * sorted.length) - 1)] ?? NaN;
}

/** Milliseconds of each run, sorted. */
export async function timed(
  runs: number,
  run: (index: number) => Promise<unknown> | unknown,
): Promise<number[]> {
  const times: number[] = [];
  for (let index = 0; index < runs; index += 1) {
    const start = performance.now();
    await run(index);
    times.push(performance.now() - start);
  }
  return times.sort((a, b) => a - b);
}

export const p50 = (sorted: readonly number[]): number => quantile(sorted, 0.5);
export const p95 = (sorted: readonly number[]): number => quantile(sorted, 0.95);

async function proven(candidates: Candidate[], demand: Demand): Promise<number> {
  const result = await optimise({ candidates, demand }, solveWithHighs);
  if (result.status !== 'optimal') throw new Error(`The bench’s demand has no answer: ${result.reason}`);
  return result.best.objective;
}

/** 500 candidates, at most 4 used, over several generated shelves: time to the proven optimum. */
async function fiveHundred(): Promise<BenchFigure[]> {
  const shelves = Array.from({ length: 10 }, (_, seed) => generatedCandidates(500, seed + 1));
  const figures: BenchFigure[] = [];
  for (const objective of OBJECTIVES) {
    const demand = benchDemand({ objective });
    await proven(shelves[0] ?? [], demand);
    const times = await timed(20, (index) => proven(shelves[index % shelves.length] ?? [], demand));
    figures.push({
      name: `optimiser, 500 candidates, at most 4, ${objective}`,
      p50: p50(times),
      p95: p95(times),
      unit: 'ms',
      peer: null,
      ratio: null,
      goal: '≤ 300 ms',
      ok: p95(times) <= 300,
    });
  }
  return figures;
}

/** The same model on a shelf small enough for exhaustive search to finish, both to the same optimum. */
async function againstExhaustive(): Promise<BenchFigure> {
  const demand = benchDemand();
  const candidates = generatedCandidates(500, 7)
    .filter((one) => one.charge === 'non-ionic' && one.architecture === 'classic')
    .filter((one) => one.hlb !== null && one.costPerKg !== null)
    .slice(0, 40);
  let [optimum, looked] = [0, 0 as number | null];
  const times = await timed(10, async () => (optimum = await proven(candidates, demand)));
  const peer = p50(await timed(1, () => (looked = exhaustiveOptimum(candidates, demand))));
  if (looked === null || Math.abs(looked - optimum) > 1e-4) {
    throw new Error(`The optimiser found ${optimum}, exhaustive search ${looked}.`);
  }
  const ratio = peer / p95(times);
  return {
    name: `optimiser against exhaustive search, ${candidates.length} candidates, ${countSets(candidates.length, 4)} sets`,
    p50: p50(times),
    p95: p95(times),
    unit: 'ms',
    peer,
    ratio,
    goal: '≥ 100 times faster',
    ok: ratio >= 100,
  };
}

/** The optimiser's figures. */
export async function benchOptimise(): Promise<BenchFigure[]> {
  return [...(await fiveHundred()), await againstExhaustive()];
}
