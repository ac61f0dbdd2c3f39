import type { OrganicAcid } from './organic-acids';
import { undissociatedPercent } from './undissociated';
import { badInput } from '../working/inputs';
import type { Worked } from '../working/working';

/** The undissociated share with the spread that the published pKas leave. */
export interface UndissociatedSpread {
  worked: Worked;
  low: number;
  high: number;
}

/**
 * Undissociated share of a tabled acid at a pH, by its first pKa, and the range over all its published ones.
 *
 * @throws Problem `invalid-input` for a pH out of bounds
 */
export function undissociatedSpread(acid: OrganicAcid, pH: number): UndissociatedSpread {
  const all = acid.pKas.map(({ pKa, source }) => {
    const worked = undissociatedPercent(pKa, pH);
    return { ...worked, sources: [...worked.sources, source] };
  });
  const [first] = all;
  if (!first) throw badInput(`${acid.inci} has no published pKa.`, 'Enter its pKa yourself.', 'pKa');
  const values = all.map((one) => one.value);
  return { worked: first, low: Math.min(...values), high: Math.max(...values) };
}
