import { Problem } from '@core/problems/problem';
import { openBytes } from '@db/library/file/library-bytes';
import type { ServiceContext } from '../context';

/** What a backup holds, by what its records are called; null where it cannot be read. */
export type BackupHolds = Record<string, number> | null;

const TABLES = {
  'raw material': 'material',
  formula: 'formula',
  version: 'formula_version',
  batch: 'batch',
  substance: 'substance',
  limit: 'legal_limit',
} as const;

/** Counts what a backup holds. Only a name that the list of backups gave. @throws Problem not-found */
export async function backupHolds(context: ServiceContext, name: string): Promise<BackupHolds> {
  const { library } = context.session.current();
  try {
    const bytes = await library.readBackup(name);
    // Counting needs no check of the whole: that was made when it was written.
    const { engine } = await openBytes(bytes, Number.MAX_SAFE_INTEGER, { known: true, given: true });
    const known = new Set(
      engine
        .all<{ name: string }>("SELECT name FROM sqlite_schema WHERE type = 'table'")
        .map((row) => row.name),
    );
    const counts = Object.entries(TABLES)
      .filter(([, table]) => known.has(table))
      .map(([one, table]) => [one, engine.get<{ n: number }>(`SELECT count(*) AS n FROM ${table}`)?.n ?? 0]);
    engine.close();
    return Object.fromEntries(counts) as BackupHolds;
  } catch (error) {
    if (error instanceof Problem && error.code !== 'not-found') return null;
    throw error;
  }
}
