import {
  MOST_BATCH_DOCUMENTS,
  type BatchDocument,
  type BatchDocumentEntry,
  type EnteredBatchDocument,
} from '@core/batches/document';
import { Problem } from '@core/problems/problem';
import { readBatch } from '@db/batches/batches';
import { insertDocumentEntry, readBatchDocuments, readDocumentEntries } from '@db/batches/documents';
import type { ServiceContext } from '../context';
import { found } from '../problems/found';
import { tellChange } from '../record/tell-change';

interface Place {
  /** Of the batch. */
  id: string;
  document: string;
}

function writtenDown(
  context: ServiceContext,
  batchId: string,
  entry: Omit<BatchDocumentEntry, 'at'>,
): BatchDocument[] {
  const { library } = context.session.current();
  const at = context.now().toISOString();
  library.transaction((tx) => insertDocumentEntry(tx, batchId, { ...entry, at }));
  tellChange(context, 'batch', { id: batchId, revision: readDocumentEntries(library, batchId).length + 1 });
  return readBatchDocuments(library, batchId);
}

/** Puts a photo or document of a batch on file. @throws Problem not-found, invalid-input where it holds no more */
export function addDocument(
  context: ServiceContext,
  id: string,
  entered: EnteredBatchDocument,
): BatchDocument[] {
  const { library } = context.session.current();
  const batch = found(readBatch(library, id), 'batch');
  if (readBatchDocuments(library, batch.id).length >= MOST_BATCH_DOCUMENTS)
    throw new Problem({
      code: 'invalid-input',
      title: `A batch can hold ${MOST_BATCH_DOCUMENTS} photos and documents at most.`,
      advice: 'Remove one that is no longer needed, then add this one.',
    });
  return writtenDown(context, batch.id, { ...entered, id: context.newId(), revision: 1, removed: false });
}

/** What was last written down of a document, also where it was taken off. @throws Problem not-found */
function lastOf(context: ServiceContext, { id, document }: Place): BatchDocumentEntry {
  const entries = readDocumentEntries(context.session.current().library, id);
  const own = entries.filter((entry) => entry.id === document);
  return found(own.sort((a, b) => a.revision - b.revision || a.at.localeCompare(b.at)).at(-1), 'document');
}

/** Changes what is said of a document, or puts one back that was removed. @throws Problem not-found */
export function changeDocument(
  context: ServiceContext,
  place: Place,
  entered: EnteredBatchDocument,
): BatchDocument[] {
  const { id, revision } = lastOf(context, place);
  return writtenDown(context, place.id, { ...entered, id, revision: revision + 1, removed: false });
}

/** Takes a document off. Its file stays, and it can be put back. @throws Problem not-found */
export function removeDocument(context: ServiceContext, place: Place): BatchDocument[] {
  const last = lastOf(context, place);
  return writtenDown(context, place.id, { ...last, revision: last.revision + 1, removed: true });
}
