import { newestOffer, newestPrice } from '../costing/offers';
import type { Region } from '../locale/numbers';
import { FIGURE_KINDS, FIGURES_COMPARED } from '../materials/figure';
import type { Material } from '../materials/material';
import { bestUse } from '../materials/best-use';
import { MATERIAL_FIELDS } from '../materials/fields';
import { figureWords, inciWords, perKgWords } from '../materials/words';
import type { Fields } from '../record/field';
import { fieldWords } from '../record/words';

/** One property of several materials, side by side. */
export interface ComparisonRow {
  label: string;
  /** One for each material; empty where it is not recorded. */
  values: string[];
  /** Told apart by what is recorded; `open` when nothing differs but not all is recorded. */
  outcome: 'differ' | 'alike' | 'open';
}

interface Property {
  label: string;
  read(material: Material, region: Region): string;
}

/** What leads a comparison and no field says by itself. */
const FIRST: Property[] = [
  { label: 'INCI', read: (one) => inciWords(one, 8) },
  // Usage has a row of its own.
  { label: 'Best use', read: (one, region) => bestUse({ ...one, usage: null }, region) },
];

const FIELDS: Property[] = Object.entries(MATERIAL_FIELDS as Fields)
  .filter(([, field]) => field.places.compare === 'derived')
  .map(([key, field]) => ({
    label: field.label,
    read: (one, region) => fieldWords(field, (one as Record<string, unknown>)[key], region),
  }));

const FIGURES: Property[] = FIGURES_COMPARED.map((kind) => ({
  label: FIGURE_KINDS[kind].label,
  read: (one, region) => figureWords(kind, one.figures[kind], region),
}));

const PROPERTIES: Property[] = [...FIRST, ...FIELDS, ...FIGURES];

function outcomeOf(values: readonly string[]): ComparisonRow['outcome'] {
  const recorded = values.filter((value) => value !== '');
  if (new Set(recorded).size > 1) return 'differ';
  return recorded.length === values.length ? 'alike' : 'open';
}

/** Who sells it and for how much: shown on screen, and left off a sheet that is handed out. */
export const SUPPLY: readonly Property[] = [
  { label: 'Supplier', read: ({ offers }) => newestOffer(offers)?.supplier ?? '' },
  {
    label: 'Latest price per kg',
    read({ offers }, region) {
      const offer = newestPrice(offers);
      return offer ? perKgWords(offer, region) : '';
    },
  },
];

/** The properties of materials side by side, without those recorded of none. */
export function comparisonRows(
  materials: readonly Material[],
  region: Region,
  more: readonly Property[] = [],
): ComparisonRow[] {
  return [...PROPERTIES, ...more]
    .map(({ label, read }) => {
      const values = materials.map((one) => read(one, region));
      return { label, values, outcome: outcomeOf(values) };
    })
    .filter((row) => row.values.some((value) => value !== ''));
}
