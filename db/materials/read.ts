import { material, type Material } from '@core/materials/material';
import type { Reader, SqlValue } from '../database';
import type { MaterialRow } from './rows';

export type ChildRow = Record<string, SqlValue>;
export type Children = Record<'inci' | 'word' | 'figure' | 'allergen' | 'offer' | 'document', ChildRow[]>;

export const CHILD_ORDER: Record<keyof Children, string> = {
  inci: 'position',
  word: 'list, position',
  figure: 'kind',
  allergen: 'position',
  offer: 'position',
  document: 'position',
};

function words(children: Children, list: string): SqlValue[] {
  return children.word.filter((row) => row.list === list).map((row) => row.word ?? null);
}

/** Puts a material together from its row and its children's rows. */
export function assembleMaterial(row: MaterialRow, children: Children): Material {
  // The schema is parsed here too: another tool may have written to the file.
  return material.parse({
    id: row.id,
    revision: row.revision,
    createdAt: row.created_at,
    updatedAt: row.updated_at,
    code: row.code,
    tradeName: row.trade_name,
    status: row.status,
    composition: children.inci.map((part) => ({
      inci: part.inci,
      lowPpm: part.low_ppm,
      highPpm: part.high_ppm,
    })),
    functions: words(children, 'function'),
    phaseOfUse: row.phase_of_use,
    usage:
      row.usage_provenance === null
        ? null
        : {
            minPpm: row.usage_min_ppm,
            typicalPpm: row.usage_typical_ppm,
            maxPpm: row.usage_max_ppm,
            provenance: row.usage_provenance,
            source: row.usage_source ?? '',
          },
    form: row.form,
    consistency: row.consistency,
    appearance: row.appearance,
    charge: row.charge,
    architecture: row.architecture,
    emulsionType: row.emulsion_type,
    body: row.body,
    electrolyteTolerance: row.electrolyte_tolerance,
    needsNeutralising: row.needs_neutralising === 1,
    coldProcessable: row.cold_processable === null ? null : row.cold_processable === 1,
    solubleIn: words(children, 'soluble in'),
    origin: row.origin,
    certifiedOrganic: row.certified_organic === 1,
    figures: Object.fromEntries(
      children.figure.map(({ kind, low, value, high, provenance, source }) => [
        kind,
        { low, value, high, provenance, source },
      ]),
    ),
    storage: {
      minC: row.storage_min_c,
      maxC: row.storage_max_c,
      keepFrom: words(children, 'keep from'),
      shelfLifeMonths: row.shelf_life_months,
      afterOpeningMonths: row.after_opening_months,
    },
    hazards: words(children, 'hazard'),
    handling: row.handling,
    legalLimit:
      row.limit_ppm === null
        ? null
        : { ppm: row.limit_ppm, note: row.limit_note ?? '', source: row.limit_source },
    allergens: children.allergen.map(({ inci, ppm }) => ({ inci, ppm })),
    offers: children.offer.map((o) => ({
      supplier: o.supplier,
      itemCode: o.item_code,
      packMg: o.pack_mg,
      priceMinor: o.price_minor,
      currency: o.currency,
      date: o.date,
    })),
    documents: children.document.map((d) => ({
      kind: d.kind,
      title: d.title,
      sha256: d.sha256,
      mediaType: d.media_type,
      bytes: d.bytes,
    })),
    photo: row.photo,
    notes: row.notes,
  });
}

/** One material, or undefined when there is none with that id. */
export function readMaterial(db: Reader, id: string): Material | undefined {
  const row = db.get<MaterialRow>('SELECT * FROM material WHERE id = ?', id);
  if (!row) return undefined;
  const children = Object.fromEntries(
    Object.entries(CHILD_ORDER).map(([child, order]) => [
      child,
      db.all<ChildRow>(`SELECT * FROM material_${child} WHERE material_id = ? ORDER BY ${order}`, id),
    ]),
  ) as Children;
  return assembleMaterial(row, children);
}

/** Which state of a material is stored, and since when it exists; undefined when there is none with that id. */
export function readMaterialState(
  db: Reader,
  id: string,
): { revision: number; createdAt: string } | undefined {
  return db.get('SELECT revision, created_at AS createdAt FROM material WHERE id = ?', id);
}

/** The materials with these ids that exist, by id. */
export function readMaterials(db: Reader, ids: Iterable<string>): Map<string, Material> {
  const found = new Map<string, Material>();
  for (const id of new Set(ids)) {
    const known = readMaterial(db, id);
    if (known) found.set(id, known);
  }
  return found;
}

/** Every material in the library that is not archived and has one of these functions. */
export function readMaterialsWithFunction(db: Reader, functions: readonly string[]): Material[] {
  const marks = functions.map(() => '?').join(', ');
  const rows = db.all<{ id: string }>(
    `SELECT DISTINCT m.id FROM material m JOIN material_word w ON w.material_id = m.id
     WHERE w.list = 'function' AND w.word IN (${marks}) AND m.status <> 'archived' ORDER BY m.trade_name, m.id`,
    ...functions,
  );
  return [
    ...readMaterials(
      db,
      rows.map((row) => row.id),
    ).values(),
  ];
}
