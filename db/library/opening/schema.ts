import type { Migration } from '../../migrations/runner';
import { alteredPart } from '../../migrations/schema-check';
import { damagedFile } from '../file/library-bytes';
import type { Engine } from '../sql/engine';
import { SqlError } from '../sql/sql-error';

export const NOT_AS_MADE = 'its tables are not as Stillroom makes them';

/** Throws Problem library-damaged where the tables are not those of its version, library-newer where it has another's. */
export async function refuseAlteredSchema(engine: Engine, migrations: readonly Migration[]): Promise<void> {
  try {
    if ((await alteredPart(engine, migrations)) !== undefined) throw damagedFile(NOT_AS_MADE);
  } catch (error) {
    throw error instanceof SqlError ? damagedFile(NOT_AS_MADE) : error;
  }
}
