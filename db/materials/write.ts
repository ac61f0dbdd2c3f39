import type { Material } from '@core/materials/material';
import type { SqlValue, Writer } from '../database';
import { CHILD_TABLES, MATERIAL_COLUMNS, materialValues } from './rows';

const INSERT = `INSERT INTO material (${MATERIAL_COLUMNS.join(', ')}) VALUES (${MATERIAL_COLUMNS.map(() => '?').join(', ')})`;
const UPDATE = `UPDATE material SET ${MATERIAL_COLUMNS.slice(1)
  .map((name) => `${name} = ?`)
  .join(', ')} WHERE id = ?`;

function insertChildren(tx: Writer, id: string, table: string, columns: string[], rows: SqlValue[][]): void {
  const marks = ['material_id', ...columns].map(() => '?').join(', ');
  for (const row of rows)
    tx.run(`INSERT INTO ${table} (material_id, ${columns.join(', ')}) VALUES (${marks})`, id, ...row);
}

/** Adds a new material with all that belongs to it. */
export function insertMaterial(tx: Writer, added: Material): void {
  tx.run(INSERT, ...materialValues(added));
  for (const { table, columns, rows } of CHILD_TABLES)
    insertChildren(tx, added.id, table, columns, rows(added));
}

/** A list's rows as one text, whatever their order: each row holds its own position. */
function fingerprint(rows: SqlValue[][]): string {
  return rows
    .map((row) => JSON.stringify(row))
    .sort()
    .join();
}

/** Rewrites a material; a child list that did not change is left alone, which keeps log records small. */
export function updateMaterial(tx: Writer, after: Material): void {
  const [id, ...rest] = materialValues(after);
  tx.run(UPDATE, ...rest, id ?? null);
  for (const { table, columns, rows } of CHILD_TABLES) {
    const stored = tx
      .all<Record<string, SqlValue>>(
        `SELECT ${columns.join(', ')} FROM ${table} WHERE material_id = ?`,
        after.id,
      )
      .map((row) => Object.values(row));
    const now = rows(after);
    if (fingerprint(stored) === fingerprint(now)) continue;
    tx.run(`DELETE FROM ${table} WHERE material_id = ?`, after.id);
    insertChildren(tx, after.id, table, columns, now);
  }
}

/** Deletes a material that nothing uses; the database refuses otherwise. */
export function deleteMaterial(tx: Writer, id: string): void {
  tx.run('DELETE FROM material WHERE id = ?', id);
}
