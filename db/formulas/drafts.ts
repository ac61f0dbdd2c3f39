import { formula, type Formula, type FormulaLine } from '@core/formulas/formula';
import { FORMULA, type FormulaRecord } from '@core/formulas/noun';
import type { Reader, SqlValue, Writer } from '../database';
import type { Repository } from '../record/repository';

type Row = Record<string, SqlValue>;

function lineOf(row: Row): Record<keyof FormulaLine, unknown> {
  return {
    id: row.id,
    materialId: row.material_id,
    ppm: row.ppm,
    toHundred: row.to_hundred === 1,
    note: row.note,
  };
}

function stepOf(row: Row): unknown {
  return {
    id: row.id,
    phaseIds: JSON.parse(String(row.phase_ids)) as unknown,
    instruction: row.instruction,
    temperatureC: row.temperature_c,
    speedRpm: row.speed_rpm,
    minutes: row.minutes,
    lookFor: row.look_for,
    caution: row.caution,
  };
}

/** The parts of a formula that are kept as one text each. */
function ofJson(row: Row, keys: readonly string[]): Record<string, unknown> {
  return Object.fromEntries(keys.map((key) => [key, JSON.parse(String(row[key])) as unknown]));
}

/** The rows of each formula, in their order. */
function byFormula(rows: readonly Row[]): (id: SqlValue | undefined) => readonly Row[] {
  const found = new Map<SqlValue | undefined, Row[]>();
  for (const row of rows) {
    const list = found.get(row.formula_id);
    if (list) list.push(row);
    else found.set(row.formula_id, [row]);
  }
  return (id) => found.get(id) ?? [];
}

interface PartsOf {
  phases: readonly Row[];
  lines: readonly Row[];
  steps: readonly Row[];
}

function formulaOf(row: Row, { phases, lines, steps }: PartsOf): object {
  return {
    id: row.id,
    revision: row.revision,
    createdAt: row.created_at,
    updatedAt: row.updated_at,
    archived: row.archived === 1,
    code: row.code,
    name: row.name,
    productType: row.product_type,
    use: row.use,
    purpose: row.purpose,
    phases: phases.map((phase) => ({
      id: phase.id,
      title: phase.title,
      temperatureC: phase.temperature_c,
      lines: lines.filter((line) => line.phase_id === phase.id).map(lineOf),
    })),
    steps: steps.map(stepOf),
    ...ofJson(row, ['market', 'target', 'accepted', 'claims', 'reports', 'statements']),
    notes: row.notes,
  };
}

/** Those of some formulas' drafts that exist, in the order asked for, not validated yet; at most a few hundred at once. */
export function unvalidatedFormulas(db: Reader, ids: readonly string[]): object[] {
  const marks = ids.map(() => '?').join(', ');
  const rows = (table: string, of: string, order = ''): Row[] =>
    db.all<Row>(`SELECT * FROM ${table} WHERE ${of} IN (${marks}) ${order}`, ...ids);
  const drafts = new Map(rows('formula', 'id').map((row) => [row.id, row]));
  const phases = byFormula(rows('formula_phase', 'formula_id', 'ORDER BY formula_id, position'));
  const lines = byFormula(rows('formula_line', 'formula_id', 'ORDER BY formula_id, phase_id, position'));
  const steps = byFormula(rows('formula_step', 'formula_id', 'ORDER BY formula_id, position'));
  return ids.flatMap((id) => {
    const row = drafts.get(id);
    return row ? [formulaOf(row, { phases: phases(id), lines: lines(id), steps: steps(id) })] : [];
  });
}

/** A formula's draft, or undefined when there is none with that id. */
export function readFormula(db: Reader, id: string): Formula | undefined {
  const [draft] = unvalidatedFormulas(db, [id]);
  return draft && formula.parse(draft);
}

/** Adds a formula's draft, or rewrites it whole: a draft is small, and one shape of change is easy to trust. */
export function writeFormula(tx: Writer, f: Formula): void {
  tx.run(
    `INSERT INTO formula (id, revision, created_at, updated_at, archived, code, name, product_type, use, purpose, market, target, accepted,
       claims, reports, statements, notes)
     VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)
     ON CONFLICT (id) DO UPDATE SET revision = excluded.revision, updated_at = excluded.updated_at,
       archived = excluded.archived, code = excluded.code, name = excluded.name,
       product_type = excluded.product_type, use = excluded.use, purpose = excluded.purpose,
       market = excluded.market,
       target = excluded.target, accepted = excluded.accepted, claims = excluded.claims,
       reports = excluded.reports, statements = excluded.statements, notes = excluded.notes`,
    ...[f.id, f.revision, f.createdAt, f.updatedAt, Number(f.archived), f.code, f.name],
    ...[f.productType, f.use, f.purpose, JSON.stringify(f.market), JSON.stringify(f.target)],
    ...[f.accepted, f.claims, f.reports, f.statements].map((part) => JSON.stringify(part)),
    f.notes,
  );
  tx.run('DELETE FROM formula_step WHERE formula_id = ?', f.id);
  tx.run('DELETE FROM formula_phase WHERE formula_id = ?', f.id);
  f.phases.forEach((phase, at) => {
    tx.run(
      'INSERT INTO formula_phase (id, formula_id, position, title, temperature_c) VALUES (?, ?, ?, ?, ?)',
      ...[phase.id, f.id, at, phase.title, phase.temperatureC],
    );
    phase.lines.forEach((line, index) => writeLine(tx, f.id, phase.id, index, line));
  });
  f.steps.forEach((step, at) =>
    tx.run(
      `INSERT INTO formula_step
         (id, formula_id, position, phase_ids, instruction, temperature_c, speed_rpm, minutes, look_for, caution)
       VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`,
      ...[step.id, f.id, at, JSON.stringify(step.phaseIds), step.instruction],
      ...[step.temperatureC, step.speedRpm, step.minutes, step.lookFor, step.caution],
    ),
  );
}

function writeLine(tx: Writer, formulaId: string, phaseId: string, at: number, line: FormulaLine): void {
  tx.run(
    `INSERT INTO formula_line (id, formula_id, phase_id, position, material_id, ppm, to_hundred, note)
     VALUES (?, ?, ?, ?, ?, ?, ?, ?)`,
    ...[line.id, formulaId, phaseId, at, line.materialId, line.ppm, Number(line.toHundred), line.note],
  );
}

/** Deletes a draft that has no recorded version; the database refuses otherwise. */
export function deleteFormula(tx: Writer, id: string): void {
  tx.run('DELETE FROM formula WHERE id = ?', id);
}

export const formulaRecords: Repository<Formula, FormulaRecord> = {
  noun: FORMULA,
  read: readFormula,
  insert: writeFormula,
  update: (tx, _before, after) => writeFormula(tx, after),
  remove: deleteFormula,
};
