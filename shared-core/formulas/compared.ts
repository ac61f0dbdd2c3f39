import { formatNumber, type Region } from '../locale/numbers';
import type { Difference, DifferenceArea } from './difference';
import type { FormulaContent } from './formula';

/** Two states of a formula, with what is needed to tell them apart in words. */
export interface Compared {
  before: FormulaContent;
  after: FormulaContent;
  nameOf: (materialId: string) => string;
  region: Region;
}

/** Adds a difference between two texts where there is one. */
export function pushText(
  found: Difference[],
  area: DifferenceArea,
  what: string,
  before: string,
  after: string,
): void {
  if (before === after) return;
  const kind = before === '' ? 'added' : after === '' ? 'removed' : 'changed';
  found.push({ area, kind, what, before, after });
}

/** A number with its unit; empty where there is none. */
export function withUnit(value: number | null, unit: string, region: Region): string {
  return value === null ? '' : `${formatNumber(value, region)}${unit}`;
}
