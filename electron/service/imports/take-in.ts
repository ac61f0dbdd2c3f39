import { Problem } from '@core/problems/problem';
import { same } from '@core/record/same';
import type { Reader } from '@db/database';
import { beginHistories, keepBefore, keepDeleted } from '@db/record/history';
import type { Kept } from '@db/record/record-table';
import type { ServiceContext } from '../context';
import { doingNow } from '../record/records';
import { markChanged, tellChange } from '../record/tell-change';
import type { TableImport } from './table-import';

/** More changes than these are told as one: every window asks anew for what it shows. */
const MOST_TOLD = 200;

function conflict(title: string): Problem {
  return new Problem({
    code: 'conflict',
    title,
    advice: 'Look at what would be taken in once more, then take it in. Nothing was changed.',
  });
}

function tellAll(
  context: ServiceContext,
  kind: string,
  now: readonly { id: string; revision?: number }[],
): void {
  if (now.length <= MOST_TOLD) for (const one of now) tellChange(context, kind, one);
  else {
    for (const { id } of now) markChanged(context, kind, id);
    context.session.changes.tellLibrary();
  }
}

/** How many records a table added and changed. */
export interface TakenIn {
  added: number;
  changed: number;
}

/**
 * Writes all that was planned, or nothing, as one change.
 * @throws Problem conflict when a record was changed, or came, since it was planned; invalid-input for a circle
 */
export function takeIn<R extends Kept & C, C extends object>(
  context: ServiceContext,
  table: TableImport<C, R>,
): TakenIn {
  const { library } = context.session.current();
  const { repository, cameSince, complete, refuseTogether } = table.taker;
  const { noun } = repository;
  if (table.written) throw conflict('This table is taken in already.');
  const came = cameSince(library, table.planned);
  if (came !== null) throw conflict(`“${came}” has come into the library meanwhile.`);
  const doing = doingNow(context, `taken in from ${table.file}`);
  const { added, changed } = library.transaction((tx) => {
    const made: R[] = [];
    const pairs: { before: R; after: R }[] = [];
    for (const { before, content } of table.planned) {
      if (!content) continue;
      const whole = before ? content : (complete?.(tx, content) ?? content);
      const stamp = { updatedAt: doing.at, revision: (before?.revision ?? 0) + 1 };
      if (before) pairs.push({ before, after: { ...before, ...whole, ...stamp } });
      else {
        const one = { ...whole, id: context.newId(), createdAt: doing.at, ...stamp } as unknown as R;
        made.push(one);
        // A number drawn for the next one must see this one.
        if (complete) repository.insert(tx, one);
      }
    }
    if (!complete) {
      if (repository.insertMany) repository.insertMany(tx, made);
      else for (const one of made) repository.insert(tx, one);
    }
    beginHistories(
      tx,
      noun.kind,
      made.map(({ id }) => id),
      doing,
    );
    for (const { before, after } of pairs) {
      if (repository.read(tx, before.id)?.revision !== before.revision)
        throw conflict(`“${noun.titleOf(before)}” was changed meanwhile.`);
      keepBefore(tx, noun, before, doing);
      repository.update(tx, before, after);
    }
    refuseTogether?.(tx, [...made, ...pairs.map(({ after }) => after)]);
    return { added: made, changed: pairs };
  });
  table.written = {
    added: added.map(({ id }) => id),
    changed: changed.map(({ before, after }) => ({ before, revision: after.revision })),
  };
  tellAll(context, noun.kind, [...added, ...changed.map(({ after }) => after)]);
  return { added: added.length, changed: changed.length };
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
 * Takes back all that a table has written, as one change: what it added goes, what it changed is as before.
 * @throws Problem conflict when one of them was changed since, in-use when one is used by now
 */
export function takeBack<R extends Kept & C, C extends object>(
  context: ServiceContext,
  table: TableImport<C, R>,
): TakenIn {
  const { library } = context.session.current();
  const { repository, refuseUsed } = table.taker;
  const { noun } = repository;
  const written = table.written ?? { added: [], changed: [] };
  const doing = doingNow(context, 'taking in undone');
  const told: { id: string; revision?: number }[] = [];
  library.transaction((tx) => {
    for (const id of written.added) {
      const now = unchangedSince(table, tx, id, 1);
      refuseUsed?.(tx, now);
      keepDeleted(tx, noun, now, doing);
      repository.remove(tx, id);
      told.push({ id });
    }
    for (const { before, revision } of written.changed) {
      const now = unchangedSince(table, tx, before.id, revision);
      const after: R = { ...before, revision: revision + 1, updatedAt: doing.at };
      keepBefore(tx, noun, now, doing);
      if (!same(now, after)) repository.update(tx, now, after);
      told.push(after);
    }
  });
  table.written = null;
  tellAll(context, noun.kind, told);
  return { added: written.added.length, changed: written.changed.length };
}
