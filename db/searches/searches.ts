import { SAVED_SEARCH, type SavedSearchContent } from '@core/searches/search';
import type { Reader, Writer } from '../database';
import type { Kept } from '../record/record-table';
import type { Repository } from '../record/repository';

export interface SavedSearch extends SavedSearchContent {
  id: string;
}

export type SearchRecord = Kept & SavedSearchContent;

export function listSearches(db: Reader): SavedSearch[] {
  return db.all<SavedSearch>('SELECT id, name, query FROM saved_search ORDER BY name COLLATE NOCASE');
}

function insertSearch(tx: Writer, { id, name, query, createdAt }: SearchRecord): void {
  tx.run(
    'INSERT INTO saved_search (id, name, query, created_at) VALUES (?, ?, ?, ?)',
    id,
    name,
    query,
    createdAt,
  );
}

/** A saved search is made and taken away, never edited: its revision stays 1. */
export const searchRecords: Repository<SearchRecord, SavedSearchContent> = {
  noun: SAVED_SEARCH,
  read: (db, id) =>
    db.get<SearchRecord>(
      `SELECT id, name, query, 1 AS revision, created_at AS createdAt, created_at AS updatedAt
       FROM saved_search WHERE id = ?`,
      id,
    ),
  insert: insertSearch,
  update: (tx, _before, after) =>
    tx.run('UPDATE saved_search SET name = ?, query = ? WHERE id = ?', after.name, after.query, after.id),
  remove: (tx, id) => tx.run('DELETE FROM saved_search WHERE id = ?', id),
};
