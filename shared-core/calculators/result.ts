import { worked } from '../working/one-step';
import { show } from '../working/show';
import type { Worked } from '../working/working';
import type { Result } from './calculated';

/** A figure that came out, by a working; in a form's own unit where the law knows none. */
export function one(key: string, label: string, from: Worked, unit = from.unit): Result {
  const steps = from.steps.map((step, index) => (index === from.steps.length - 1 ? { ...step, unit } : step));
  return { key, label, worked: { ...from, unit, steps }, digits: { min: 0, max: 3 }, says: '' };
}

/** The same figure in a unit that a reader can picture. */
export function inUnit(from: Worked, factor: number, says: string, unit: string): Worked {
  const step = { says, shows: `${show(from.value)} × ${show(factor)}`, result: from.value * factor, unit };
  return worked([...from.steps, step], from.sources, from.cautions);
}
