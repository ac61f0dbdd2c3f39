import { join } from 'node:path';
import { migrate, pendingMigrations } from '../../migrations/runner';
import { writeBackup } from '../backups/backup-file';
import { diskProblem } from '../file/disk-problem';
import { writeRevision } from '../file/meta';
import { sha256Of, writeWholeFile } from '../file/whole-file';
import { LIBRARY_FILE } from '../folding/rewrite';
import type { ChangeLog } from '../log/log';
import type { Settled } from '../options';
import type { Loaded } from './loading';

/**
 * Brings an older library up to date: a backup first, then in memory, then the file written whole. Until that
 * last step the file on disk is the old one, and the log leads on from either.
 */
export async function migrateOnDisk(settled: Settled, loaded: Loaded, log: ChangeLog): Promise<void> {
  const { fileSystem: fs, folder, migrations, now } = settled;
  const { engine, meta } = loaded;
  if (pendingMigrations(engine, migrations).length === 0) return;
  try {
    const order = { folder: settled.backupFolder, reason: 'migration' as const, at: now().toISOString() };
    await writeBackup(fs, order, meta.sequence, engine.exportBytes());
    migrate(engine, migrations, now());
    meta.revision += 1;
    writeRevision(engine, meta.revision);
    const bytes = engine.exportBytes();
    const written = await writeWholeFile(fs, join(folder, LIBRARY_FILE), bytes, {
      beforeReplace: async () => log.announceFile(sha256Of(bytes)),
    });
    loaded.identity = written.identity;
    loaded.inFile = { sequence: meta.sequence, chain: meta.chain };
    loaded.replayed = 0;
    if (!written.durable) throw Object.assign(new Error('The folder could not be flushed.'), { code: 'EIO' });
    // The log's records were made for the old schema, and all are in the file now.
    log.restartAt({ libraryId: meta.id, ...loaded.inFile, fileSha256: written.identity.sha256 });
  } catch (error) {
    throw diskProblem(error, 'bring the library up to date');
  }
}
