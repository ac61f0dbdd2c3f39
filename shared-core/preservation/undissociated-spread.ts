import type { PublishedPka } from './organic-acids';
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
 * Undissociated share of an acid at a pH, by its first pKa, and the range over all its published ones.
 *
 * @throws Problem `invalid-input` for a pH or pKa out of bounds, or no pKa
 */
export function undissociatedSpread(pKas: readonly PublishedPka[], pH: number): UndissociatedSpread {
  const [first, ...others] = pKas.map(({ pKa }) => undissociatedPercent(pKa, pH));
  if (!first) throw badInput('The acid has no pKa.', 'Enter its pKa.', 'pKa');
  const values = [first, ...others].map((one) => one.value);
  const sources = [...first.sources, ...new Set(pKas.map((one) => one.source))];
  return { worked: { ...first, sources }, low: Math.min(...values), high: Math.max(...values) };
}
