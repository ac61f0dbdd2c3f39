import type { TrialSeries } from './trial-series';

/** One material through all trials of a series: its mass in each, mg; null where a trial has none of it. */
export interface TrialRow {
  materialId: string;
  part: 'emulsifier' | 'other';
  masses: (number | null)[];
}

/** The rows to weigh by: every material that any trial holds, emulsifiers first, in the order they are met. */
export function trialRows(series: Pick<TrialSeries, 'trials'>): TrialRow[] {
  const lines = series.trials.flatMap((trial) => trial.lines);
  const seen = new Map(lines.map((line) => [`${line.part} ${line.materialId}`, line]));
  const rows = [...seen.values()].map(({ materialId, part }) => ({
    materialId,
    part,
    masses: series.trials.map(({ lines: all }) => {
      // One material may stand in a trial twice, as an oil and among the rest: it is weighed once.
      const own = all.filter((line) => line.materialId === materialId && line.part === part);
      return own.length === 0 ? null : own.reduce((sum, { mg }) => sum + mg, 0);
    }),
  }));
  return [...rows.filter((row) => row.part === 'emulsifier'), ...rows.filter((row) => row.part === 'other')];
}
