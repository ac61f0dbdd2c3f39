/** What came of batches: when each was finished, and how much was obtained. */
export const outcomesOfBatchesSchema = `
CREATE TABLE batch_outcome (
  seq INTEGER PRIMARY KEY,
  batch_id TEXT NOT NULL REFERENCES batch (id) ON DELETE RESTRICT,
  finished_on TEXT NOT NULL,
  obtained_mg INTEGER NOT NULL CHECK (obtained_mg > 0),
  units_filled INTEGER CHECK (units_filled >= 0),
  by TEXT NOT NULL CHECK (length(by) >= 1),
  remarks TEXT NOT NULL,
  at TEXT NOT NULL
) STRICT;
CREATE INDEX batch_outcome_batch ON batch_outcome (batch_id);
CREATE TRIGGER batch_outcome_never_changes BEFORE UPDATE ON batch_outcome
BEGIN SELECT RAISE(ABORT, 'what came of a batch never changes: a correction is another one'); END;
CREATE TRIGGER batch_outcome_never_goes BEFORE DELETE ON batch_outcome
BEGIN SELECT RAISE(ABORT, 'what came of a batch is never deleted'); END;
`;
