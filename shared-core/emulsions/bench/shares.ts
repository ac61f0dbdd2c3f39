import { ppmFromPercent, percentFromPpm } from '../../quantities/share';
import { badInput, between } from '../../working/inputs';

/** The sum of levels, % of the formula, without binary noise. */
export function totalPercent(levels: readonly number[]): number {
  return percentFromPpm(levels.reduce((sum, level) => sum + ppmFromPercent(level), 0));
}

/**
 * Levels after one of them is given another share of their total. The total stays; the others keep their proportions
 * to each other, or share alike where all of them are zero.
 *
 * @param levels % of the formula
 * @param share of the total, 0 to 100 %; the only one of a list keeps the whole
 * @throws Problem `invalid-input` for a share out of bounds
 */
export function withShare(levels: readonly number[], index: number, share: number): number[] {
  between(share, 0, 100, 'The share', '%');
  if (levels.length < 2) return [...levels];
  const total = levels.reduce((sum, level) => sum + level, 0);
  const own = (total * share) / 100;
  // At 100 % rounding can leave less than nothing.
  const rest = Math.max(0, total - own);
  // Summed, not subtracted: beside one large level, small ones would drown in the difference.
  const others = levels.reduce((sum, level, at) => (at === index ? sum : sum + level), 0);
  return levels.map((level, at) => {
    if (at === index) return own;
    return others > 0 ? (level / others) * rest : rest / (levels.length - 1);
  });
}

/**
 * Levels scaled to another total; alike where all are zero.
 *
 * @throws Problem `invalid-input` for a total out of bounds
 */
export function withTotal(levels: readonly number[], total: number): number[] {
  between(total, 0, 100, 'The total of the emulsifiers', '%');
  const before = levels.reduce((sum, level) => sum + level, 0);
  return levels.map((level) => (before > 0 ? (level / before) * total : total / levels.length));
}

/** Each level's share of the total, 0 to 100 %; zeros where the total is zero. */
export function sharesOf(levels: readonly number[]): number[] {
  const total = levels.reduce((sum, level) => sum + level, 0);
  return levels.map((level) => (total > 0 ? (level / total) * 100 : 0));
}

/** Refuses emulsifiers that together pass what a formula can hold. */
export function refuseOverfull(levels: readonly number[]): void {
  const total = totalPercent(levels);
  if (total > 100)
    throw badInput(
      `The emulsifiers come to ${total} % of the formula.`,
      'Lower their levels: together with the oils and the water they must fit into 100 %.',
      'emulsifiers',
    );
}

/** Refuses lines that together pass what a formula can hold, saying by how much. `what` begins the sentence. */
export function refuseBeyondWhole(what: string, levels: readonly number[], field: string): void {
  const total = totalPercent(levels);
  if (total <= 100) return;
  throw badInput(
    `${what} to ${total} % of the formula, ${totalPercent([total, -100])} % more than it can hold.`,
    'Lower their levels: oils, emulsifiers, water and all else must fit into 100 %.',
    field,
  );
}
