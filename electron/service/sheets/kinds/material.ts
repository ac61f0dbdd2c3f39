import type { Material } from '@core/materials/material';
import type { SheetPhoto } from '@core/sheets/photo';
import { MATERIAL } from '@core/materials/noun';
import { readMaterial } from '@db/materials/materials';
import { issueOf } from '@db/record/issues';
import { found } from '../../problems/found';
import { sheetPhoto } from '../photo-data';
import { kindOfSheet } from './kind';

interface Subject {
  material: Material;
  photo: SheetPhoto | null;
  /** Under which it was issued as it is; null where it was not. */
  issue: number | null;
}

export const material = kindOfSheet<'material', Subject>('material', {
  async read(library, request) {
    const read = found(readMaterial(library, request.materialId), 'raw material');
    const photo = await sheetPhoto(library, read.photo);
    const issue = issueOf(library, MATERIAL, read);
    const name = [read.tradeName, issue === null ? '' : `issue ${issue}`];
    return { subject: { material: read, photo, issue }, name };
  },
  async setting() {
    const { materialSheet } = await import('@core/sheets/material-sheet');
    return (subject, settings, printedAt) => materialSheet(subject.material, settings, printedAt, subject);
  },
});
