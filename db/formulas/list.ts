import type { Reader } from '../database';

/** A formula as the list shows it. */
export interface FormulaSummary {
  id: string;
  code: string;
  name: string;
  productType: string;
  use: string;
  purpose: string;
  archived: number;
  updatedAt: string;
  lines: number;
  /** The newest recorded version's number, or null. */
  latestVersion: number | null;
}

/** Every formula, by name. */
export function listFormulas(db: Reader): FormulaSummary[] {
  return db.all<FormulaSummary>(
    `SELECT f.id, f.code, f.name, f.product_type AS productType, f.use, f.purpose, f.archived,
       f.updated_at AS updatedAt,
       (SELECT count(*) FROM formula_line l WHERE l.formula_id = f.id) AS lines,
       (SELECT max(number) FROM formula_version v WHERE v.formula_id = f.id) AS latestVersion
     FROM formula f ORDER BY f.name COLLATE NOCASE, f.id`,
  );
}
