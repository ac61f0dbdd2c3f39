import { pricePerKgMinor } from '../costing/formula-cost';
import { figureValue } from '../materials/figure';
import { partPpm, type Material, type Offer } from '../materials/material';
import type { ShelfEntry } from './query';

/** The newest offer; of two on one day, the one that stands first. */
export function newestOffer(offers: readonly Offer[]): Offer | null {
  return offers.reduce<Offer | null>(
    (newest, offer) => (newest === null || offer.date > newest.date ? offer : newest),
    null,
  );
}

/** A material as it stands in the list. */
export function shelfEntry(material: Material): ShelfEntry {
  const offer = newestOffer(material.offers);
  const parts = [...material.composition].sort((a, b) => partPpm(b) - partPpm(a));
  return {
    id: material.id,
    code: material.code,
    tradeName: material.tradeName,
    inci: parts.map((part) => part.inci).join(', '),
    supplier: offer?.supplier ?? '',
    suppliers: [...new Set(material.offers.map((each) => each.supplier))],
    charge: material.charge,
    architecture: material.architecture,
    emulsionType: material.emulsionType,
    functions: material.functions,
    phaseOfUse: material.phaseOfUse,
    form: material.form,
    consistency: material.consistency,
    origin: material.origin,
    keepFrom: material.storage.keepFrom,
    status: material.status,
    hlb: figureValue(material.figures.hlb),
    requiredHlbOw: figureValue(material.figures.requiredHlbOw),
    meltingPoint: figureValue(material.figures.meltingPoint),
    pricePerKg: offer ? Math.round(pricePerKgMinor(offer)) : null,
    currency: offer?.currency ?? null,
    notes: material.notes,
    updatedAt: material.updatedAt,
  };
}
