import { FIGURE_KINDS, FIGURE_NAMES } from '../materials/figure';
import { MATERIAL_FIELDS } from '../materials/fields';
import { OFFER_ROW } from '../materials/row-fields';
import type { Field, Fields } from '../record/field';
import type { Target } from './target';

/** Not for tables: files, and what a material's own form asks for one by one. */
const LEFT_OUT = new Set(['photo', 'documents']);
const PART_LABELS: Record<string, string> = {
  'usage.minPpm': 'Usage, lowest',
  'usage.typicalPpm': 'Usage, typical',
  'usage.maxPpm': 'Usage, highest',
  'usage.provenance': 'How the usage is known',
  'legalLimit.note': 'Legal limit: applies to',
  'legalLimit.source': 'Legal limit: text and date',
};

function ofField(key: string, field: Field): Target[] {
  const { shape, label } = field;
  if (LEFT_OUT.has(key)) return [];
  switch (shape.kind) {
    case 'group':
      return Object.entries(shape.fields as Fields).flatMap(([part, one]) =>
        ofField(`${key}.${part}`, { ...one, label: PART_LABELS[`${key}.${part}`] ?? one.label }),
      );
    case 'figures':
      return FIGURE_NAMES.map((kind) => {
        const { label: name, unit, digits, min, max } = FIGURE_KINDS[kind];
        return { key: `figures.${kind}`, label: name, reading: { kind: 'figure', unit, digits, min, max } };
      });
    case 'rows':
      return ofRows(key, label);
    default:
      return [{ key, label, reading: shape }];
  }
}

function ofRows(key: string, label: string): Target[] {
  if (key === 'composition')
    return [
      { key: 'composition', label: 'INCI name', reading: { kind: 'names' } },
      { key: 'composition.share', label: 'Share of the INCI name', reading: { kind: 'part share' } },
    ];
  if (key === 'allergens') return [{ key, label, reading: { kind: 'names' } }];
  return [
    { key: 'offer.supplier', label: 'Supplier', reading: OFFER_ROW.supplier.shape },
    { key: 'offer.itemCode', label: 'Supplier’s item code', reading: OFFER_ROW.itemCode.shape },
    { key: 'offer.pack', label: 'Pack', reading: { kind: 'mass' } },
    { key: 'offer.price', label: 'Price of the pack', reading: { kind: 'money' } },
    { key: 'offer.pricePerKg', label: 'Price per kg', reading: { kind: 'money' } },
    { key: 'offer.currency', label: 'Currency', reading: { kind: 'currency' } },
    { key: 'offer.date', label: 'Date of the price', reading: { kind: 'date' } },
  ];
}

/** Two ends that makers write in one cell. */
const RANGES: Readonly<Record<string, Target>> = {
  usage: {
    key: 'usage.range',
    label: 'Usage, from–to',
    reading: { kind: 'figure', unit: '%', digits: 4, min: 0, max: 100 },
  },
  storage: {
    key: 'storage.range',
    label: 'Storage temperature, from–to',
    reading: { kind: 'figure', unit: '°C', digits: 1, min: -80, max: 200 },
  },
};

/** Everything of a raw material that a table can fill, in the order of its form. Derived from its fields. */
export const MATERIAL_TARGETS: readonly Target[] = Object.entries(MATERIAL_FIELDS as Fields).flatMap(
  ([key, field]) => [...(RANGES[key] ? [RANGES[key]] : []), ...ofField(key, field)],
);
