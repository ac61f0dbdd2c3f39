import { z } from 'zod';

/** The kinds of records whose changes screens follow. */
export type RecordKind =
  | 'material'
  | 'formula'
  | 'version'
  | 'batch'
  | 'trial series'
  | 'saved search'
  | 'settings'
  | 'substance'
  | 'limit';

/** The kind by which it is told that another library, or another state of it, is open: all may be different. */
export const LIBRARY = 'library';

/** A record that was changed, added or deleted. */
export const recordChange = z.object({
  /** Its noun's kind, or `LIBRARY`. */
  kind: z.string(),
  /** Empty for the library. */
  id: z.string(),
  /** The count of its edits by now; null when it was deleted. */
  revision: z.int().nullable(),
});
export type RecordChange = z.infer<typeof recordChange>;

/** How many changes were told since the service started; `run` is that start's own name. */
export const changesPosition = z.object({ run: z.string(), told: z.int() });
export type ChangesPosition = z.infer<typeof changesPosition>;
