import { demoDocuments } from '@core/demo/documents';
import { demoLibrary } from '@core/demo/demo-library';
import type { MaterialDocument } from '@core/materials/document';
import { insertBatch } from '@db/batches/batches';
import { insertOutcome } from '@db/batches/outcomes';
import { writeFormula } from '@db/formulas/drafts';
import { insertVersion } from '@db/formulas/versions';
import type { OpenLibrary } from '@db/library/open-library';
import { materials as shelf } from '@db/materials/materials';
import { writeSettings } from '@db/settings/settings';

/** Keeps the papers of the demonstration's shelf; they are told by the code of their material. */
async function keepDocuments(library: OpenLibrary): Promise<Map<string, MaterialDocument[]>> {
  const kept = new Map<string, MaterialDocument[]>();
  for (const { code, bytes, ...paper } of demoDocuments()) {
    const sha256 = await library.attachments.put(bytes);
    const document = { ...paper, sha256, mediaType: 'application/pdf' as const, bytes: bytes.length };
    kept.set(code, [...(kept.get(code) ?? []), document]);
  }
  return kept;
}

/** Fills a new library with the invented maker's shelf, formulas with versions and batches, and settings, as one change. */
export async function fillWithDemonstration(library: OpenLibrary): Promise<void> {
  const { settings, materials, formulas, versions, batches, outcomes } = demoLibrary();
  const documents = await keepDocuments(library);
  library.transaction((tx) => {
    writeSettings(tx, settings, materials[0]?.createdAt ?? '');
    for (const added of materials) shelf.insert(tx, { ...added, documents: documents.get(added.code) ?? [] });
    for (const added of formulas) writeFormula(tx, added);
    for (const added of versions) insertVersion(tx, added);
    for (const added of batches) insertBatch(tx, added);
    for (const [id, outcome] of outcomes) insertOutcome(tx, id, outcome);
  });
}
