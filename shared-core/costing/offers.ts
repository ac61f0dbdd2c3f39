import type { Offer } from '../materials/offer';
import { MG_PER_KG } from '../quantities/mass';
import type { Currency } from '../quantities/money';

/** What an offer's price is read from. */
export type PriceRecord = Pick<Offer, 'packMg' | 'priceMinor' | 'currency' | 'date'>;

type Priced<One extends PriceRecord> = One & { packMg: number; priceMinor: number };

/** An offer that says what a pack costs; a supplier may be on record before that is known. */
export type PricedOffer = Priced<Offer>;

/** Whether an offer says what its pack costs. */
export function isPriced<One extends PriceRecord>(offer: One): offer is Priced<One> {
  return offer.packMg !== null && offer.priceMinor !== null;
}

/** The newest of some offers; of two of one date, the one listed later. Null when there is none. */
export function newestOffer<One extends Pick<Offer, 'date'>>(offers: readonly One[]): One | null {
  return offers.reduce<One | null>(
    (best, offer) => (best === null || offer.date >= best.date ? offer : best),
    null,
  );
}

/** The newest offer with a price, in one currency if that is given. Null when there is none. */
export function newestPrice<One extends PriceRecord>(
  offers: readonly One[],
  currency?: Currency,
): Priced<One> | null {
  const ofCurrency = offers.filter((offer) => currency === undefined || offer.currency === currency);
  return newestOffer(ofCurrency.filter(isPriced<One>));
}

/** An offer's price in minor units per kg, unrounded. */
export function pricePerKgMinor(offer: Pick<PricedOffer, 'priceMinor' | 'packMg'>): number {
  return (offer.priceMinor / offer.packMg) * MG_PER_KG;
}
