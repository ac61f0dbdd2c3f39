import type { Substance } from '../substances/substance';
import type { Limit } from './limit';

/** What a library knows of substances and of the limits on them. */
export interface Law {
  substances: readonly Substance[];
  limits: readonly Limit[];
}

/** A library that holds neither. */
export const NO_LAW: Law = { substances: [], limits: [] };

/** Stands with everything that Stillroom says of law. */
export const NO_ADVICE =
  'No legal advice: the limits are examples or your own records. The law in force where the product is sold, and a qualified assessor, decide.';
