import { newestPrice, pricePerKgMinor } from '../../costing/offers';
import type { Material } from '../../materials/material';
import type { Currency } from '../../quantities/money';
import { percentFromPpm } from '../../quantities/share';
import { isEmulsifier } from '../conflicts/recognise';
import { bodyCharacter, hlbOf } from '../systems/character';
import type { Candidate } from './demand';

/** Taken as the highest use where the maker recorded none, in % of the formula. Common practice, no source. */
export const USUAL_HIGHEST_USE = 8;

/** The newest offer's price in minor units per kg; null without an offer in this currency. */
export function costPerKg(material: Material, currency: Currency): number | null {
  const newest = newestPrice(material.offers, currency);
  return newest && pricePerKgMinor(newest);
}

/** A library material as a candidate of the optimiser. */
export function candidateFrom(material: Material, currency: Currency): Candidate {
  const { minPpm, maxPpm } = material.usage ?? { minPpm: null, maxPpm: null };
  const minPercent = percentFromPpm(minPpm ?? 0);
  return {
    id: material.id,
    name: material.tradeName,
    inci: material.composition.map((part) => part.inci).join(', '),
    hlb: hlbOf(material),
    charge: material.charge,
    architecture: material.architecture,
    emulsionType: material.emulsionType,
    character: bodyCharacter(material),
    costPerKg: costPerKg(material, currency),
    minPercent,
    maxPercent: maxPpm === null ? Math.max(USUAL_HIGHEST_USE, minPercent) : percentFromPpm(maxPpm),
  };
}

/** The emulsifiers of a library as candidates: archived ones are left out. */
export function candidatesFrom(materials: readonly Material[], currency: Currency): Candidate[] {
  return materials
    .filter((material) => isEmulsifier(material) && material.status !== 'archived')
    .map((material) => candidateFrom(material, currency));
}
