import { formatOf, type Noun } from '@core/record/noun';
import type { Kept } from '../record/record-table';

/**
 * What a record holds, beyond what every record has; as its states say it.
 * @param asRead it was validated as it was read, and nothing is worked out of it
 */
export function contentOfRecord(noun: Noun<object>, record: Kept, asRead: boolean): Record<string, unknown> {
  const kept: Record<string, unknown> = { ...record };
  for (const key of ['id', 'revision', 'createdAt', 'updatedAt']) delete kept[key];
  return asRead ? kept : (noun.read(kept) as Record<string, unknown>);
}

/** The format in which a noun's content is written today. */
export const todaysFormat = (noun: Noun<object>): number => formatOf(noun as Noun<never>);
