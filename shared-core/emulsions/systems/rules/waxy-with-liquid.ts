import { COMMON_PRACTICE } from '../../../working/working';
import { holdsFilmAlone, missingInWaterInOil } from '../character';
import { NEUTRAL, type SystemRule } from '../system';

export const waxyWithLiquid: SystemRule = {
  id: 'waxy-with-liquid',
  name: 'W/o: waxy with liquid',
  says: 'A w/o emulsion needs a waxy and a liquid emulsifier of low HLB, or a polymeric one.',
  weight: 2.5,
  source: COMMON_PRACTICE,
  judge({ emulsifiers }, { emulsionType }) {
    if (emulsionType !== 'w/o') return NEUTRAL;
    const members = emulsifiers.map(({ facts }) => facts);
    const missing = missingInWaterInOil(members);
    if (missing.length > 0) {
      const why = `It lacks a ${missing.join(' and a ')} partner of low HLB.`;
      return { verdict: 'against', strength: 1, why, warns: true };
    }
    const both = missingInWaterInOil(members.filter((member) => !holdsFilmAlone(member)));
    const characters = new Set(members.map((member) => member.character));
    if (both.length > 0 && !(characters.has('waxy') && characters.has('liquid'))) return NEUTRAL;
    return { verdict: 'for', strength: 1, why: 'It holds a waxy and a liquid emulsifier.' };
  },
};
