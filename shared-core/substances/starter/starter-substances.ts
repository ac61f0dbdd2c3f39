import type { SubstanceContent } from '../substance';
import { STARTER_ALLERGENS } from './allergens';
import { STARTER_COMMON } from './common';
import { starterContent } from './entry';
import { onlyKnownData, withKnownData } from './more-data';
import { STARTER_PRESERVATIVES } from './preservatives';
import { STARTER_RESTRICTED } from './restricted';
import { STARTER_COLORANTS, STARTER_UV_FILTERS } from './uv-filters-and-colorants';

/** The substances that a library can begin with: what the demonstration, its limits and the allergen lists name. */
export function starterSubstances(): SubstanceContent[] {
  const named = [
    ...STARTER_PRESERVATIVES,
    ...STARTER_UV_FILTERS,
    ...STARTER_COLORANTS,
    ...STARTER_RESTRICTED,
    ...STARTER_ALLERGENS,
    ...STARTER_COMMON,
  ].map(starterContent);
  return [...named, ...onlyKnownData(named)].map(withKnownData);
}
