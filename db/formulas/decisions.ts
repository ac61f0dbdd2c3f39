import type { VersionDecision } from '@core/formulas/decision';
import type { Reader, Writer } from '../database';

/**
 * What was decided on a version, oldest first; a withdrawal is final, and so comes last whatever another library, which
 * did not know of it, has added since.
 */
export function readDecisions(db: Reader, versionId: string): VersionDecision[] {
  return db.all<VersionDecision>(
    `SELECT decision, by, on_day AS "on", reason, at FROM version_decision WHERE version_id = ?
     ORDER BY decision = 'withdrawn', at, seq`,
    versionId,
  );
}

/** Writes a decision down. Nothing can change or remove it afterwards. */
export function insertDecision(tx: Writer, versionId: string, made: VersionDecision): void {
  const last = tx.get<{ last: number | null }>('SELECT max(seq) AS last FROM version_decision')?.last ?? 0;
  tx.run(
    'INSERT INTO version_decision (seq, version_id, decision, by, on_day, reason, at) VALUES (?, ?, ?, ?, ?, ?, ?)',
    ...[last + 1, versionId, made.decision, made.by, made.on, made.reason, made.at],
  );
}
