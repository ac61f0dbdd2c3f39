import { standingOf, type Standing, type VersionDecision } from '@core/formulas/decision';
import { FORMULA } from '@core/formulas/noun';
import { formulaContent, formulaVersion, type FormulaVersion } from '@core/formulas/formula';
import { MATERIAL } from '@core/materials/noun';
import type { Reader, Writer } from '../database';
import { readDecisions } from './decisions';
import { putState, readState, stateRow, type StateRow } from '../record/state';

export interface VersionSummary {
  id: string;
  formulaId: string;
  number: number;
  recordedAt: string;
  recordedBy: string;
  reason: string;
  /** What was decided on it, oldest first, and where it stands by that. */
  decisions: VersionDecision[];
  standing: Standing;
}

type Recorded = Omit<VersionSummary, 'decisions' | 'standing'>;

const SUMMARY = `id, formula_id AS formulaId, number, recorded_at AS recordedAt, recorded_by AS recordedBy, reason`;

/** A formula's recorded versions, newest first. */
export function listVersions(db: Reader, formulaId: string): VersionSummary[] {
  const versions = db.all<Recorded>(
    `SELECT ${SUMMARY} FROM formula_version WHERE formula_id = ? ORDER BY number DESC`,
    formulaId,
  );
  return versions.map((version) => {
    const decisions = readDecisions(db, version.id);
    return { ...version, decisions, standing: standingOf(decisions) };
  });
}

/** The states of a version's materials, put together as materials of the moment when it was recorded. */
function frozenMaterials(db: Reader, seq: number, at: string): FormulaVersion['materials'] {
  const rows = db.all<StateRow & { revision: number }>(
    `SELECT s.id, s.hash, s.kind, s.record, s.format, s.content, v.revision
     FROM formula_version_state v JOIN state s ON s.id = v.state WHERE v.version = ?`,
    seq,
  );
  return Object.fromEntries(
    rows.map((row) => [
      row.record,
      { ...readState(MATERIAL, row), id: row.record, revision: row.revision, createdAt: at, updatedAt: at },
    ]),
  );
}

/**
 * A recorded version with its formula and materials as they were, or undefined.
 * @throws Problem library-damaged where a state is not what was recorded
 */
export function readVersion(db: Reader, id: string): FormulaVersion | undefined {
  const row = db.get<Recorded & { seq: number; state: number }>(
    `SELECT seq, state, ${SUMMARY} FROM formula_version WHERE id = ?`,
    id,
  );
  const state = row && stateRow(db, row.state);
  if (!state) return undefined;
  const { seq, state: _state, ...summary } = row;
  return formulaVersion.parse({
    ...summary,
    content: formulaContent.parse(readState(FORMULA, state)),
    materials: frozenMaterials(db, seq, row.recordedAt),
  });
}

/** Records a version: it points at the state of its formula and of each material. Nothing can change it afterwards. */
export function insertVersion(tx: Writer, version: FormulaVersion): void {
  const seq =
    (tx.get<{ last: number | null }>('SELECT max(seq) AS last FROM formula_version')?.last ?? 0) + 1;
  const state = putState(tx, FORMULA, version.formulaId, { ...version.content, archived: false });
  tx.run(
    `INSERT INTO formula_version (seq, id, formula_id, number, recorded_at, recorded_by, reason, state)
     VALUES (?, ?, ?, ?, ?, ?, ?, ?)`,
    ...[seq, version.id, version.formulaId, version.number, version.recordedAt],
    ...[version.recordedBy, version.reason, state],
  );
  for (const [materialId, frozen] of Object.entries(version.materials))
    tx.run(
      'INSERT INTO formula_version_state (version, state, revision) VALUES (?, ?, ?)',
      ...[seq, putState(tx, MATERIAL, materialId, MATERIAL.read(frozen)), frozen.revision],
    );
}
