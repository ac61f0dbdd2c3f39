import type { InciPart } from '../../materials/composition';
import { WHOLE_PPM } from '../../quantities/share';
import { namesWithin } from '../../substances/names';
import type { Dose } from './charge-bearers';
import { isElectrolyte, isSalt } from './recognise';

/** Up to this all salts together thin little, ppm of the formula. Common practice, no source. */
export const SALT_LOAD_PPM = 1_000;

/**
 * How much salt a line brings, ppm of the formula: the salts in its composition, or the whole of what is recorded as an
 * electrolyte and names none. At the lower or the upper end of the supplier's ranges, whichever is the worse case.
 */
export function saltPpm({ material, ppm }: Pick<Dose, 'material' | 'ppm'>, end: 'least' | 'most'): number {
  const salts = material.composition.filter((part) => namesWithin(part.inci).some(isSalt));
  if (salts.length === 0) return isElectrolyte(material) ? ppm : 0;
  // Of names that a supplier wrote into one each may be none or all of it.
  const least = ({ inci, lowPpm }: InciPart): number => (namesWithin(inci).length > 1 ? 0 : lowPpm);
  const share = salts.reduce((sum, part) => sum + (end === 'least' ? least(part) : part.highPpm), 0);
  return (ppm * Math.min(share, WHOLE_PPM)) / WHOLE_PPM;
}
