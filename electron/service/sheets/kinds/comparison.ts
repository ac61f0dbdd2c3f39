import type { Material } from '@core/materials/material';
import type { SheetPhoto } from '@core/sheets/photo';
import { sheetPhotos } from '../photo-data';
import { kindOfSheet } from './kind';
import { everyMaterial } from './materials-by-id';

interface Subject {
  materials: Material[];
  photos: Record<string, SheetPhoto>;
}

export const comparison = kindOfSheet<'comparison', Subject>('comparison', {
  async read(library, request) {
    const materials = Object.values(everyMaterial(library, request.materialIds));
    const photos = await sheetPhotos(library, materials);
    return {
      subject: { materials, photos },
      name: materials.slice(0, 3).map((material) => material.tradeName),
    };
  },
  async setting() {
    const { comparisonSheet } = await import('@core/sheets/comparison-sheet');
    return (subject, settings, printedAt) =>
      comparisonSheet(subject.materials, settings, printedAt, subject.photos);
  },
});
