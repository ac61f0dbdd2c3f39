import type { Material } from '@core/materials/material';
import { shelfEntry } from '@core/shelf/entry';
import type { ServiceContext } from '../context';

/**
 * The one place that hears of every change of a record, after it is safe on the disk: the lists' indexes and every window follow it.
 * @param now the record as it is now; only its id when it was deleted
 */
export function tellChange(
  context: ServiceContext,
  kind: string,
  now: { id: string; revision?: number },
): void {
  const { shelf } = context.session.current();
  if (kind === 'material') {
    if (now.revision === undefined) shelf.remove(now.id);
    else shelf.put(shelfEntry(now as Material));
  }
  context.session.changes.tell({ kind, id: now.id, revision: now.revision ?? null });
}
