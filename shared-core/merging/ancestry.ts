/** How a record of another library stands to ours. */
export const RELATIONS = [
  'new',
  'deleted here',
  'theirs newer',
  'both changed',
  'ours newer',
  'same',
  'only here',
] as const;
export type Relation = (typeof RELATIONS)[number];

/**
 * The states of a record on our side by their hashes, oldest first; `present` is null where it was deleted. The present
 * has a second hash where it is also known without what is withheld of it.
 */
export interface OurChain {
  past: readonly string[];
  present: readonly string[] | null;
}

/** The same on the other side: what is withheld of a state gives it a hash of its own beside its true one. */
export interface TheirChain {
  past: readonly string[];
  present: readonly string[];
}

export interface Ancestry {
  relation: Exclude<Relation, 'only here'>;
  /** The hash of the last state that both have been in; null where none is known, or none is asked for. */
  base: string | null;
}

/**
 * How one record stands in two libraries, by the hashes of its states: theirs is in our past, ours in theirs, or both
 * went on from a common one. Where each is in the other's past, whoever knows all that the other knows is newer.
 */
export function ancestryOf(ours: OurChain, theirs: TheirChain): Ancestry {
  const ourPast = new Set(ours.past);
  const theirsIsPast = theirs.present.some((hash) => ourPast.has(hash));
  if (ours.present === null)
    return {
      relation: ourPast.size === 0 ? 'new' : 'deleted here',
      base: theirsIsPast ? theirs.present[0]! : null,
    };
  const present = ours.present;
  if (theirs.present.some((hash) => present.includes(hash))) return { relation: 'same', base: present[0]! };
  const theirPast = new Set(theirs.past);
  const oursIsPast = present.some((hash) => theirPast.has(hash));
  if (theirsIsPast && oursIsPast) {
    const oursKnowsAll = theirs.past.every((hash) => ourPast.has(hash) || present.includes(hash));
    return { relation: oursKnowsAll ? 'ours newer' : 'theirs newer', base: null };
  }
  if (theirsIsPast) return { relation: 'ours newer', base: null };
  if (oursIsPast) return { relation: 'theirs newer', base: present[0]! };
  const base = [...ours.past].reverse().find((hash) => theirPast.has(hash));
  return { relation: 'both changed', base: base ?? null };
}
