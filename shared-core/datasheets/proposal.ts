import type { Rect } from './lines';

/** How sure a reading is: `sure` stands in a table or behind its label, `likely` was understood from the text around it. */
export const SURENESS = ['sure', 'likely', 'unsure'] as const;
export type Sureness = (typeof SURENESS)[number];

/** What a data sheet says of one thing about its material, and where. */
export interface Proposal {
  /** What it fills, as for a column of a table: `figures.hlb`, `storage.range`. */
  key: string;
  /** As taking in a table reads it. */
  value: unknown;
  /** From 1. */
  page: number;
  rect: Rect;
  /** The line as it stands. */
  line: string;
  sure: Sureness;
  /** What is to be told beside it, in a sentence; empty for nothing. */
  note: string;
}
