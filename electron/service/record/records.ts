import { beginHistory, keepBefore, keepDeleted, type Doing } from '@db/record/history';
import type { Kept } from '@db/record/record-table';
import type { Repository } from '@db/record/repository';
import { readSettings } from '@db/settings/settings';
import type { Writer } from '@db/database';
import type { ServiceContext } from '../context';
import { found, sameRevision } from '../problems/found';
import { tellChange } from './tell-change';

/** Who does something now: whoever the settings say records here. */
export function doingNow(context: ServiceContext, why = ''): Doing {
  const { library } = context.session.current();
  return {
    by: readSettings(library).recordedBy,
    at: context.now().toISOString(),
    why,
    library: library.id,
  };
}

/** The record with that id. @throws Problem not-found */
export function record<R extends Kept & C, C extends object>(
  context: ServiceContext,
  repository: Repository<R, C>,
  id: string,
): R {
  return found(repository.read(context.session.current().library, id), repository.noun.name);
}

/**
 * Adds a record under a new id.
 * @param content what it holds; made inside the transaction, so that a number can be drawn in it
 */
export function addRecord<R extends Kept & C, C extends object>(
  context: ServiceContext,
  repository: Repository<R, C>,
  content: (tx: Writer) => Omit<R, keyof Kept>,
): R {
  const doing = doingNow(context);
  const id = context.newId();
  const added = context.session.current().library.transaction((tx) => {
    const made = {
      ...content(tx),
      id,
      revision: 1,
      createdAt: doing.at,
      updatedAt: doing.at,
    } as unknown as R;
    repository.insert(tx, made);
    beginHistory(tx, repository.noun.kind, id, doing);
    return made;
  });
  tellChange(context, repository.noun.kind, added);
  return added;
}

/**
 * Changes a record, whatever its noun: what it was stays in its history.
 * @param revision the state that the change started from
 * @param change what of it becomes different, from what it was
 * @throws Problem not-found, conflict when it was changed meanwhile, and whatever `change` refuses
 */
export function changeRecord<R extends Kept & C, C extends object>(
  context: ServiceContext,
  repository: Repository<R, C>,
  id: string,
  revision: number,
  change: (before: R) => Partial<Omit<R, keyof Kept>>,
): R {
  const { library } = context.session.current();
  const before = record(context, repository, id);
  sameRevision(revision, before.revision, repository.noun.name);
  const doing = doingNow(context);
  const after: R = { ...before, ...change(before), revision: before.revision + 1, updatedAt: doing.at };
  library.transaction((tx) => {
    keepBefore(tx, repository.noun, before, doing);
    repository.update(tx, before, after);
  });
  tellChange(context, repository.noun.kind, after);
  return after;
}

/** One change of several: of which record, and the state that it started from. */
export interface OneChange<R extends Kept> {
  id: string;
  revision: number;
  change: Partial<Omit<R, keyof Kept>>;
}

/**
 * Changes several records of a noun at once: all of them or, where one was changed meanwhile, none.
 * @param why kept in the history of each; such a change is a step of its own there
 * @throws Problem not-found, conflict
 */
export function changeTogether<R extends Kept & C, C extends object>(
  context: ServiceContext,
  repository: Repository<R, C>,
  changes: readonly OneChange<R>[],
  why: string,
): R[] {
  const { library } = context.session.current();
  const doing = doingNow(context, why);
  const pairs = changes.map(({ id, revision, change }) => {
    const before = record(context, repository, id);
    sameRevision(revision, before.revision, repository.noun.name);
    const after: R = { ...before, ...change, revision: before.revision + 1, updatedAt: doing.at };
    return { before, after };
  });
  library.transaction((tx) => {
    for (const { before, after } of pairs) {
      keepBefore(tx, repository.noun, before, doing);
      repository.update(tx, before, after);
    }
  });
  for (const { after } of pairs) tellChange(context, repository.noun.kind, after);
  return pairs.map(({ after }) => after);
}

/** Deletes a record; what it was stays in its history. @throws Problem not-found, and the database's where it is used */
export function removeRecord<R extends Kept & C, C extends object>(
  context: ServiceContext,
  repository: Repository<R, C>,
  id: string,
): void {
  const before = record(context, repository, id);
  const doing = doingNow(context);
  context.session.current().library.transaction((tx) => {
    keepDeleted(tx, repository.noun, before, doing);
    repository.remove(tx, id);
  });
  tellChange(context, repository.noun.kind, { id });
}

/** Brings a deleted record back under its own id, as it was; its history goes on. @throws Problem where it no longer fits */
export function bringBack<R extends Kept & C, C extends object>(
  context: ServiceContext,
  repository: Repository<R, C>,
  id: string,
  content: C,
): R {
  const doing = doingNow(context, 'restored');
  const back = { ...content, id, revision: 1, createdAt: doing.at, updatedAt: doing.at } as unknown as R;
  context.session.current().library.transaction((tx) => {
    repository.refuse?.(tx, content);
    repository.insert(tx, back);
    beginHistory(tx, repository.noun.kind, id, doing);
  });
  tellChange(context, repository.noun.kind, back);
  return back;
}
