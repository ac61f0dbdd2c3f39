import type { Material } from '../materials/material';
import type { ImageNode, TextNode } from './kit/definition';
import { SIZE, SOFT_INK } from './kit/type-scale';

/** A material's photo: a data URL (PNG or JPEG), or why it cannot be printed. */
export type SheetPhoto = { dataUrl: string } | { cannotPrint: string };

/** A material's photo within a box, with words for who cannot see it; a line in its place where it cannot be printed. */
export function photoNode(
  photo: SheetPhoto,
  material: Pick<Material, 'tradeName' | 'appearance' | 'form'>,
  width: number,
  height: number,
): ImageNode | TextNode {
  if ('cannotPrint' in photo)
    return {
      text: `Photo cannot be printed: ${photo.cannotPrint}.`,
      fontSize: SIZE.small,
      italics: true,
      color: SOFT_INK,
      width,
    };
  const looks = material.appearance || material.form || '';
  return {
    image: photo.dataUrl,
    fit: [width, height],
    width,
    alt: `Photo of ${material.tradeName}${looks ? `: ${looks}` : ''}`,
  };
}
