import type { Reader } from '../database';

/** A formula that uses a material, in its draft or in a recorded version. */
export interface MaterialUse {
  formulaId: string;
  formulaName: string;
  /** Null for the draft. */
  versionNumber: number | null;
}

/** Where a material is used; a used material cannot be deleted. */
export function materialUses(db: Reader, materialId: string): MaterialUse[] {
  return db.all<MaterialUse>(
    `SELECT DISTINCT f.id AS formulaId, f.name AS formulaName, NULL AS versionNumber
       FROM formula_line l JOIN formula f ON f.id = l.formula_id WHERE l.material_id = ?
     UNION ALL
     SELECT DISTINCT f.id, f.name, v.number FROM state s JOIN formula_version_state m ON m.state = s.id
       JOIN formula_version v ON v.seq = m.version JOIN formula f ON f.id = v.formula_id
       WHERE s.record = ? ORDER BY 2, 3`,
    materialId,
    materialId,
  );
}
