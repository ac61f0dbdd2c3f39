import { formatOf, type Noun } from '@core/record/noun';
import type { Kept } from '../record/record-table';

const OF_EVERY_RECORD = new Set(['id', 'revision', 'createdAt', 'updatedAt']);

/** What a record holds beside what every record has. */
export function heldBy(record: Kept): object {
  const held: Record<string, unknown> = {};
  for (const [key, value] of Object.entries(record)) if (!OF_EVERY_RECORD.has(key)) held[key] = value;
  return held;
}

/** The format in which a noun's content is written today. */
export const todaysFormat = (noun: Noun<object>): number => formatOf(noun as Noun<never>);
