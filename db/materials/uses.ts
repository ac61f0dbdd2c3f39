import { MATERIAL } from '@core/materials/noun';
import type { Material } from '@core/materials/material';
import type { Reader } from '../database';
import { stateOf } from '../record/state';

/** A formula that uses a material, in its draft or in a recorded version. */
export interface MaterialUse {
  formulaId: string;
  formulaName: string;
  /** Null for the draft. */
  versionNumber: number | null;
  versionId: string | null;
  /** Of a version: whether the material is still as that version froze it. */
  asNow: boolean;
  /** The numbers of the batches made of that version. */
  batches: string[];
}

interface Row {
  formulaId: string;
  formulaName: string;
  versionNumber: number | null;
  versionId: string | null;
  hash: string | null;
  batches: string | null;
}

/** Where a material is used, drafts first; a used material cannot be deleted. */
export function materialUses(db: Reader, material: Material): MaterialUse[] {
  const rows = db.all<Row>(
    `SELECT DISTINCT f.id AS formulaId, f.name AS formulaName, NULL AS versionNumber, NULL AS versionId,
         NULL AS hash, NULL AS batches
       FROM formula_line l JOIN formula f ON f.id = l.formula_id WHERE l.material_id = ?
     UNION ALL
     SELECT f.id, f.name, v.number, v.id, s.hash,
         (SELECT json_group_array(b.number) FROM batch b WHERE b.version_id = v.id)
       FROM state s JOIN formula_version_state m ON m.state = s.id
       JOIN formula_version v ON v.seq = m.version JOIN formula f ON f.id = v.formula_id
       WHERE s.record = ? ORDER BY 2, 3`,
    material.id,
    material.id,
  );
  const now = stateOf(MATERIAL, material.id, MATERIAL.read(material)).hash;
  return rows.map(({ hash, batches, ...use }) => ({
    ...use,
    asNow: hash === null || hash === now,
    batches: batches === null ? [] : (JSON.parse(batches) as string[]),
  }));
}
