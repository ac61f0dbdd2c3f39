import { batch, type Batch } from '@core/batches/batch';
import type { BatchEntry } from '@core/batches/list';
import type { Reader, SqlValue, Writer } from '../database';
import type { GlanceTable } from '../record/glance';
import { among } from '../some-ids';

/** What of all batches can be read at a glance. */
export const BATCHES_TABLE: GlanceTable = {
  from: 'batch',
  keys: { number: 'number', createdAt: 'created_at', totalMg: 'total_mg' },
};

/** The batches that were planned of a formula, of whichever version. */
export function batchesOf(db: Reader, formulaId: string): string[] {
  const sql = 'SELECT b.id FROM formula_version v JOIN batch b ON b.version_id = v.id WHERE v.formula_id = ?';
  return db.all<{ id: string }>(sql, formulaId).map(({ id }) => id);
}

/** The batches that were made of a version, oldest first. */
export function batchesOfVersion(db: Reader, versionId: string): Batch[] {
  const sql = 'SELECT id FROM batch WHERE version_id = ? ORDER BY created_at, number';
  return db.all<{ id: string }>(sql, versionId).flatMap(({ id }) => readBatch(db, id) ?? []);
}

/** Batches as their list knows them, all or some. */
export function readBatchEntries(db: Reader, ids?: readonly string[]): BatchEntry[] {
  const { where, values } = among('b.id', ids);
  return db.all<BatchEntry>(
    `SELECT b.id, b.number, b.created_at AS createdAt, substr(b.created_at, 1, 4) AS year, b.total_mg AS totalMg,
       b.note, o.finished_on AS finishedOn,
       CASE WHEN o.seq IS NULL THEN 'planned' ELSE 'finished' END AS state, v.id AS versionId, v.number AS versionNumber, f.id AS formulaId, f.name AS formulaName,
       f.code AS formulaCode
     FROM batch b JOIN formula_version v ON v.id = b.version_id JOIN formula f ON f.id = v.formula_id
       LEFT JOIN batch_outcome o ON o.seq =
         (SELECT seq FROM batch_outcome WHERE batch_id = b.id ORDER BY at DESC, seq DESC LIMIT 1) ${where}`,
    ...values,
  );
}

/** A planned batch with its lines, or undefined. */
export function readBatch(db: Reader, id: string): Batch | undefined {
  const row = db.get<Record<string, SqlValue>>('SELECT * FROM batch WHERE id = ?', id);
  if (!row) return undefined;
  return batch.parse({
    id: row.id,
    number: row.number,
    versionId: row.version_id,
    createdAt: row.created_at,
    size: JSON.parse(String(row.size)) as unknown,
    overagePpm: row.overage_ppm,
    readabilityMg: row.readability_mg,
    totalMg: row.total_mg,
    note: row.note,
    lines: db.all(
      `SELECT line_id AS lineId, material_id AS materialId, target_mg AS targetMg
       FROM batch_line WHERE batch_id = ? ORDER BY position`,
      id,
    ),
  });
}

export function insertBatch(tx: Writer, b: Batch): void {
  tx.run(
    `INSERT INTO batch (id, number, version_id, created_at, size, overage_ppm, readability_mg, total_mg, note)
     VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)`,
    ...[b.id, b.number, b.versionId, b.createdAt, JSON.stringify(b.size)],
    ...[b.overagePpm, b.readabilityMg, b.totalMg, b.note],
  );
  b.lines.forEach((line, at) =>
    tx.run(
      'INSERT INTO batch_line (batch_id, position, line_id, material_id, target_mg) VALUES (?, ?, ?, ?, ?)',
      ...[b.id, at, line.lineId, line.materialId, line.targetMg],
    ),
  );
}
