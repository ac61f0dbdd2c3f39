import type { Source } from '../../working/working';

/** Salt that steadies a w/o emulsion, ppm of the formula. Common practice, no source; the effect is published. */
export const USUAL_SALT = { leastPpm: 5_000, mostPpm: 10_000 };

export const SALT_SOURCE: Source = {
  text: 'common practice, no source, for the level; the effect: Kent P., Saunders B.R., The role of added electrolyte in the stabilization of inverse emulsions, J. Colloid Interface Sci. 242, 437-442 (2001)',
  basis: 'common-practice',
};

/** Said beside every proposal of a w/o system. */
export const WATER_IN_OIL_SALT =
  'A w/o emulsion usually needs 0.5 to 1 % of salt in the water phase, such as magnesium sulfate or sodium chloride: it keeps water from moving between the drops (common practice).';
