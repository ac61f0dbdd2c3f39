import { z } from 'zod';
import { DISPENSERS, PRODUCT_KINDS, REGIONS, SITES, USERS } from './product-kinds';

/** What a formula becomes: the kind of product, how it is dispensed, where on the body, for whom, and where it is sold. */
export const market = z.object({
  kind: z.enum(PRODUCT_KINDS).nullable(),
  dispenser: z.enum(DISPENSERS).nullable(),
  sites: z.array(z.enum(SITES)).max(SITES.length),
  users: z.array(z.enum(USERS)).max(USERS.length),
  regions: z.array(z.enum(REGIONS)).max(REGIONS.length),
});
export type Market = z.infer<typeof market>;

/** Nothing said yet. */
export function blankMarket(): Market {
  return { kind: null, dispenser: null, sites: [], users: [], regions: [] };
}
