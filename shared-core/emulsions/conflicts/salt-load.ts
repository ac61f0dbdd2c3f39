import { WHOLE_PPM } from '../../quantities/share';
import type { Dose } from './charge-bearers';
import { isElectrolyte, isSalt } from './recognise';

/** Up to this all salts together thin little, ppm of the formula. Common practice, no source. */
export const SALT_LOAD_PPM = 1_000;

/**
 * How much salt a line brings, ppm of the formula: the salts in its composition, or the whole of what is recorded as an
 * electrolyte and names none. At the lower or the upper end of the supplier's ranges, whichever is the worse case.
 */
export function saltPpm({ material, ppm }: Pick<Dose, 'material' | 'ppm'>, end: 'least' | 'most'): number {
  const salts = material.composition.filter((part) => isSalt(part.inci));
  if (salts.length === 0) return isElectrolyte(material) ? ppm : 0;
  const share = salts.reduce((sum, part) => sum + (end === 'least' ? part.lowPpm : part.highPpm), 0);
  return (ppm * Math.min(share, WHOLE_PPM)) / WHOLE_PPM;
}
