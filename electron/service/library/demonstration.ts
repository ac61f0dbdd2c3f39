import { demoId } from '@core/demo/demo-id';
import { demoBatchDocuments, demoDocuments, type DemoDocument } from '@core/demo/documents';
import { demoLibrary } from '@core/demo/demo-library';
import type { FiledPaper } from '@core/materials/document';
import { insertBatch } from '@db/batches/batches';
import { insertDocumentEntry } from '@db/batches/documents';
import { insertOutcome } from '@db/batches/outcomes';
import { writeFormula } from '@db/formulas/drafts';
import { insertVersion } from '@db/formulas/versions';
import type { OpenLibrary } from '@db/library/open-library';
import { materials as shelf } from '@db/materials/materials';
import { writeSettings } from '@db/settings/settings';

type Paper<Kind extends string> = Omit<DemoDocument<Kind>, 'code' | 'bytes'> & Omit<FiledPaper, 'title'>;

/** Keeps papers of the demonstration; they are told by the code of their material or the number of their batch. */
async function keepDocuments<Kind extends string>(
  library: OpenLibrary,
  papers: readonly DemoDocument<Kind>[],
): Promise<Map<string, Paper<Kind>[]>> {
  const kept = new Map<string, Paper<Kind>[]>();
  for (const { code, bytes, ...paper } of papers) {
    const sha256 = await library.attachments.put(bytes);
    const document = { ...paper, sha256, mediaType: 'application/pdf' as const, bytes: bytes.length };
    kept.set(code, [...(kept.get(code) ?? []), document]);
  }
  return kept;
}

/** Fills a new library with the invented maker's shelf, formulas with versions and batches, and settings, as one change. */
export async function fillWithDemonstration(library: OpenLibrary): Promise<void> {
  const { settings, materials, formulas, versions, batches, outcomes } = demoLibrary();
  const documents = await keepDocuments(library, demoDocuments());
  const ofBatches = await keepDocuments(library, demoBatchDocuments());
  library.transaction((tx) => {
    writeSettings(tx, settings, materials[0]?.createdAt ?? '');
    for (const added of materials) shelf.insert(tx, { ...added, documents: documents.get(added.code) ?? [] });
    for (const added of formulas) writeFormula(tx, added);
    for (const added of versions) insertVersion(tx, added);
    for (const added of batches) {
      insertBatch(tx, added);
      for (const [at, paper] of (ofBatches.get(added.number) ?? []).entries()) {
        const id = demoId(`document ${at + 1} of ${added.number}`);
        insertDocumentEntry(tx, added.id, { ...paper, id, revision: 1, removed: false, at: added.createdAt });
      }
    }
    for (const [id, outcome] of outcomes) insertOutcome(tx, id, outcome);
  });
}
