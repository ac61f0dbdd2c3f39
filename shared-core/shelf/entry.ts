import { newestOffer, newestPrice, pricePerKgMinor } from '../costing/offers';
import { figureValue } from '../materials/figure';
import { partPpm } from '../materials/composition';
import type { Material } from '../materials/material';
import type { ShelfEntry } from './query';

/** A material as it stands in the list. */
export function shelfEntry(material: Material): ShelfEntry {
  const price = newestPrice(material.offers);
  const parts = [...material.composition].sort((a, b) => partPpm(b) - partPpm(a));
  return {
    id: material.id,
    code: material.code,
    tradeName: material.tradeName,
    inci: parts.map((part) => part.inci).join(', '),
    supplier: newestOffer(material.offers)?.supplier ?? '',
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
    pricePerKg: price && Math.round(pricePerKgMinor(price)),
    currency: price?.currency ?? null,
    notes: material.notes,
    updatedAt: material.updatedAt,
  };
}
