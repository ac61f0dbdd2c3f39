import { MG_PER_KG } from '../quantities/mass';
import type { TableColumn } from '../record/table-column';
import type { BatchDocument } from './document';
import type { BatchEntry } from './list';
import type { BatchOutcome } from './outcome';

/** A batch with what came of it, null until that is told, and what is on file of it. */
export type BatchTableRow = BatchEntry & {
  outcome: BatchOutcome | null;
  documents: readonly BatchDocument[];
};

/** Batches, a row each. */
export const BATCH_COLUMNS: readonly TableColumn<BatchTableRow>[] = [
  { heading: 'Batch', cell: ({ number }) => number },
  { heading: 'Formula code', cell: ({ formulaCode }) => formulaCode || null },
  { heading: 'Formula', cell: ({ formulaName }) => formulaName },
  { heading: 'Version', cell: ({ versionNumber }) => versionNumber },
  { heading: 'Planned on', cell: ({ createdAt }) => ({ date: createdAt.slice(0, 10) }) },
  { heading: 'Weighed in (kg)', cell: ({ totalMg }) => totalMg / MG_PER_KG },
  { heading: 'State', cell: ({ state }) => state },
  { heading: 'Finished on', cell: ({ outcome }) => (outcome ? { date: outcome.finishedOn } : null) },
  { heading: 'Obtained (kg)', cell: ({ outcome }) => (outcome ? outcome.obtainedMg / MG_PER_KG : null) },
  { heading: 'Units filled', cell: ({ outcome }) => outcome?.unitsFilled ?? null },
  { heading: 'Recorded by', cell: ({ outcome }) => outcome?.by || null },
  { heading: 'Remarks', cell: ({ outcome }) => outcome?.remarks || null },
  { heading: 'Note', cell: ({ note }) => note || null },
  {
    heading: 'Documents',
    cell: ({ documents }) => documents.map(({ kind, title }) => `${kind}: ${title}`).join('; ') || null,
  },
];
