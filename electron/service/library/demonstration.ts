import { demoLibrary } from '@core/demo/demo-library';
import { writeFormula } from '@db/formulas/drafts';
import type { OpenLibrary } from '@db/library/open-library';
import { materials as shelf } from '@db/materials/materials';
import { writeSettings } from '@db/settings/settings';

/** Fills a new library with the invented maker's shelf, formulas and settings, as one change. */
export function fillWithDemonstration(library: OpenLibrary): void {
  const { settings, materials, formulas } = demoLibrary();
  library.transaction((tx) => {
    writeSettings(tx, settings, materials[0]?.createdAt ?? '');
    for (const added of materials) shelf.insert(tx, added);
    for (const added of formulas) writeFormula(tx, added);
  });
}
