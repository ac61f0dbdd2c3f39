import { limitFrom } from '@core/imports/limit-targets';
import type { OutcomeKind, Planned } from '@core/imports/plan-row';
import type { TableRow } from '@core/imports/row';
import type { Limit, LimitContent } from '@core/limits/limit';
import type { Reader } from '@db/database';
import { limitRecords, readLimits } from '@db/limits/limits';
import { limitKey } from '@core/limits/limit-key';
import type { Taker } from '../table-import';

/** Takes limits in. A limit is known by all that it asks: one that asks something else is another one. */
export function limitsTaker(db: Reader): Taker<Limit, LimitContent> {
  const held = new Set(readLimits(db).map(limitKey));
  const lines = new Map<string, number>();
  const planOne = ({ line, values, faults }: TableRow): Planned<Limit, LimitContent> => {
    const { content, subject, faults: broken } = limitFrom(values);
    // A cell that cannot be read is told once, not again by the rule that misses it.
    const found = faults.length > 0 ? [...faults] : broken;
    const key = content ? limitKey(content) : '';
    const first = lines.get(key);
    if (found.length === 0 && first !== undefined)
      found.push({ heading: '', message: `The same limit is already in line ${first}.` });
    if (content && first === undefined) lines.set(key, line);
    const kind: OutcomeKind = found.length > 0 ? 'refused' : held.has(key) ? 'same' : 'new';
    return {
      outcome: { line, kind, name: subject, faults: found, notes: [], differences: [] },
      before: null,
      content: kind === 'new' ? content : null,
    };
  };
  return {
    repository: limitRecords,
    plan: (_db, rows) => rows.map(planOne),
    cameSince(reader, planned) {
      const now = new Set(readLimits(reader).map(limitKey));
      return planned.find(({ content }) => content && now.has(limitKey(content)))?.outcome.name ?? null;
    },
  };
}
