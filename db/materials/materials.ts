import { MATERIAL_FIELDS } from '@core/materials/fields';
import type { Withdrawn } from '@core/materials/withdrawal';
import { material, type Material, type MaterialContent } from '@core/materials/material';
import { MATERIAL } from '@core/materials/noun';
import type { Reader } from '../database';
import type { Repository } from '../record/repository';
import { RecordTable } from '../record/record-table';
import { among } from '../some-ids';
import { refuseCircularMaterial, wholeMaterials } from './nested';

/** The raw materials of the library. */
export const materials = new RecordTable<Material>('material', MATERIAL_FIELDS, (read) =>
  material.parse(read),
);

export const materialRecords: Repository<Material, MaterialContent> = {
  noun: MATERIAL,
  read: (db, id) => materials.read(db, id),
  refuse: (db, content) => refuseCircularMaterial(db, materials, content),
  insert: (tx, added) => materials.insert(tx, added),
  insertMany: (tx, added) => materials.insertMany(tx, added),
  update: (tx, before, after) => materials.update(tx, before, after),
  remove: (tx, id) => materials.remove(tx, id),
};

/** One material as it is written, or undefined when there is none with that id. */
export function readMaterial(db: Reader, id: string): Material | undefined {
  return materials.read(db, id);
}

/** The materials with these ids that exist, by id, each with what the materials within it hold: what computing asks for. */
export function readMaterials(db: Reader, ids: Iterable<string>): Map<string, Material> {
  return wholeMaterials(db, materials, materials.readMany(db, ids));
}

/**
 * Refuses a composition by which a material would come to hold itself.
 * @throws Problem invalid-input
 */
export function refuseCircularComposition(db: Reader, content: MaterialContent): void {
  refuseCircularMaterial(db, materials, content);
}

/** The ids of every material that is not archived and has one of these functions, by trade name. */
export function idsWithFunction(db: Reader, functions: readonly string[]): string[] {
  const marks = functions.map(() => '?').join(', ');
  const rows = db.all<{ id: string }>(
    `SELECT DISTINCT m.id, m.trade_name FROM material m JOIN material_word w ON w.material_id = m.id
     WHERE w.list = 'function' AND w.word IN (${marks}) AND m.status <> 'archived' AND m.withdrawn_on = '' ORDER BY m.trade_name, m.id`,
    ...functions,
  );
  return rows.map((row) => row.id);
}

/** Those of some materials that are withdrawn, or will be, by trade name. */
export function withdrawnAmong(db: Reader, ids: readonly string[]): Withdrawn[] {
  const { where, values } = among('id', ids);
  return db.all<Withdrawn>(
    `SELECT id, trade_name AS tradeName, withdrawn_on AS withdrawnOn, withdrawn_why AS withdrawnWhy
     FROM material ${where} AND withdrawn_on <> '' ORDER BY trade_name COLLATE NOCASE, id`,
    ...values,
  );
}

/** The ids of every material that is not archived and has an INCI name with this ending, case ignored. */
export function idsWithInciEnding(db: Reader, ending: string): string[] {
  const rows = db.all<{ id: string }>(
    `SELECT DISTINCT m.id FROM material m JOIN material_inci i ON i.material_id = m.id
     WHERE i.inci LIKE '%' || ? AND m.status <> 'archived' ORDER BY m.id`,
    ending,
  );
  return rows.map((row) => row.id);
}
