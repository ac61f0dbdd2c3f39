/** Photos and documents of batches: each change of one is another row, and its last one holds. */
export const documentsOfBatchesSchema = `
CREATE TABLE batch_document (
  seq INTEGER PRIMARY KEY,
  batch_id TEXT NOT NULL REFERENCES batch (id) ON DELETE RESTRICT,
  id TEXT NOT NULL,
  revision INTEGER NOT NULL CHECK (revision >= 1),
  kind TEXT NOT NULL,
  title TEXT NOT NULL CHECK (length(title) >= 1),
  sha256 TEXT NOT NULL CHECK (length(sha256) = 64),
  media_type TEXT NOT NULL,
  bytes INTEGER NOT NULL CHECK (bytes > 0),
  dated TEXT NOT NULL,
  valid_until TEXT NOT NULL,
  removed INTEGER NOT NULL CHECK (removed IN (0, 1)),
  at TEXT NOT NULL
) STRICT;
CREATE INDEX batch_document_batch ON batch_document (batch_id);
CREATE INDEX batch_document_id ON batch_document (id);
CREATE TRIGGER batch_document_never_changes BEFORE UPDATE ON batch_document
BEGIN SELECT RAISE(ABORT, 'a document of a batch never changes: what changed is another row'); END;
CREATE TRIGGER batch_document_never_goes BEFORE DELETE ON batch_document
BEGIN SELECT RAISE(ABORT, 'a document of a batch is never deleted: that it was removed is another row'); END;
CREATE VIEW batch_document_now AS
SELECT d.* FROM batch_document d
WHERE d.removed = 0 AND NOT EXISTS (
  SELECT 1 FROM batch_document n
  WHERE n.id = d.id AND (n.revision, n.at, n.seq) > (d.revision, d.at, d.seq)
);
`;
