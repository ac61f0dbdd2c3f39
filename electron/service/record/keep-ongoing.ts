import { setImmediate } from 'node:timers/promises';
import { PAUSE_MS } from '@db/record/history';
import { putState } from '@db/record/state';
import { readSome, RECORD_KINDS } from '@db/repositories';
import type { ServiceContext } from '../context';

const AT_ONCE = 50;
/** A table that has just come in holds more: nobody goes on with all of it. */
const MOST = 2_000;

/** A saved search does not tell when it was changed. */
const DATED = RECORD_KINDS.filter(({ table }) => table !== 'saved_search');

/**
 * Keeps the states of records whose sitting may still go on, before the whole library leaves as a file: when what was
 * made of them comes back, they are what both sides began with. A library that cannot be written is sent all the same.
 */
export async function keepOngoing(context: ServiceContext): Promise<void> {
  const { library } = context.session.current();
  if (library.readOnly) return;
  const since = new Date(context.now().getTime() - PAUSE_MS).toISOString();
  for (const kind of DATED) {
    const { repository, table } = kind;
    const found = library.all<{ id: string }>(
      `SELECT id FROM ${table} WHERE updated_at >= ? LIMIT ?`,
      ...[since, MOST + 1],
    );
    if (found.length > MOST) continue;
    for (let at = 0; at < found.length; at += AT_ONCE) {
      const ids = found.slice(at, at + AT_ONCE).map(({ id }) => id);
      library.transaction((tx) => {
        for (const record of readSome(kind, tx, ids))
          putState(tx, repository.noun as never, record.id, repository.noun.read(record));
      });
      await setImmediate();
    }
  }
}
