import { MG_PER_G } from '../quantities/mass';
import { percentFromPpm } from '../quantities/share';
import type { TableColumn } from '../record/table-column';
import type { Trial, TrialLine, TrialSeries } from './trial-series';

/** A series with what it was made for; empty for an oil phase put together at the bench. */
export type SeriesTableRow = TrialSeries & { updatedAt: string; formula: string };

/** Series of trials, a row each. */
export const SERIES_COLUMNS: readonly TableColumn<SeriesTableRow>[] = [
  { heading: 'Title', cell: ({ title }) => title },
  { heading: 'Made for', cell: ({ formula }) => formula || null },
  { heading: 'Target HLB', cell: ({ targetHlb }) => targetHlb },
  { heading: 'Each batch (g)', cell: ({ batchMg }) => batchMg / MG_PER_G },
  { heading: 'Balance readability (g)', cell: ({ readabilityMg }) => readabilityMg / MG_PER_G },
  { heading: 'Trials', cell: ({ trials }) => trials.length },
  {
    heading: 'Chosen trial',
    cell: ({ trials, chosen }) => (chosen === null ? null : (trials[chosen]?.label ?? null)),
  },
  { heading: 'Notes', cell: ({ notes }) => notes || null },
  { heading: 'Made on', cell: ({ createdAt }) => ({ date: createdAt.slice(0, 10) }) },
  { heading: 'Changed', cell: ({ updatedAt }) => ({ date: updatedAt.slice(0, 10) }) },
];

/** A trial of a series. */
export interface TrialTableRow extends Trial {
  series: string;
  chosen: boolean;
}

/** The trials of series, a row each. */
export const TRIAL_COLUMNS: readonly TableColumn<TrialTableRow>[] = [
  { heading: 'Series', cell: ({ series }) => series },
  { heading: 'Trial', cell: ({ label }) => label },
  { heading: 'HLB', cell: ({ hlb }) => hlb },
  { heading: 'Emulsifiers together (%)', cell: ({ levelPpm }) => percentFromPpm(levelPpm) },
  { heading: 'Chosen', cell: ({ chosen }) => (chosen ? true : null) },
  { heading: 'Observations', cell: ({ result }) => result || null },
];

/** A line of a trial with what its material is called. */
export interface TrialLineTableRow extends TrialLine {
  series: string;
  trial: string;
  material: string;
  materialCode: string;
}

/** The lines of trials, a row each, as they are weighed. */
export const TRIAL_LINE_COLUMNS: readonly TableColumn<TrialLineTableRow>[] = [
  { heading: 'Series', cell: ({ series }) => series },
  { heading: 'Trial', cell: ({ trial }) => trial },
  { heading: 'Material', cell: ({ material }) => material || null },
  { heading: 'Material code', cell: ({ materialCode }) => materialCode || null },
  { heading: 'Part', cell: ({ part }) => part },
  { heading: 'Share (%)', cell: ({ ppm }) => percentFromPpm(ppm) },
  { heading: 'Mass (g)', cell: ({ mg }) => mg / MG_PER_G },
];
