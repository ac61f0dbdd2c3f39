import { optimise } from '@core/emulsions/optimise/optimise';
import { OBJECTIVES, type Candidate, type Demand } from '@core/emulsions/optimise/demand';
import { solveWithHighs } from '@service/emulsions/optimiser';
import { demoShelf } from '../unit/emulsions-optimise/demo-shelf';
import { benchDemand, generatedCandidates } from './emulsifiers';
import { countSets, exhaustiveOptimum } from './exhaustive';
import { figureFrom, percentile, timeOf, type BenchFigure } from './measure';

/** Times of several runs, in ms. */
async function timesOf(runs: number, run: (index: number) => Promise<unknown>): Promise<number[]> {
  const times: number[] = [];
  for (let index = 0; index < runs; index += 1) times.push(await timeOf(() => run(index)));
  return times;
}

async function proven(candidates: Candidate[], demand: Demand): Promise<number> {
  const result = await optimise({ candidates, demand }, solveWithHighs);
  if (result.status !== 'optimal') throw new Error(`The bench’s demand has no answer: ${result.reason}`);
  return result.best.objective;
}

/** Runs before the measured ones. */
const WARM_UP = 6;

/** 500 candidates, at most 4 used, over several generated shelves: time to the proven optimum. */
async function fiveHundred(): Promise<BenchFigure[]> {
  const shelves = Array.from({ length: 10 }, (_, seed) => generatedCandidates(500, seed + 1));
  const figures: BenchFigure[] = [];
  for (const objective of OBJECTIVES) {
    const demand = benchDemand({ objective });
    // Warm: the engine compiles the solver in the background during its first runs.
    for (const shelf of shelves.slice(0, WARM_UP)) await proven(shelf, demand);
    const times = await timesOf(20, (index) => proven(shelves[index % shelves.length] ?? [], demand));
    figures.push(
      figureFrom(`optimiser, 500 candidates, at most 4, ${objective}, warm`, times, { atMost: 300 }),
    );
  }
  return figures;
}

/** The demonstration shelf, as the page asks of it: the proven best and six alternatives. */
async function wholeAnswer(): Promise<BenchFigure[]> {
  const candidates = demoShelf();
  const figures: BenchFigure[] = [];
  for (const objective of OBJECTIVES) {
    const demand = benchDemand({ objective, targetHlb: 10.2, tolerance: 0.3, alternatives: 6 });
    for (let run = 0; run < WARM_UP; run += 1) await proven(candidates, demand);
    const times = await timesOf(10, () => proven(candidates, demand));
    figures.push(figureFrom(`optimiser, demonstration shelf with six alternatives, ${objective}`, times));
  }
  return figures;
}

/** The same model on a shelf small enough for exhaustive search to finish, both to the same optimum. */
async function againstExhaustive(): Promise<BenchFigure> {
  const demand = benchDemand();
  const candidates = generatedCandidates(500, 7)
    .filter((one) => one.charge === 'non-ionic' && one.architecture === 'classic')
    .filter((one) => one.hlb !== null && one.costPerKg !== null)
    .slice(0, 30);
  let [optimum, looked] = [0, 0 as number | null];
  const times = await timesOf(10, async () => (optimum = await proven(candidates, demand)));
  const peer = await timeOf(() => (looked = exhaustiveOptimum(candidates, demand)));
  if (looked === null || Math.abs(looked - optimum) > 1e-4) {
    throw new Error(`The optimiser found ${optimum}, exhaustive search ${looked}.`);
  }
  const sets = countSets(candidates.length, 4);
  // The search is run once, so that medians are compared.
  const ratio = percentile(times, 0.5) / peer;
  return {
    ...figureFrom(`optimiser, 30 candidates, peer: exhaustive search of ${sets} sets`, times, { peer }),
    ratio,
    goal: '≤ 0.01 × peer',
    ok: ratio <= 0.01,
  };
}

/** The optimiser's figures. */
export async function benchOptimise(): Promise<BenchFigure[]> {
  return [...(await fiveHundred()), ...(await wholeAnswer()), await againstExhaustive()];
}
