import { newestPrice, pricePerKgMinor, type PriceRecord } from '../../costing/offers';
import type { Material } from '../../materials/material';
import type { Currency } from '../../quantities/money';
import { hlbOf, hlbSpread, pairingFacts, type EmulsifierRecord } from '../systems/character';
import { usageRange } from '../usage-range';
import type { Candidate } from './demand';

/** What a candidate is projected from: a material, or those columns of it that a database gives of a whole shelf. */
export type CandidateRecord = EmulsifierRecord & {
  usage: Pick<NonNullable<Material['usage']>, 'minPpm' | 'maxPpm'> | null;
  offers: readonly PriceRecord[];
};

/** A candidate with what candidates are filtered by. */
export interface ShelfCandidate extends Candidate {
  form: Material['form'];
  origin: Material['origin'];
}

/** The newest offer's price in minor units per kg; null without an offer in this currency. */
export function costPerKg(offers: readonly PriceRecord[], currency: Currency): number | null {
  const newest = newestPrice(offers, currency);
  return newest && pricePerKgMinor(newest);
}

/** A library material as a candidate of the optimiser: the one projection, whatever it was read by. */
export function candidateFrom(record: CandidateRecord, currency: Currency): ShelfCandidate {
  const spread = hlbSpread(record);
  return {
    id: record.id,
    name: record.tradeName,
    ...pairingFacts(record),
    hlb: hlbOf(record),
    hlbLow: spread?.low ?? null,
    hlbHigh: spread?.high ?? null,
    costPerKg: costPerKg(record.offers, currency),
    ...usageRange(record),
    form: record.form,
    origin: record.origin,
  };
}
