import { lawOfFormula, type FindMaterial, type LawfulContent } from './in-formula';
import { isBroken, type Judged } from './judged';
import type { Law } from './law';
import type { Laws } from './law-changes';

/** What the law of two days says of one formula. */
export interface ThenAndNow {
  /** Broken on both days. */
  both: Judged[];
  /** Broken on the first day alone: the limit ended or was eased since. */
  onlyThen: Judged[];
  /** Broken on the second day alone: the limit began or was made stricter since. */
  onlyNow: Judged[];
  /** Kept on the second day, and to be broken once a limit begins that is known already. */
  coming: Judged[];
}

const keyOf = ({ limit, region, counted }: Judged): string =>
  [limit.id, region, ...counted.map(({ substance }) => substance.id)].join(' ');

/**
 * Judges a recorded formula by the law of its day and of another: each limit as the table had it, by its dates.
 *
 * @param find the materials as they were recorded
 * @param laws as the library held it on each of the days
 * @param then the day of the version, ISO 8601
 * @param now the other day, later as a rule
 */
export function lawThenAndNow(
  content: LawfulContent,
  find: FindMaterial,
  laws: Laws,
  { then, now }: { then: string; now: string },
): ThenAndNow {
  const broken = (law: Law, onDay: string): Judged[] =>
    lawOfFormula(content, find, law, onDay).judged.filter(isBroken);
  const [before, after] = [broken(laws.then, then), broken(laws.now, now)];
  const inForce = (of: readonly Judged[]): Judged[] => of.filter(({ time }) => time === 'in force');
  const keysThen = new Set(inForce(before).map(keyOf));
  const keysNow = new Set(inForce(after).map(keyOf));
  return {
    both: inForce(after).filter((one) => keysThen.has(keyOf(one))),
    onlyThen: inForce(before).filter((one) => !keysNow.has(keyOf(one))),
    onlyNow: inForce(after).filter((one) => !keysThen.has(keyOf(one))),
    coming: after.filter(({ time }) => time === 'coming'),
  };
}
