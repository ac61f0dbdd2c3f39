import { WHOLE_PPM } from '../quantities/share';

/** A price per kg in minor units of a currency; null where it is not known. */
export interface PricePerKg {
  pricePerKg: number | null;
  currency: string | null;
}

/** What the priced part of a kg costs: in minor units of one currency, rounded, and how much of it that part is. */
export interface CostOfShares {
  costPerKg: number;
  currency: string;
  pricedPpm: number;
}

/**
 * What a kg costs that is made of some shares, each with its price. Nothing is guessed or converted: of several
 * currencies the one in which most is priced counts, and `pricedPpm` says how much that is. Null where nothing has a
 * price.
 */
export function costOfShares(
  shares: readonly { ppm: number; price: PricePerKg | undefined }[],
): CostOfShares | null {
  const sums = new Map<string, CostOfShares>();
  for (const { ppm, price } of shares) {
    if (ppm <= 0 || !price || price.pricePerKg === null || price.currency === null) continue;
    const { currency } = price;
    const sum = sums.get(currency) ?? { costPerKg: 0, currency, pricedPpm: 0 };
    sum.costPerKg += (ppm / WHOLE_PPM) * price.pricePerKg;
    sum.pricedPpm += ppm;
    sums.set(currency, sum);
  }
  const [most] = [...sums.values()].sort((a, b) => b.pricedPpm - a.pricedPpm);
  return most ? { ...most, costPerKg: Math.round(most.costPerKg) } : null;
}
