import { z } from 'zod';
import { WHOLE_PPM } from '../quantities/share';
import { blankContent, enteredShape, storedShape, type ContentOf } from '../record/field';
import { id } from '../record/id';
import { MATERIAL_FIELDS } from './fields';

/** All that a library holds about a raw material; what it took in before a rule was made stays readable. */
export const storedContent = storedShape(MATERIAL_FIELDS);
/** All that a maker can enter about a raw material. */
export const materialContent = enteredShape(MATERIAL_FIELDS);
export type MaterialContent = ContentOf<typeof MATERIAL_FIELDS>;

/** A raw material in the library. `revision` counts its edits, so that two windows cannot overwrite each other. */
export const material = storedContent.extend({
  id,
  revision: z.int().min(1),
  createdAt: z.iso.datetime(),
  updatedAt: z.iso.datetime(),
});
export type Material = z.infer<typeof material>;

/** A material with nothing known but its name and INCI name: where adding one starts. */
export function blankMaterial(tradeName: string, inci: string): MaterialContent {
  return {
    ...blankContent(MATERIAL_FIELDS),
    tradeName,
    composition: [{ inci, lowPpm: WHOLE_PPM, highPpm: WHOLE_PPM }],
  };
}
