import { isElectrolyte, isSalt } from '../emulsions/conflicts/recognise';
import { WHOLE_PPM } from '../quantities/share';
import type { LineFacts } from './facts';

/**
 * How much salt a line brings, ppm of the formula: the salts in its composition, or the whole of what is recorded as an
 * electrolyte and names none. At the lower or the upper end of the supplier's ranges, whichever is the worse case.
 */
export function saltPpm({ material, ppm }: LineFacts, end: 'least' | 'most'): number {
  const salts = material.composition.filter((part) => isSalt(part.inci));
  if (salts.length === 0) return isElectrolyte(material) ? ppm : 0;
  const share = salts.reduce((sum, part) => sum + (end === 'least' ? part.lowPpm : part.highPpm), 0);
  return (ppm * Math.min(share, WHOLE_PPM)) / WHOLE_PPM;
}
