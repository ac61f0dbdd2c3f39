import { Problem } from '@core/problems/problem';
import { migrate, type Migration } from '../../migrations/runner';
import { openBytes } from '../file/library-bytes';
import { chainAfter, type Position } from '../log/log-format';
import { writePosition, writeRevision } from '../file/meta';
import { sha256Of } from '../file/whole-file';

/** A state of this library that is to follow the present one; plain data, so that it can be handed to a worker. */
export interface StateToFollow {
  /** A library file; the engine works in it. */
  bytes: Uint8Array;
  present: Position & { id: string; revision: number };
  /** What makes it follow, such as `restored`: part of what the next position is known by. */
  why: string;
  /** ISO 8601 UTC. */
  at: string;
}

export interface PreparedState {
  bytes: Uint8Array;
  sha256: string;
  /** The next change after the present one, so that no record of the log so far can apply again. */
  position: Position;
}

/** Throws Problem library-damaged, library-newer, library-not-one. */
export type StatePreparer = (state: StateToFollow) => Promise<PreparedState>;

/**
 * Looks a state through, such as one that another was merged into, and writes into it that it follows the present one.
 * Nothing is written to the disk. Throws Problem.
 */
export async function prepareState(
  migrations: readonly Migration[],
  { bytes, present, why, at }: StateToFollow,
): Promise<PreparedState> {
  // Before the engine works in it.
  const was = sha256Of(bytes);
  const { engine, meta } = await openBytes(bytes, migrations.length, { given: true });
  try {
    if (meta.id !== present.id) throw foreignBackup(why);
    migrate(engine, migrations, new Date(at));
    const position = {
      sequence: present.sequence + 1,
      chain: chainAfter(present.chain, `${why} ${was}`),
    };
    writePosition(engine, position);
    writeRevision(engine, present.revision + 1);
    const prepared = engine.exportBytes();
    return { bytes: prepared, sha256: sha256Of(prepared), position };
  } finally {
    engine.close();
  }
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
