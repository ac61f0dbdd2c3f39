/** One line of the table: what was measured, against what it is held. Times in `unit`. */
export interface BenchFigure {
  name: string;
  p50: number;
  p95: number;
  unit: string;
  /** The peer's p95 on the same rows in the same run; null where there is no peer, or it could not be had. */
  peer: number | null;
  /** p95 over the peer's p95. */
  ratio: number | null;
  /** What it is held to, in words; null for a figure that is only reported. */
  goal: string | null;
  /** Whether every goal that could be judged is met; null when there is none. */
  ok: boolean | null;
}

export interface Goals {
  /** What p95 may be at most. */
  atMost?: number;
  /** What the ratio may be at most; cannot be judged without the peer. */
  ratioAtMost?: number;
  peer?: number | null;
}

/** What a bench may use: how large, and where the peer is. */
export interface BenchSettings {
  quick: boolean;
  /** The folder in which better-sqlite3 is installed; null when it could not be had. */
  peerFolder: string | null;
  note(text: string): void;
}

const LOOP_ROUNDS = 50_000_000;

/** How long a fixed sum takes, in ms: absolute times are read against it, since machines and their neighbours differ. */
export function fixedLoopMs(): number {
  // The first is compiled while it runs.
  fixedSum();
  const start = performance.now();
  const sum = fixedSum();
  const took = performance.now() - start;
  // The sum is used, so that it cannot be left out.
  return sum === 1 ? 0 : took;
}

function fixedSum(): number {
  let sum = 0;
  for (let round = 0; round < LOOP_ROUNDS; round++) sum = (Math.imul(sum, 31) + round) | 0;
  return sum;
}

/** The value below which the given share of the times lies (nearest rank). */
export function percentile(times: readonly number[], share: number): number {
  const sorted = [...times].sort((a, b) => a - b);
  const time = sorted[Math.max(0, Math.ceil(share * sorted.length) - 1)];
  if (time === undefined) throw new Error('Nothing was measured.');
  return time;
}

/** How long `work` takes, in ms. */
export async function timeOf(work: () => unknown): Promise<number> {
  const start = performance.now();
  await work();
  return performance.now() - start;
}

/** Judges times (ms) against their goals. */
export function figureFrom(name: string, times: readonly number[], goals: Goals = {}): BenchFigure {
  const { atMost, ratioAtMost, peer = null } = goals;
  const p95 = percentile(times, 0.95);
  const ratio = peer === null ? null : p95 / peer;
  const judged: boolean[] = [];
  if (atMost !== undefined) judged.push(p95 <= atMost);
  if (ratioAtMost !== undefined && ratio !== null) judged.push(ratio <= ratioAtMost);
  const goal = [
    atMost === undefined ? [] : `≤ ${atMost} ms`,
    ratioAtMost === undefined ? [] : `≤ ${ratioAtMost} × peer`,
  ].flat();
  return {
    name,
    p50: percentile(times, 0.5),
    p95,
    unit: 'ms',
    peer,
    ratio,
    goal: goal.length === 0 ? null : goal.join(', '),
    ok: judged.length === 0 ? null : judged.every(Boolean),
  };
}
