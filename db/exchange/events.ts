import type { ExchangedBatch, ExchangedVersion } from '@core/exchange/document';
import { readBatch } from '../batches/batches';
import { readDocumentEntries } from '../batches/documents';
import { readOutcomes } from '../batches/outcomes';
import type { Reader } from '../database';
import { readDecisions } from '../formulas/decisions';

/** Recorded versions, oldest first, by the hashes of what they froze, with what was decided on them. */
export function readExchangedVersions(db: Reader): ExchangedVersion[] {
  type Row = Omit<ExchangedVersion, 'materials' | 'decisions'> & { seq: number };
  const materials = new Map<number, ExchangedVersion['materials']>();
  const frozen = db.all<{ version: number; state: string; revision: number }>(
    `SELECT v.version, s.hash AS state, v.revision FROM formula_version_state v JOIN state s ON s.id = v.state
     ORDER BY v.version, s.hash`,
  );
  for (const { version, ...one } of frozen) materials.set(version, [...(materials.get(version) ?? []), one]);
  const versions = db.all<Row>(
    `SELECT v.seq, v.id, v.formula_id AS formulaId, v.number, v.recorded_at AS recordedAt,
       v.recorded_by AS recordedBy, v.reason, s.hash AS formula
     FROM formula_version v JOIN state s ON s.id = v.state ORDER BY v.seq`,
  );
  return versions.map(({ seq, ...version }) => ({
    ...version,
    materials: materials.get(seq) ?? [],
    decisions: readDecisions(db, version.id),
  }));
}

/** Batches, oldest first, with what came of them. */
export function readExchangedBatches(db: Reader): ExchangedBatch[] {
  const ids = db.all<{ id: string }>('SELECT id FROM batch ORDER BY created_at, id');
  return ids.flatMap(({ id }) => {
    const batch = readBatch(db, id);
    if (!batch) return [];
    return [{ ...batch, outcomes: readOutcomes(db, id), documents: readDocumentEntries(db, id) }];
  });
}
