import { demoLibrary } from '@core/demo/demo-library';
import { writeFormula } from '@db/formulas/drafts';
import type { OpenLibrary } from '@db/library/open-library';
import { insertMaterial } from '@db/materials/write';
import { writeSettings } from '@db/settings/settings';

/** Fills a new library with the invented maker's shelf, formulas and settings, as one change. */
export function fillWithDemonstration(library: OpenLibrary): void {
  const { settings, materials, formulas } = demoLibrary();
  library.transaction((tx) => {
    writeSettings(tx, settings);
    for (const added of materials) insertMaterial(tx, added);
    for (const added of formulas) writeFormula(tx, added);
  });
}
