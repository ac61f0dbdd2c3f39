import type { Row } from './lp-text';

/**
 * Holds a material's share between its ends where it is taken, and at zero where it is not: least · y ≤ x ≤ most · y.
 *
 * @param x name of the share, in %; `y` of the choice, 0 or 1
 */
export function useRows({ x, y }: { x: string; y: string }, ends: { least: number; most: number }): Row[] {
  const row = (end: number, sense: Row['sense']): Row => ({
    demand: 'link',
    terms: [
      [1, x],
      [-end, y],
    ],
    sense,
    rhs: 0,
  });
  return [row(ends.most, '<='), row(ends.least, '>=')];
}
