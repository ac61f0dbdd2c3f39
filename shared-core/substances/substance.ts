import { z } from 'zod';
import { blankContent, enteredShape, storedShape, type ContentOf } from '../record/field';
import { id } from '../record/id';
import { SUBSTANCE_FIELDS } from './fields';

/** All that a library holds about a substance. */
export const storedSubstance = storedShape(SUBSTANCE_FIELDS);
/** All that a maker can enter about one. */
export const substanceContent = enteredShape(SUBSTANCE_FIELDS);
export type SubstanceContent = ContentOf<typeof SUBSTANCE_FIELDS>;

/** A substance in the library: what compositions, limits and labels mean by a name. */
export const substance = storedSubstance.extend({
  id,
  revision: z.int().min(1),
  createdAt: z.iso.datetime(),
  updatedAt: z.iso.datetime(),
});
export type Substance = z.infer<typeof substance>;

/** A substance of which nothing is known but its name. */
export function blankSubstance(name: string): SubstanceContent {
  return { ...blankContent(SUBSTANCE_FIELDS), name };
}
