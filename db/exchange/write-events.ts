import type { ExchangedBatch, ExchangedState, ExchangedVersion } from '@core/exchange/document';
import { Problem } from '@core/problems/problem';
import { canonicalText } from '@core/record/canonical';
import { insertBatch } from '../batches/batches';
import { insertDocumentEntry } from '../batches/documents';
import { insertOutcome } from '../batches/outcomes';
import type { Writer } from '../database';
import { insertDecision } from '../formulas/decisions';
import { hashOfState, putKept } from '../record/state';

function altered(record: string): Problem {
  return new Problem({
    code: 'library-damaged',
    title: 'A state in this file is not what was written: the file was altered.',
    advice: 'Ask for it to be sent again. Nothing was changed.',
    facts: { record },
  });
}

/** Keeps a state under its hash, once. @throws Problem library-damaged where it is not what the hash says */
export function writeState(tx: Writer, { hash, content, ...state }: ExchangedState): number {
  const kept = { ...state, content: canonicalText(content) };
  if (hashOfState(kept) !== hash) throw altered(state.record);
  return putKept(tx, kept, hash);
}

function stateId(tx: Writer, hash: string): number {
  const known = tx.get<{ id: number }>('SELECT id FROM state WHERE hash = ?', hash);
  if (!known) throw altered(hash);
  return known.id;
}

/** Writes a recorded version, whose states are kept already, with the decisions on it. */
export function writeVersion(tx: Writer, version: ExchangedVersion): void {
  const last = tx.get<{ last: number | null }>('SELECT max(seq) AS last FROM formula_version')?.last ?? 0;
  const seq = last + 1;
  tx.run(
    `INSERT INTO formula_version (seq, id, formula_id, number, recorded_at, recorded_by, reason, state)
     VALUES (?, ?, ?, ?, ?, ?, ?, ?)`,
    ...[seq, version.id, version.formulaId, version.number, version.recordedAt, version.recordedBy],
    ...[version.reason, stateId(tx, version.formula)],
  );
  for (const { state, revision } of version.materials)
    tx.run(
      'INSERT INTO formula_version_state (version, state, revision) VALUES (?, ?, ?)',
      ...[seq, stateId(tx, state), revision],
    );
  for (const decision of version.decisions) insertDecision(tx, version.id, decision);
}

/** Writes a batch with what came of it. */
export function writeBatch(tx: Writer, { outcomes, documents, ...batch }: ExchangedBatch): void {
  insertBatch(tx, batch);
  for (const entry of documents) insertDocumentEntry(tx, batch.id, entry);
  for (const outcome of outcomes) insertOutcome(tx, batch.id, outcome);
}
