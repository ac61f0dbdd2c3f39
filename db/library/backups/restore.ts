import { Problem } from '@core/problems/problem';
import { migrate } from '../../migrations/runner';
import { readBackup } from './backups';
import type { Engine } from '../sql/engine';
import { openBytes } from '../file/library-bytes';
import { chainAfter, type Position } from '../log/log-format';
import { writePosition, writeRevision } from '../file/meta';
import type { Settled } from '../options';
import { sha256Of } from '../file/whole-file';

export interface Restored {
  engine: Engine;
  /** The next change after the present one, so that no record of the log so far can apply again. */
  position: Position;
  bytes: Uint8Array;
}

/**
 * Opens the bytes of a state of this library, such as one that another was merged into, as what is to follow the present
 * one. Nothing is written. Throws Problem.
 */
export async function prepareState(
  settled: Settled,
  bytes: Uint8Array,
  present: Position & { id: string; revision: number },
  why: string,
): Promise<Restored> {
  const { migrations, now } = settled;
  const { engine, meta } = await openBytes(bytes, migrations.length);
  try {
    if (meta.id !== present.id) throw foreignBackup(why);
    migrate(engine, migrations, now());
    const position = {
      sequence: present.sequence + 1,
      chain: chainAfter(present.chain, `${why} ${sha256Of(bytes)}`),
    };
    writePosition(engine, position);
    writeRevision(engine, present.revision + 1);
    return { engine, position, bytes: engine.exportBytes() };
  } catch (error) {
    engine.close();
    throw error;
  }
}

/** Opens a backup as the state that is to follow the present one. Nothing is written. Throws Problem. */
export async function prepareRestore(
  settled: Settled,
  name: string,
  present: Position & { id: string; revision: number },
): Promise<Restored> {
  const backup = await readBackup(settled.fileSystem, settled.backupFolder, name);
  return prepareState(settled, backup, present, 'restored');
}

function foreignBackup(why: string): Problem {
  return new Problem({
    code: 'library-not-one',
    title: 'This backup belongs to another library.',
    advice:
      'Choose one of this library’s backups. To use the other, copy it into a folder of its own and open that.',
    facts: { why },
  });
}
