import type { BatchOutcome } from '@core/batches/outcome';
import type { Reader, Writer } from '../database';

/**
 * What was written down of a batch's outcome, oldest first: the last holds. Told by when, not by which came first into
 * this library: what another library adds may be older.
 */
export function readOutcomes(db: Reader, batchId: string): BatchOutcome[] {
  return db.all<BatchOutcome>(
    `SELECT finished_on AS finishedOn, obtained_mg AS obtainedMg, units_filled AS unitsFilled, by, remarks, at
     FROM batch_outcome WHERE batch_id = ? ORDER BY at, seq`,
    batchId,
  );
}

/** Writes an outcome down. Nothing can change or remove it afterwards. */
export function insertOutcome(tx: Writer, batchId: string, made: BatchOutcome): void {
  const last = tx.get<{ last: number | null }>('SELECT max(seq) AS last FROM batch_outcome')?.last ?? 0;
  tx.run(
    `INSERT INTO batch_outcome (seq, batch_id, finished_on, obtained_mg, units_filled, by, remarks, at)
     VALUES (?, ?, ?, ?, ?, ?, ?, ?)`,
    ...[
      last + 1,
      batchId,
      made.finishedOn,
      made.obtainedMg,
      made.unitsFilled,
      made.by,
      made.remarks,
      made.at,
    ],
  );
}
