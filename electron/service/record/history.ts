import { Problem } from '@core/problems/problem';
import { fieldDifferences } from '@core/record/differences';
import { deletedRecords, presentDoing, readEntry, readHistory } from '@db/record/history';
import type { Kept } from '@db/record/record-table';
import { SqlError } from '@db/library/sql/sql-error';
import { readSettings } from '@db/settings/settings';
import type { ServiceContext } from '../context';
import { found } from '../problems/found';
import { KINDS, repositoryOf } from './nouns';
import { bringBack } from './records';

/** A state that a record was or is in, and what whoever left it so had changed. */
export interface HistoryStep {
  /** Its number in the history; null for what the record is now. */
  n: number | null;
  at: string;
  by: string;
  why: string;
  /** The labels of the fields in which it differs from the state before; empty for the oldest that was kept. */
  changed: string[];
  /** Why it cannot be read; null when it can. */
  unreadable: string | null;
}

type Read = { content: object; unreadable: null } | { content: null; unreadable: string };

function tried(read: () => object): Read {
  try {
    return { content: read(), unreadable: null };
  } catch (error) {
    if (error instanceof Problem) return { content: null, unreadable: error.message };
    throw error;
  }
}

/** The states of a record, newest first, beginning with what it is now. @throws Problem not-found */
export function historyOf(context: ServiceContext, kind: string, id: string): HistoryStep[] {
  const { library } = context.session.current();
  const { noun, read } = repositoryOf(kind);
  const now = found(read(library, id), noun.name);
  const { languageRegion } = readSettings(library);
  const entries = readHistory(library, kind, id);
  const doing = presentDoing(library, kind, id);
  const states = [
    ...entries.map(({ n, at, by, why }) => ({
      n,
      at,
      by,
      why,
      ...tried(() => found(readEntry(library, noun, id, n), 'state')),
    })),
    {
      n: null,
      at: now.updatedAt,
      by: doing?.by ?? '',
      why: doing?.why ?? '',
      ...tried(() => noun.read(now)),
    },
  ];
  return states
    .map(({ content, ...step }, index) => {
      const before = states[index - 1]?.content;
      const changed = content && before ? fieldDifferences(noun.fields, before, content, languageRegion) : [];
      return { ...step, changed: changed.map(({ label }) => label) };
    })
    .reverse();
}

/** What a record was at an entry of its history. @throws Problem not-found, library-damaged */
export function stateAt(context: ServiceContext, kind: string, id: string, n: number): object {
  const { noun } = repositoryOf(kind);
  const { library } = context.session.current();
  return found(Number.isSafeInteger(n) ? readEntry(library, noun, id, n) : undefined, 'state');
}

/** A record that was deleted, as it was then. */
export interface Deleted {
  kind: string;
  id: string;
  title: string;
  at: string;
  by: string;
}

/** Every record that was deleted and not brought back, newest first. */
export function deletedOnes(context: ServiceContext): Deleted[] {
  const { library } = context.session.current();
  const all = KINDS.flatMap((kind) => {
    const { noun } = repositoryOf(kind);
    return deletedRecords(library, kind).map(({ record, n, at, by }): Deleted => {
      const { content } = tried(() => found(readEntry(library, noun, record, n), 'state'));
      return { kind, id: record, title: content ? noun.titleOf(content) : noun.name, at, by };
    });
  });
  return all.sort((a, b) => b.at.localeCompare(a.at));
}

/** Makes a deleted record what it was again. @throws Problem not-found, library-damaged */
export function restoreDeleted(context: ServiceContext, kind: string, id: string): Kept {
  const { library } = context.session.current();
  const repository = repositoryOf(kind);
  const last = found(
    deletedRecords(library, kind).find(({ record }) => record === id),
    'deleted record',
  );
  const content = found(readEntry(library, repository.noun, id, last.n), 'state');
  try {
    return bringBack(context, repository, id, content);
  } catch (error) {
    if (error instanceof SqlError && error.kind === 'foreign-key')
      throw new Problem({
        code: 'in-use',
        title: `This ${repository.noun.name} uses raw materials that were deleted too.`,
        advice: 'Restore those first, then this one. Nothing was changed.',
      });
    throw error;
  }
}
