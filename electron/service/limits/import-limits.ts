import type { Limit, LimitContent } from '@core/limits/limit';
import { LIMIT } from '@core/limits/noun';
import { limitRecords, readLimits } from '@db/limits/limits';
import { beginHistory } from '@db/record/history';
import type { ServiceContext } from '../context';
import { doingNow } from '../record/records';
import { tellChange } from '../record/tell-change';
import { limitKey } from '@core/limits/limit-key';

/** Takes limits in as one change: all of them, but for those that the library holds already. */
export function importLimits(
  context: ServiceContext,
  limits: readonly LimitContent[],
): { added: number; known: number } {
  const { library, lists } = context.session.current();
  const doing = doingNow(context, 'imported from a file');
  const known = new Set(readLimits(library).map(limitKey));
  const added: Limit[] = [];
  for (const content of limits) {
    const key = limitKey(content);
    if (known.has(key)) continue;
    known.add(key);
    added.push({ ...content, id: context.newId(), revision: 1, createdAt: doing.at, updatedAt: doing.at });
  }
  library.transaction((tx) => {
    for (const one of added) {
      limitRecords.insert(tx, one);
      beginHistory(tx, LIMIT.kind, one.id, doing);
    }
  });
  for (const { id } of added) lists.changed('limits', id);
  // Told once: every screen that shows a limit asks for all of them anew.
  for (const one of added.slice(0, 1)) tellChange(context, LIMIT.kind, one);
  return { added: added.length, known: limits.length - added.length };
}
