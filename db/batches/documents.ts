import type { BatchDocument, BatchDocumentEntry } from '@core/batches/document';
import type { Reader, Writer } from '../database';

const COLUMNS = `id, kind, title, sha256, media_type AS mediaType, bytes, dated, valid_until AS validUntil`;

/** The photos and documents of a batch that are on file now, in the order in which they were first added. */
export function readBatchDocuments(db: Reader, batchId: string): BatchDocument[] {
  return db.all<BatchDocument>(
    `SELECT ${COLUMNS} FROM batch_document_now d WHERE batch_id = ?
     ORDER BY (SELECT min(f.seq) FROM batch_document f WHERE f.id = d.id)`,
    batchId,
  );
}

/** All that was ever written down of a batch's documents, oldest first. */
export function readDocumentEntries(db: Reader, batchId: string): BatchDocumentEntry[] {
  type Row = Omit<BatchDocumentEntry, 'removed'> & { removed: number };
  const sql = `SELECT ${COLUMNS}, revision, removed, at FROM batch_document WHERE batch_id = ? ORDER BY seq`;
  return db.all<Row>(sql, batchId).map((row) => ({ ...row, removed: row.removed === 1 }));
}

/** Writes down what became of a document. Nothing can change or remove it afterwards. */
export function insertDocumentEntry(tx: Writer, batchId: string, entry: BatchDocumentEntry): void {
  const last = tx.get<{ last: number | null }>('SELECT max(seq) AS last FROM batch_document')?.last ?? 0;
  tx.run(
    `INSERT INTO batch_document
       (seq, batch_id, id, revision, kind, title, sha256, media_type, bytes, dated, valid_until, removed, at)
     VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`,
    ...[last + 1, batchId, entry.id, entry.revision, entry.kind, entry.title, entry.sha256],
    ...[entry.mediaType, entry.bytes, entry.dated, entry.validUntil, Number(entry.removed), entry.at],
  );
}
