import type { Material } from '@core/materials/material';
import type { Reader } from '../database';
import { assembleMaterial, CHILD_ORDER, type ChildRow, type Children } from './read';
import type { MaterialRow } from './rows';

/** Materials as rows, plain: read in a few queries here, put together elsewhere, such as in a worker thread. */
export interface MaterialRows {
  materials: MaterialRow[];
  children: Children;
}

const NAMES = Object.keys(CHILD_ORDER) as (keyof Children)[];

/** The ids of every material that is not archived and has one of these functions, by trade name. */
export function idsWithFunction(db: Reader, functions: readonly string[]): string[] {
  const marks = functions.map(() => '?').join(', ');
  const rows = db.all<{ id: string }>(
    `SELECT DISTINCT m.id, m.trade_name FROM material m JOIN material_word w ON w.material_id = m.id
     WHERE w.list = 'function' AND w.word IN (${marks}) AND m.status <> 'archived' ORDER BY m.trade_name, m.id`,
    ...functions,
  );
  return rows.map((row) => row.id);
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

/** The rows of the materials with these ids, in no order; a few hundred at a time keep the process answering. */
export function readRows(db: Reader, ids: readonly string[]): MaterialRows {
  const marks = ids.map(() => '?').join(', ');
  const materials = db.all<MaterialRow>(`SELECT * FROM material WHERE id IN (${marks})`, ...ids);
  const children = Object.fromEntries(
    NAMES.map((child) => [
      child,
      db.all<ChildRow>(
        `SELECT * FROM material_${child} WHERE material_id IN (${marks}) ORDER BY material_id, ${CHILD_ORDER[child]}`,
        ...ids,
      ),
    ]),
  ) as Children;
  return { materials, children };
}

function byMaterial(rows: readonly ChildRow[]): Map<unknown, ChildRow[]> {
  const found = new Map<unknown, ChildRow[]>();
  for (const row of rows) {
    const list = found.get(row.material_id);
    if (list) list.push(row);
    else found.set(row.material_id, [row]);
  }
  return found;
}

/** Puts materials together from their rows. */
export function assembleMaterials({ materials, children }: MaterialRows): Material[] {
  const sorted = NAMES.map((child) => [child, byMaterial(children[child])] as const);
  return materials.map((row) => {
    const own = sorted.map(([child, rows]) => [child, rows.get(row.id) ?? []]);
    return assembleMaterial(row, Object.fromEntries(own) as Children);
  });
}
