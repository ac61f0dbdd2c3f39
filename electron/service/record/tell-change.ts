import type { ServiceContext } from '../context';
import type { Noun } from '../lists/nouns';

/** The list that shows the records of a kind. */
const LISTED: Readonly<Record<string, Noun>> = {
  material: 'materials',
  formula: 'formulas',
  batch: 'batches',
  'trial series': 'trials',
  substance: 'substances',
  limit: 'limits',
};

/** Has the list of a kind read a record anew before its next answer. */
export function markChanged(context: ServiceContext, kind: string, id: string): void {
  const noun = LISTED[kind];
  if (noun) context.session.current().lists.changed(noun, id);
}

/**
 * The one place that hears of every change of a record, after it is safe on the disk: the lists and every window follow.
 * @param now the record as it is now; only its id when it was deleted
 */
export function tellChange(
  context: ServiceContext,
  kind: string,
  now: { id: string; revision?: number },
): void {
  markChanged(context, kind, now.id);
  context.session.changes.tell({ kind, id: now.id, revision: now.revision ?? null });
}
