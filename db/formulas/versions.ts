import { formulaVersion, type FormulaVersion } from '@core/formulas/formula';
import type { Reader, Writer } from '../database';

export interface VersionSummary {
  id: string;
  formulaId: string;
  number: number;
  recordedAt: string;
  recordedBy: string;
  reason: string;
}

const SUMMARY = `id, formula_id AS formulaId, number, recorded_at AS recordedAt, recorded_by AS recordedBy, reason`;

/** A formula's recorded versions, newest first. */
export function listVersions(db: Reader, formulaId: string): VersionSummary[] {
  return db.all<VersionSummary>(
    `SELECT ${SUMMARY} FROM formula_version WHERE formula_id = ? ORDER BY number DESC`,
    formulaId,
  );
}

/** A recorded version with its formula and materials as they were, or undefined. */
export function readVersion(db: Reader, id: string): FormulaVersion | undefined {
  const row = db.get<VersionSummary & { content: string }>(
    `SELECT ${SUMMARY}, content FROM formula_version WHERE id = ?`,
    id,
  );
  if (!row) return undefined;
  const materials = db.all<{ id: string; content: string }>(
    'SELECT material_id AS id, content FROM formula_version_material WHERE version_id = ?',
    id,
  );
  return formulaVersion.parse({
    ...row,
    content: JSON.parse(row.content) as unknown,
    materials: Object.fromEntries(materials.map((m) => [m.id, JSON.parse(m.content) as unknown])),
  });
}

/** Records a version. Nothing can change it afterwards. */
export function insertVersion(tx: Writer, version: FormulaVersion): void {
  tx.run(
    `INSERT INTO formula_version (id, formula_id, number, recorded_at, recorded_by, reason, content)
     VALUES (?, ?, ?, ?, ?, ?, ?)`,
    ...[version.id, version.formulaId, version.number, version.recordedAt, version.recordedBy],
    ...[version.reason, JSON.stringify(version.content)],
  );
  for (const [materialId, frozen] of Object.entries(version.materials))
    tx.run(
      'INSERT INTO formula_version_material (version_id, material_id, content) VALUES (?, ?, ?)',
      version.id,
      materialId,
      JSON.stringify(frozen),
    );
}
