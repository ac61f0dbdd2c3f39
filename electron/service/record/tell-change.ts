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

/**
 * The one place that hears of every change of a record, after it is safe on the disk: the lists and every window follow.
 * @param now the record as it is now; only its id when it was deleted
 */
export function tellChange(
  context: ServiceContext,
  kind: string,
  now: { id: string; revision?: number },
): void {
  const noun = LISTED[kind];
  if (noun) context.session.current().lists.changed(noun, now.id);
  context.session.changes.tell({ kind, id: now.id, revision: now.revision ?? null });
}
