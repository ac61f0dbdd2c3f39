import type { Decision } from '@core/formulas/decision';
import type { FormulaEntry, FormulaStatus } from '@core/formulas/list';
import { WHOLE_PPM } from '@core/quantities/share';
import type { Reader } from '../database';
import type { GlanceTable } from '../record/glance';
import { among } from '../some-ids';

interface Row {
  id: string;
  code: string;
  name: string;
  productType: string;
  use: string;
  purpose: string;
  archived: number;
  updatedAt: string;
  lines: number;
  latestVersion: number | null;
  decision: Decision | null;
}

function statusOf({ archived, latestVersion }: Row): FormulaStatus {
  if (archived === 1) return 'archived';
  return latestVersion === null ? 'draft' : 'recorded';
}

/** What of all formulas can be read at a glance. */
export const FORMULAS_TABLE: GlanceTable = {
  from: 'formula',
  where: 'archived = 0',
  keys: {
    name: 'name',
    code: 'code',
    productType: 'product_type',
    use: 'use',
    updatedAt: 'updated_at',
  },
};

/** The formulas whose draft holds a material. */
export function formulasWith(db: Reader, materialId: string): string[] {
  const sql = 'SELECT DISTINCT formula_id AS id FROM formula_line WHERE material_id = ?';
  return db.all<{ id: string }>(sql, materialId).map(({ id }) => id);
}

interface Dose {
  formulaId: string;
  materialId: string;
  ppm: number;
  toHundred: number;
}

/** Gives each formula its materials with their shares; the q.s. line has what the others leave. */
function addDoses(entries: Map<string, FormulaEntry>, lines: readonly Dose[]): void {
  const marked = new Map<FormulaEntry, number>();
  for (const { formulaId, materialId, ppm, toHundred } of lines) {
    const entry = entries.get(formulaId);
    if (!entry) continue;
    if (toHundred === 1) marked.set(entry, entry.ppms.length);
    entry.materialIds.push(materialId);
    entry.ppms.push(ppm);
  }
  for (const [entry, at] of marked) {
    const others = entry.ppms.reduce((sum, ppm) => sum + ppm, 0);
    entry.ppms[at] = Math.max(0, (entry.ppms[at] ?? 0) + WHOLE_PPM - others);
  }
}

/** Formulas as their list knows them, all or some, but for what their materials are called. */
export function readFormulaEntries(db: Reader, ids?: readonly string[]): FormulaEntry[] {
  const rows = db.all<Row>(
    `SELECT id, code, name, product_type AS productType, use, purpose, archived, updated_at AS updatedAt,
       (SELECT count(*) FROM formula_line l WHERE l.formula_id = f.id) AS lines,
       (SELECT max(number) FROM formula_version v WHERE v.formula_id = f.id) AS latestVersion,
       (SELECT d.decision FROM version_decision d WHERE d.version_id =
          (SELECT v.id FROM formula_version v WHERE v.formula_id = f.id ORDER BY v.number DESC LIMIT 1)
        ORDER BY d.decision = 'withdrawn' DESC, d.at DESC, d.seq DESC LIMIT 1) AS decision
     FROM formula f ${among('id', ids).where}`,
    ...among('id', ids).values,
  );
  const entries = new Map<string, FormulaEntry>();
  for (const row of rows) {
    const { archived: _archived, decision, ...shown } = row;
    const standing = decision ?? (row.latestVersion === null ? 'not recorded' : 'recorded');
    const unknown = { costPerKg: null, currency: null, pricedPpm: 0 };
    entries.set(row.id, {
      ...{ ...shown, ...unknown, status: statusOf(row), standing },
      ...{ materialIds: [], ppms: [], ingredients: [] },
    });
  }
  const lines = db.all<Dose>(
    `SELECT formula_id AS formulaId, material_id AS materialId, sum(ppm) AS ppm, max(to_hundred) AS toHundred
     FROM formula_line ${among('formula_id', ids).where} GROUP BY formula_id, material_id`,
    ...among('formula_id', ids).values,
  );
  addDoses(entries, lines);
  return [...entries.values()];
}
