import { demoLibrary } from '@core/demo/demo-library';
import { insertBatch } from '@db/batches/batches';
import { writeFormula } from '@db/formulas/drafts';
import { insertVersion } from '@db/formulas/versions';
import type { OpenLibrary } from '@db/library/open-library';
import { materials as shelf } from '@db/materials/materials';
import { writeSettings } from '@db/settings/settings';

/** Fills a new library with the invented maker's shelf, formulas with versions and batches, and settings, as one change. */
export function fillWithDemonstration(library: OpenLibrary): void {
  const { settings, materials, formulas, versions, batches } = demoLibrary();
  library.transaction((tx) => {
    writeSettings(tx, settings, materials[0]?.createdAt ?? '');
    for (const added of materials) shelf.insert(tx, added);
    for (const added of formulas) writeFormula(tx, added);
    for (const added of versions) insertVersion(tx, added);
    for (const added of batches) insertBatch(tx, added);
  });
}
