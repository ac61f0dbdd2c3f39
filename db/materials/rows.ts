import type { Figure, FigureKind } from '@core/materials/figure';
import type { Material } from '@core/materials/material';
import type { SqlValue } from '../database';

/** A row of the table `material`, as SQLite gives it. */
export type MaterialRow = Record<string, SqlValue>;

/** The scalar columns of `material` in table order, each with how a material fills it. */
const COLUMNS: [name: string, fill: (m: Material) => SqlValue][] = [
  ['id', (m) => m.id],
  ['revision', (m) => m.revision],
  ['created_at', (m) => m.createdAt],
  ['updated_at', (m) => m.updatedAt],
  ['code', (m) => m.code],
  ['trade_name', (m) => m.tradeName],
  ['status', (m) => m.status],
  ['phase_of_use', (m) => m.phaseOfUse],
  ['usage_min_ppm', (m) => m.usage?.minPpm ?? null],
  ['usage_typical_ppm', (m) => m.usage?.typicalPpm ?? null],
  ['usage_max_ppm', (m) => m.usage?.maxPpm ?? null],
  ['usage_provenance', (m) => m.usage?.provenance ?? null],
  ['usage_source', (m) => m.usage?.source ?? null],
  ['form', (m) => m.form],
  ['consistency', (m) => m.consistency],
  ['appearance', (m) => m.appearance],
  ['charge', (m) => m.charge],
  ['architecture', (m) => m.architecture],
  ['emulsion_type', (m) => m.emulsionType],
  ['body', (m) => m.body],
  ['electrolyte_tolerance', (m) => m.electrolyteTolerance],
  ['needs_neutralising', (m) => Number(m.needsNeutralising)],
  ['cold_processable', (m) => (m.coldProcessable === null ? null : Number(m.coldProcessable))],
  ['origin', (m) => m.origin],
  ['certified_organic', (m) => Number(m.certifiedOrganic)],
  ['storage_min_c', (m) => m.storage.minC],
  ['storage_max_c', (m) => m.storage.maxC],
  ['shelf_life_months', (m) => m.storage.shelfLifeMonths],
  ['after_opening_months', (m) => m.storage.afterOpeningMonths],
  ['handling', (m) => m.handling],
  ['limit_ppm', (m) => m.legalLimit?.ppm ?? null],
  ['limit_note', (m) => m.legalLimit?.note ?? null],
  ['limit_source', (m) => m.legalLimit?.source ?? null],
  ['photo', (m) => m.photo],
  ['notes', (m) => m.notes],
];

export const MATERIAL_COLUMNS = COLUMNS.map(([name]) => name);

/** The scalar values of a material in the order of `MATERIAL_COLUMNS`. */
export function materialValues(m: Material): SqlValue[] {
  return COLUMNS.map(([, fill]) => fill(m));
}

/** The child tables of a material: for each, its columns after `material_id` and the rows a material has there. */
export const CHILD_TABLES: { table: string; columns: string[]; rows: (m: Material) => SqlValue[][] }[] = [
  {
    table: 'material_inci',
    columns: ['position', 'inci', 'low_ppm', 'high_ppm'],
    rows: (m) => m.composition.map((part, at) => [at, part.inci, part.lowPpm, part.highPpm]),
  },
  {
    table: 'material_word',
    columns: ['list', 'position', 'word'],
    rows: (m) => [
      ...m.functions.map((word, at) => ['function', at, word]),
      ...m.solubleIn.map((word, at) => ['soluble in', at, word]),
      ...m.storage.keepFrom.map((word, at) => ['keep from', at, word]),
      ...m.hazards.map((word, at) => ['hazard', at, word]),
    ],
  },
  {
    table: 'material_figure',
    columns: ['kind', 'low', 'value', 'high', 'provenance', 'source'],
    rows: (m) =>
      (Object.entries(m.figures) as [FigureKind, Figure | undefined][])
        .filter((entry): entry is [FigureKind, Figure] => entry[1] !== undefined)
        .map(([kind, f]) => [kind, f.low, f.value, f.high, f.provenance, f.source]),
  },
  {
    table: 'material_allergen',
    columns: ['position', 'inci', 'ppm'],
    rows: (m) => m.allergens.map((allergen, at) => [at, allergen.inci, allergen.ppm]),
  },
  {
    table: 'material_offer',
    columns: ['position', 'supplier', 'item_code', 'pack_mg', 'price_minor', 'currency', 'date'],
    rows: (m) =>
      m.offers.map((o, at) => [at, o.supplier, o.itemCode, o.packMg, o.priceMinor, o.currency, o.date]),
  },
  {
    table: 'material_document',
    columns: ['position', 'kind', 'title', 'sha256', 'media_type', 'bytes'],
    rows: (m) => m.documents.map((d, at) => [at, d.kind, d.title, d.sha256, d.mediaType, d.bytes]),
  },
];
