import { NO_LAW, type Law } from './law';

/** What of a library's substances and limits was otherwise at some moment of the past. */
export interface LawThen {
  /** As they were then: those that were changed or deleted since. */
  was: Law;
  /** Ids of those that came since. */
  since: string[];
}

/** Nothing was otherwise. */
export const SAME_LAW: LawThen = { was: NO_LAW, since: [] };

function asItWas<One extends { id: string }>(
  now: readonly One[],
  was: readonly One[],
  since: ReadonlySet<string>,
): One[] {
  const otherwise = new Set(was.map(({ id }) => id));
  return [...now.filter(({ id }) => !since.has(id) && !otherwise.has(id)), ...was];
}

/** The law as the library held it then, put together from what it holds now and what was otherwise. */
export function lawAsItWas(now: Law, { was, since }: LawThen): Law {
  const came = new Set(since);
  return {
    substances: asItWas(now.substances, was.substances, came),
    limits: asItWas(now.limits, was.limits, came),
  };
}
