import type { Material } from '../materials/material';
import type { ImageNode } from './kit/definition';

/** A material's photo within a box, with words in its place for who cannot see it. */
export function photoNode(
  dataUrl: string,
  material: Pick<Material, 'tradeName' | 'appearance' | 'form'>,
  width: number,
  height: number,
): ImageNode {
  const looks = material.appearance || material.form || '';
  return {
    image: dataUrl,
    fit: [width, height],
    width,
    alt: `Photo of ${material.tradeName}${looks ? `: ${looks}` : ''}`,
  };
}
