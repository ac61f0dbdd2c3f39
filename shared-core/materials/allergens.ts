import { z } from 'zod';
import { sharePpm } from '../quantities/share';
import { nameText } from '../quantities/text';

/** As a library may hold them. */
export const storedAllergens = z
  .array(z.object({ inci: nameText('the allergen', 200), ppm: sharePpm }))
  .max(120, 'A raw material can hold 120 allergens at most.');

/** What a material contains of declarable fragrance allergens, each once, in ppm of the material. */
export const allergens = storedAllergens.refine(
  (list) => new Set(list.map((one) => one.inci.toLowerCase())).size === list.length,
  'The same allergen is listed twice. Keep it once, with the summed share.',
);
