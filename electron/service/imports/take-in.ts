import { Problem } from '@core/problems/problem';
import { same } from '@core/record/same';
import type { Reader, Writer } from '@db/database';
import { beginHistories, keepBefore, keepDeleted, type Doing } from '@db/record/history';
import type { Kept } from '@db/record/record-table';
import type { TableImport, Written } from './table-import';

/** What became of the records of a table. */
export interface Taken<R> {
  /** What stands in the library by then; null once it is taken back. */
  written: Written<R> | null;
  added: number;
  changed: number;
  /** Each record as it is now; without a revision where it is gone. */
  now: { id: string; revision?: number }[];
}

function conflict(title: string): Problem {
  return new Problem({
    code: 'conflict',
    title,
    advice: 'Look at what would be taken in once more, then take it in. Nothing was changed.',
  });
}

interface Made<R> {
  made: R[];
  pairs: { before: R; after: R }[];
}

/** The records as they are to be written; those that are given something only then are written at once. */
function recordsOf<R extends Kept & C, C extends object>(
  tx: Writer,
  { planned, taker: { repository, complete } }: TableImport<C, R>,
  doing: Doing,
  newId: () => string,
): Made<R> {
  const made: R[] = [];
  const pairs: { before: R; after: R }[] = [];
  for (const { before, content } of planned) {
    if (!content) continue;
    const stamp = { updatedAt: doing.at, revision: (before?.revision ?? 0) + 1 };
    if (before) {
      pairs.push({ before, after: { ...before, ...content, ...stamp } });
      continue;
    }
    const whole = complete?.(tx, content) ?? content;
    const one = { ...whole, id: newId(), createdAt: doing.at, ...stamp } as unknown as R;
    made.push(one);
    // A number drawn for the next one must see this one.
    if (complete) repository.insert(tx, one);
  }
  if (!complete) {
    if (repository.insertMany) repository.insertMany(tx, made);
    else for (const one of made) repository.insert(tx, one);
  }
  return { made, pairs };
}

/**
 * Writes all that was planned; to be called within one transaction.
 * @throws Problem conflict when a record was changed, or came, since it was planned; invalid-input for a circle
 */
export function takeIn<R extends Kept & C, C extends object>(
  tx: Writer,
  table: TableImport<C, R>,
  doing: Doing,
  newId: () => string,
): Taken<R> {
  const { repository, cameSince, refuseTogether } = table.taker;
  const { noun } = repository;
  if (table.written) throw conflict('This table is taken in already.');
  const came = cameSince(tx, table.planned);
  if (came !== null) throw conflict(`“${came}” has come into the library meanwhile.`);
  const { made, pairs } = recordsOf(tx, table, doing, newId);
  const added = made.map(({ id }) => id);
  beginHistories(tx, noun.kind, added, doing);
  for (const { before, after } of pairs) {
    if (repository.read(tx, before.id)?.revision !== before.revision)
      throw conflict(`“${noun.titleOf(before)}” was changed meanwhile.`);
    keepBefore(tx, noun, before, doing);
    repository.update(tx, before, after);
  }
  const all = [...made, ...pairs.map(({ after }) => after)];
  refuseTogether?.(tx, all);
  const changed = pairs.map(({ before, after }) => ({ before, revision: after.revision }));
  return {
    written: { added, changed },
    added: added.length,
    changed: changed.length,
    now: all.map(({ id, revision }) => ({ id, revision })),
  };
}

function unchangedSince<R extends Kept & C, C extends object>(
  { taker: { repository } }: TableImport<C, R>,
  db: Reader,
  id: string,
  revision: number,
): R {
  const now = repository.read(db, id);
  if (now?.revision === revision) return now;
  const { name, titleOf } = repository.noun;
  throw new Problem({
    code: 'conflict',
    title: now
      ? `“${titleOf(now)}” was changed after it was taken in.`
      : `A ${name} that was taken in is no longer there.`,
    advice: 'Taking in can be undone only as a whole. Correct the records one by one, from their history.',
  });
}

/**
 * Takes back all that a table has written: what it added goes, what it changed is as before. To be called within one
 * transaction.
 * @throws Problem conflict when one of them was changed since, in-use when one is used by now
 */
export function takeBack<R extends Kept & C, C extends object>(
  tx: Writer,
  table: TableImport<C, R>,
  doing: Doing,
): Taken<R> {
  const { repository, refuseUsed } = table.taker;
  const { noun } = repository;
  const { added, changed } = table.written ?? { added: [], changed: [] };
  const told: Taken<R>['now'] = [];
  for (const id of added) {
    const now = unchangedSince(table, tx, id, 1);
    refuseUsed?.(tx, now);
    keepDeleted(tx, noun, now, doing);
    repository.remove(tx, id);
    told.push({ id });
  }
  for (const { before, revision } of changed) {
    const now = unchangedSince(table, tx, before.id, revision);
    const after: R = { ...before, revision: revision + 1, updatedAt: doing.at };
    keepBefore(tx, noun, now, doing);
    if (!same(now, after)) repository.update(tx, now, after);
    told.push({ id: after.id, revision: after.revision });
  }
  return { written: null, added: added.length, changed: changed.length, now: told };
}
