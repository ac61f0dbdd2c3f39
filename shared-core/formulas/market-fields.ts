import { DISPENSERS, PRODUCT_KINDS, REGIONS, SITES, USERS } from '../products/product-kinds';
import { wordOrNone, words } from '../record/field';

/** What the formula becomes, beyond how it is made: limits, label and exposure ask for it. */
export const MARKET_FIELDS = {
  kind: wordOrNone(PRODUCT_KINDS, 'not said', { label: 'Kind of product', section: 'market' }),
  dispenser: wordOrNone(DISPENSERS, 'none of these', { label: 'Dispensed as', section: 'market' }),
  sites: words(SITES, { label: 'Where on the body', section: 'market' }),
  users: words(USERS, { label: 'For whom', section: 'market' }),
  regions: words(REGIONS, { label: 'Sold in', section: 'market' }),
};
