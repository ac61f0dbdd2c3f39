import type { Market } from '../products/market';
import { KIND_FACTS, type Site } from '../products/product-kinds';
import { COUNT_LIMITS } from './counts';

/** What a finished product is held to. */
export interface MicrobialLimits {
  /** True for children under three, the eye area and mucous membranes. */
  strict: boolean;
  /** Why, in words. */
  because: string;
  /** Aerobic mesophilic micro-organisms (bacteria with yeast and mould), CFU in 1 g or 1 mL: the limit, and above which it is out. */
  total: number;
  outAbove: number;
}

const STRICT_SITES: readonly Site[] = ['near the eyes', 'lips', 'mouth', 'nappy area', 'intimate area'];

/** Why a product falls under the strict group; null where it does not. */
function strictBecause({ kind, sites, users }: Pick<Market, 'kind' | 'sites' | 'users'>): string | null {
  if (users.includes('children under 3 years')) return 'it is for children under three years';
  const site = STRICT_SITES.find((one) => sites.includes(one));
  if (site) return `it is used ${site.startsWith('near') ? site : `on: ${site}`}`;
  const traits: readonly string[] = kind ? KIND_FACTS[kind].traits : [];
  if (traits.includes('eye')) return 'it is for the eye area';
  if (traits.includes('lip') || traits.includes('oral')) return 'it meets a mucous membrane';
  return null;
}

/**
 * Microbiological limits of a finished product by what it is: 100 CFU in 1 g or 1 mL for children under three, the eye
 * area and mucous membranes, 1,000 for others; the result is out above twice the limit.
 */
export function microbialLimits(market: Pick<Market, 'kind' | 'sites' | 'users'>): MicrobialLimits {
  const because = strictBecause(market);
  const total = COUNT_LIMITS[because === null ? 'other' : 'under 3 years, eye area, mucous membranes'];
  return {
    strict: because !== null,
    because: because ?? 'it is none of those for children under three, the eye area or mucous membranes',
    total,
    outAbove: 2 * total,
  };
}
