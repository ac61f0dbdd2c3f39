import type { Material } from '@core/materials/material';
import type { SheetPhoto } from '@core/sheets/photo';
import { readMaterial } from '@db/materials/materials';
import { found } from '../../problems/found';
import { sheetPhoto } from '../photo-data';
import { kindOfSheet } from './kind';

interface Subject {
  material: Material;
  photo: SheetPhoto | null;
}

export const material = kindOfSheet<'material', Subject>('material', {
  async read(library, request) {
    const read = found(readMaterial(library, request.materialId), 'raw material');
    const photo = await sheetPhoto(library, read.photo);
    return { subject: { material: read, photo }, name: [read.tradeName] };
  },
  async setting() {
    const { materialSheet } = await import('@core/sheets/material-sheet');
    return (subject, settings, printedAt) =>
      materialSheet(subject.material, settings, printedAt, subject.photo);
  },
});
