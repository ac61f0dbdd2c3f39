import { isElectrolyte, isSalt } from '../emulsions/conflicts/recognise';
import { partPpm } from '../materials/composition';
import { WHOLE_PPM } from '../quantities/share';
import type { LineFacts } from './facts';

/**
 * How much salt a line brings, ppm of the formula: the salts in its composition, or the whole of what is recorded as an
 * electrolyte and names none. The middle of a range is taken where the supplier gives one.
 */
export function saltPpm({ material, ppm }: LineFacts): number {
  const salts = material.composition.filter((part) => isSalt(part.inci));
  if (salts.length > 0) return salts.reduce((sum, part) => sum + (ppm * partPpm(part)) / WHOLE_PPM, 0);
  return isElectrolyte(material) ? ppm : 0;
}
