import { nameKey } from '../substances/names';
import type { LimitContent } from './limit';

/** What tells one limit from another: all that it asks, but for remarks and whether it was checked. */
export function limitKey(limit: LimitContent): string {
  const { subject, of, source, rule, percent, minPercent, expressedAs, counting } = limit;
  const { use, kinds, exceptKinds, hands, purpose, nanoForm, regions, from, until } = limit;
  return JSON.stringify([
    ...[nameKey(subject), of, source, rule, percent, minPercent, nameKey(expressedAs), counting],
    ...[use, kinds, exceptKinds, hands, purpose, nanoForm, regions, from, until],
  ]);
}
