import type { KeyOf, ListDescription } from '../lists/description';

/** Whether a trial of a series has been chosen. */
export const SERIES_STATUSES = ['none chosen yet', 'chosen'] as const;

/** A trial series as its list knows it. */
export interface SeriesEntry {
  id: string;
  title: string;
  createdAt: string;
  updatedAt: string;
  trials: number;
  status: (typeof SERIES_STATUSES)[number];
  notes: string;
}

/** A row of the list of trial series as it is sent. */
export type SeriesRow = Omit<SeriesEntry, 'notes'>;

/** The list of trial series, newest first. */
export const SERIES_LIST: ListDescription<KeyOf<SeriesEntry>> = {
  one: 'series',
  many: 'series',
  name: 'title',
  code: null,
  texts: { names: ['title'], shown: [], unshown: ['notes'] },
  facets: [{ key: 'status', title: 'Status', words: SERIES_STATUSES }],
  ranges: [],
  sorts: [
    { key: 'title', by: 'text' },
    { key: 'trials', by: 'number' },
    { key: 'createdAt', by: 'date' },
    { key: 'updatedAt', by: 'date' },
  ],
  firstSort: { key: 'createdAt', descending: true },
  unsent: ['notes'],
};
