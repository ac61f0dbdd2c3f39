import type { Reader } from '../database';

/**
 * The drafts that say something which no version holds yet, the last changed first.
 * @param most as many as are asked for
 */
export function unrecordedDrafts(db: Reader, most: number): string[] {
  return db
    .all<{ id: string }>(
      `SELECT f.id FROM formula f WHERE f.archived = 0
       AND NOT EXISTS (SELECT 1 FROM formula_version v WHERE v.formula_id = f.id AND v.recorded_at >= f.updated_at)
       ORDER BY f.updated_at DESC LIMIT ?`,
      most,
    )
    .map(({ id }) => id);
}
