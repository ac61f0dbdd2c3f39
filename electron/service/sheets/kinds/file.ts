import type { SheetPhoto } from '@core/sheets/photo';
import { filedMaterials, type ProductFile } from '@core/sheets/product-file/product-file-sheet';
import { Problem } from '@core/problems/problem';
import { batchesOfVersion } from '@db/batches/batches';
import { readBatchDocuments } from '@db/batches/documents';
import { readOutcomes } from '@db/batches/outcomes';
import { readFormula } from '@db/formulas/drafts';
import { readVersion } from '@db/formulas/versions';
import type { OpenLibrary } from '@db/library/open-library';
import { found } from '../../problems/found';
import { sheetPhotos } from '../photo-data';
import { printedFormula } from './formula';
import { kindOfSheet } from './kind';

/** A version with all that its file is made of; claims, reports and statements as the formula keeps them now. */
export async function readProductFile(library: OpenLibrary, versionId: string): Promise<ProductFile> {
  const { formulaId } = found(readVersion(library, versionId), 'version');
  const printed = printedFormula(library, { formulaId, versionId });
  if (printed.version === null)
    throw new Problem({
      code: 'not-found',
      title: 'This version is not in the library.',
      advice: 'Choose another.',
    });
  const { claims, reports, statements } = found(readFormula(library, formulaId), 'formula');
  const content = { ...printed.content, claims, reports, statements };
  const formula = { ...printed, content, version: printed.version };
  const materials = filedMaterials(formula);
  const photos: Record<string, SheetPhoto | null> = await sheetPhotos(library, materials);
  const batches = batchesOfVersion(library, versionId).map((made) => ({
    ...made,
    outcome: readOutcomes(library, made.id).at(-1) ?? null,
    documents: readBatchDocuments(library, made.id),
  }));
  return { formula, batches, photos };
}

export const file = kindOfSheet<'file', ProductFile>('file', {
  async read(library, request) {
    const subject = await readProductFile(library, request.versionId);
    const { content, version } = subject.formula;
    return { subject, name: [content.code, content.name, `version ${version.number}`] };
  },
  async setting() {
    const { productFileSheet } = await import('@core/sheets/product-file/product-file-sheet');
    return productFileSheet;
  },
});
