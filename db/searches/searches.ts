import type { Reader, Writer } from '../database';

/** A search that a maker saved under a name; `query` is the list's address after the question mark. */
export interface SavedSearch {
  id: string;
  name: string;
  query: string;
}

export function listSearches(db: Reader): SavedSearch[] {
  return db.all<SavedSearch>('SELECT id, name, query FROM saved_search ORDER BY name COLLATE NOCASE');
}

export function insertSearch(tx: Writer, search: SavedSearch, createdAt: string): void {
  tx.run(
    'INSERT INTO saved_search (id, name, query, created_at) VALUES (?, ?, ?, ?)',
    ...[search.id, search.name, search.query, createdAt],
  );
}

export function deleteSearch(tx: Writer, id: string): void {
  tx.run('DELETE FROM saved_search WHERE id = ?', id);
}
