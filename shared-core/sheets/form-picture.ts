import { DRAWING, drawingWords, FORM_DRAWINGS, type Stroke } from '../materials/form-drawing';
import type { Material } from '../materials/material';
import type { Form } from '../materials/vocabulary';
import type { ImageNode, PlotNode, TextNode } from './kit/definition';
import { SOFT_INK } from './kit/type-scale';
import { photoNode, type SheetPhoto } from './photo';

/** Greys that a copier keeps apart. */
const FILL: Record<Stroke['ink'], string> = {
  body: '#f0f0f0',
  dark: '#cccccc',
  line: 'none',
  grain: SOFT_INK,
};

function drawing(form: Form): string {
  const paths = FORM_DRAWINGS[form].map(
    ({ d, ink }) => `<path d="${d}" fill="${FILL[ink]}" stroke="${ink === 'grain' ? 'none' : SOFT_INK}"/>`,
  );
  const { width, height } = DRAWING;
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}" stroke-width="0.9" stroke-linejoin="round" stroke-linecap="round">${paths.join('')}</svg>`;
}

/** What a material looks like, within a box: its photo, else our drawing of its form; null where neither is known. */
export function looksNode(
  photo: SheetPhoto | null | undefined,
  material: Pick<Material, 'tradeName' | 'appearance' | 'form'>,
  width: number,
  height: number,
): ImageNode | TextNode | PlotNode | null {
  if (photo) return photoNode(photo, material, width, height);
  if (!material.form) return null;
  // No larger than it takes to be told apart.
  const fit: [number, number] = [Math.min(width, 72), Math.min(height, 54)];
  return { svg: drawing(material.form), fit, alt: drawingWords(material.form) };
}
