import type { Reader } from '../database';
import type { AttachmentInUse } from '../library/attachments/weekly-check';

/**
 * The photos and documents that records show now, with words by which their maker knows them. What only earlier states
 * of a record show is not among them.
 */
export function attachmentsInUse(db: Reader): AttachmentInUse[] {
  return db.all<AttachmentInUse>(
    `SELECT photo AS sha256, 'the photo of ' || trade_name AS words FROM material WHERE photo IS NOT NULL
     UNION ALL
     SELECT d.sha256, '“' || d.title || '” of ' || m.trade_name
       FROM material_document d JOIN material m ON m.id = d.material_id
     UNION ALL
     SELECT json_extract(r.value, '$.sha256'), '“' || json_extract(r.value, '$.title') || '” of ' || f.name
       FROM formula f, json_each(f.reports) r
     UNION ALL
     SELECT d.sha256, '“' || d.title || '” of batch ' || b.number
       FROM batch_document_now d JOIN batch b ON b.id = d.batch_id
     ORDER BY 2`,
  );
}
