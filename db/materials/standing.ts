import type { Reader } from '../database';
import { among } from '../some-ids';

/** A material as it stands: its edits give it each a count and a moment; whether it may hold other materials. */
export interface Standing {
  id: string;
  revision: number;
  updatedAt: string;
  nests: boolean;
}

/** Those of some materials that exist, in the order asked for. A part named as a substance is never a material. */
export function standingOf(db: Reader, ids: readonly string[]): Standing[] {
  const { where, values } = among('m.id', ids);
  const rows = db.all<Omit<Standing, 'nests'> & { nests: number }>(
    `SELECT m.id, m.revision, m.updated_at AS updatedAt, n.id IS NOT NULL AS nests FROM material m LEFT JOIN (
       SELECT DISTINCT i.material_id AS id FROM material_inci i JOIN material own ON own.id = i.material_id
       WHERE (trim(i.inci) COLLATE NOCASE IN (SELECT trade_name FROM material) OR i.inci GLOB '*[^ -~]*')
         AND trim(i.inci) COLLATE NOCASE <> own.trade_name
         AND trim(i.inci) COLLATE NOCASE NOT IN (SELECT name FROM substance)
     ) n ON n.id = m.id ${where}`,
    ...values,
  );
  const found = new Map(rows.map((row) => [row.id, { ...row, nests: row.nests === 1 }]));
  return ids.flatMap((id) => found.get(id) ?? []);
}
