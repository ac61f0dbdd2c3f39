import { combined, type Side } from './combine';
import { covers, type Place, type Shape } from './place';

/** Something that both sides changed, each in its own way. */
export interface Clash {
  place: Place;
  /** What each state has at the place; undefined where it has nothing there. Of an order, the keys in their order. */
  base: unknown;
  mine: unknown;
  theirs: unknown;
}

export interface Merged<T> {
  /** Both sides' changes; where they clash, what the preferred side has. */
  state: T;
  clashes: Clash[];
}

/**
 * Merges two states over the last one that both had, by field: objects by key, lists of things by id wherever these
 * were moved to, anything else as one value. What one side removed and the other changed is a clash too.
 * @param prefer the side whose value stands at a clash; mine when left out
 */
export function merge<T extends object>(
  base: T,
  mine: T,
  theirs: T,
  shape: Shape = {},
  prefer: (place: Place) => Side = () => 'mine',
): Merged<T> {
  const clashes: Clash[] = [];
  const state = combined(base, mine, theirs, shape, ([place], values, who) => {
    if (who !== 'both' || !place) return who === 'theirs' ? 'theirs' : 'mine';
    clashes.push({ place, ...values });
    return prefer(place);
  });
  return { state, clashes };
}

/** A state with the changes that another one makes to it, but for those at, or within, the places held back. */
export function changedExcept<T extends object>(
  state: T,
  changed: T,
  held: readonly Place[],
  shape: Shape = {},
): T {
  return combined(state, changed, state, shape, (at) =>
    held.some((place) => covers(place, at)) ? 'theirs' : 'mine',
  );
}
