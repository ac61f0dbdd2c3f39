import type { KeyOf, ListDescription } from '../lists/description';

export const BATCH_STATES = ['planned', 'finished'] as const;

/** A batch as its list knows it. */
export interface BatchEntry {
  id: string;
  number: string;
  createdAt: string;
  /** The year it was planned in, as a word to filter by. */
  year: string;
  totalMg: number;
  /** Whether it is told what came of it, and the day on which it was finished; null until then. */
  state: (typeof BATCH_STATES)[number];
  finishedOn: string | null;
  versionId: string;
  versionNumber: number;
  formulaId: string;
  formulaName: string;
  formulaCode: string;
  note: string;
}

/** A row of the batches list as it is sent. */
export type BatchRow = Omit<BatchEntry, 'note' | 'year' | 'state'>;

/** The list of batches, newest first. */
export const BATCHES_LIST: ListDescription<KeyOf<BatchEntry>> = {
  one: 'batch',
  many: 'batches',
  name: 'number',
  code: 'number',
  texts: { names: ['number'], shown: ['formulaName', 'formulaCode'], unshown: ['note'] },
  facets: [
    { key: 'state', title: 'State', words: BATCH_STATES },
    { key: 'formulaName', title: 'Formula', words: null },
    { key: 'year', title: 'Planned in', words: null },
  ],
  ranges: [],
  sorts: [
    { key: 'number', by: 'text' },
    { key: 'formulaName', by: 'text' },
    { key: 'versionNumber', by: 'number' },
    { key: 'totalMg', by: 'number' },
    { key: 'createdAt', by: 'date' },
    { key: 'finishedOn', by: 'date' },
  ],
  firstSort: { key: 'createdAt', descending: true },
  unsent: ['note', 'year', 'state'],
};
