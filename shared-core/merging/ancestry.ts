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

/** The states that a record has been in, one after another, the present one last: a state that it came back to comes twice. */
export interface Orders {
  ours: readonly string[];
  theirs: readonly string[];
}

/** What was taken from another library is entered once as a state that was left there, and is the present one too. */
const inTurn = (order: readonly string[]): string[] => order.filter((hash, at) => hash !== order[at - 1]);

/** Whether one order holds all of another, one after the other. */
function holds(whole: readonly string[], part: readonly string[]): boolean {
  let at = 0;
  for (const hash of whole) if (hash === part[at]) at += 1;
  return at === part.length;
}

type Newer = 'ours newer' | 'theirs newer';

/** Whoever is where both had been first has gone back to it from where the other is still. */
function wentBack(order: readonly string[], ours: string, theirs: string): Newer {
  return order.indexOf(ours) < order.indexOf(theirs) ? 'ours newer' : 'theirs newer';
}

/** Who went on from where the other is; null where the orders do not tell. */
function laterOf({ ours, theirs }: Orders): Newer | null {
  const [here, there] = [inTurn(ours), inTurn(theirs)];
  const [oursHolds, theirsHolds] = [holds(here, there), holds(there, here)];
  if (oursHolds !== theirsHolds) return oursHolds ? 'ours newer' : 'theirs newer';
  const presents = [here.at(-1) ?? '', there.at(-1) ?? ''] as const;
  if (![here, there].every((order) => presents.every((hash) => order.includes(hash)))) return null;
  const [told, toldThere] = [wentBack(here, ...presents), wentBack(there, ...presents)];
  return told === toldThere ? told : null;
}

/**
 * How one record stands in two libraries, by the hashes of its states: theirs is in our past, ours in theirs, or both
 * went on from a common one. Where each is in the other's past, somebody has gone back to an earlier state: their orders
 * tell who; else whoever knows all that the other knows is newer.
 * @param orders asked for only where it takes them to tell
 */
export function ancestryOf(ours: OurChain, theirs: TheirChain, orders?: () => Orders): Ancestry {
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
    const later = orders && laterOf(orders());
    if (later) return { relation: later, base: null };
    const oursKnowsAll = theirs.past.every((hash) => ourPast.has(hash) || present.includes(hash));
    return { relation: oursKnowsAll ? 'ours newer' : 'theirs newer', base: null };
  }
  if (theirsIsPast) return { relation: 'ours newer', base: null };
  if (oursIsPast) return { relation: 'theirs newer', base: present[0]! };
  const base = [...ours.past].reverse().find((hash) => theirPast.has(hash));
  return { relation: 'both changed', base: base ?? null };
}
