import type { Shape } from '../record/place';

/** A figure, a usage range or a limit is one fact with its source; a document goes by its bytes. */
export const MATERIAL_SHAPE: Shape = {
  keys: { documents: 'sha256' },
  whole: (path) => /^(figures\.[^.]+|usage|legalLimit)$/.test(path),
};
