import { FILE_PART_TITLES, type FilePart } from '@core/sheets/product-file/file-parts';
import type { ProductFile } from '@core/sheets/product-file/product-file-sheet';
import { readProductFile } from './file';
import { kindOfSheet } from './kind';

export const part = kindOfSheet<'part', { part: FilePart; file: ProductFile }>('part', {
  async read(library, request) {
    const file = await readProductFile(library, request.versionId);
    const { content, version } = file.formula;
    const name = [FILE_PART_TITLES[request.part], content.code, content.name, `version ${version.number}`];
    return { subject: { part: request.part, file }, name };
  },
  async setting() {
    const { partSheet } = await import('@core/sheets/product-file/part-sheet');
    return partSheet;
  },
});
