import type { Shape } from '../record/place';

/** A trial goes by its label; which is chosen is an index, and its lines were planned together. */
export const SERIES_SHAPE: Shape = { keys: { trials: 'label' } };
