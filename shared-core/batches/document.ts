import { z } from 'zod';
import { datedPaper, daysFollow, DAYS_MUST_FOLLOW } from '../materials/document';
import { id } from '../record/id';

/** What is kept of a batch: what it looked like, what was found in it, the record that was filled in by hand. */
export const BATCH_DOCUMENT_KINDS = [
  'photo',
  'certificate of analysis',
  'filled-in batch record',
  'test report',
  'other',
] as const;
export type BatchDocumentKind = (typeof BATCH_DOCUMENT_KINDS)[number];

/** So many a batch can hold. */
export const MOST_BATCH_DOCUMENTS = 60;

const paper = datedPaper.extend({ kind: z.enum(BATCH_DOCUMENT_KINDS) });

/** A photo or document of a batch, as a maker adds or changes it. */
export const enteredBatchDocument = paper.refine(daysFollow, DAYS_MUST_FOLLOW);
export type EnteredBatchDocument = z.infer<typeof enteredBatchDocument>;

/** One that is on file. */
export type BatchDocument = EnteredBatchDocument & { id: string };

/**
 * What was written down of a document of a batch: it is only ever added to, as outcomes are. The last holds, also where
 * it says that the document was taken off.
 */
export const batchDocumentEntry = paper.extend({
  id,
  /** How many of this document were written down before, and one more. */
  revision: z.int().min(1),
  removed: z.boolean(),
  at: z.iso.datetime(),
});
export type BatchDocumentEntry = z.infer<typeof batchDocumentEntry>;
