import type { Use } from '../formulas/formula';
import type { Market } from '../products/market';
import { KIND_FACTS, SITE_TRAIT, type LimitKind, type MarketRegion } from '../products/product-kinds';
import type { Limit } from './limit';

/** What a product is, as a limit asks. */
export interface Situation {
  region: MarketRegion;
  use: Use;
  market: Market;
  /** The pH it is made to, as far as it is said. */
  ph: { low: number; high: number } | null;
  /** The day that is asked about, ISO 8601. */
  onDay: string;
}

/** The regions that a formula is held against: those it names, else the European Union. */
export function regionsOf(market: Market): MarketRegion[] {
  return market.regions.length > 0 ? market.regions : ['EU'];
}

/** The words of limits that a product answers to: its kind, the parts of the body it is for, and how it is dispensed. */
export function limitKindsOf({ kind, dispenser, sites }: Market): ReadonlySet<LimitKind> {
  const words = new Set<LimitKind>();
  if (kind) for (const word of [kind, ...KIND_FACTS[kind].traits]) words.add(word);
  for (const site of sites) {
    const trait = SITE_TRAIT[site];
    if (trait) words.add(trait);
  }
  if (dispenser) words.add(dispenser);
  return words;
}

/** `open` where it hangs on what the formula does not say: the kind of product. */
export type Applies = 'yes' | 'open' | 'no';
export type Time = 'in force' | 'coming' | 'past';

/** Whether a limit holds on a day, for products new on the market. */
export function timeOf({ from, until }: Pick<Limit, 'from' | 'until'>, onDay: string): Time {
  if (until !== '' && until < onDay) return 'past';
  return from !== '' && from > onDay ? 'coming' : 'in force';
}

/** Whether a limit is written for such a product. */
export function appliesTo(
  limit: Limit,
  { region, use, market }: Situation,
  words: ReadonlySet<LimitKind> = limitKindsOf(market),
): Applies {
  if (!limit.regions.includes(region)) return 'no';
  if (limit.use !== null && limit.use !== use) return 'no';
  const professional = market.users.includes('professional use');
  if (limit.hands !== null && (limit.hands === 'professional use') !== professional) return 'no';
  if (limit.exceptKinds.some((word) => words.has(word))) return 'no';
  const named = limit.kinds.length === 0 || limit.kinds.some((word) => words.has(word));
  if (market.kind === null) {
    if (!named) return 'open';
    return limit.rule === 'prohibited' && limit.exceptKinds.length > 0 ? 'open' : 'yes';
  }
  return named ? 'yes' : 'no';
}
