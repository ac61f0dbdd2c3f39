import { COMMON_PRACTICE } from '../../../working/working';
import { NEUTRAL, type SystemRule } from '../system';

export const waxyWithLiquid: SystemRule = {
  id: 'waxy-with-liquid',
  name: 'W/o: waxy with liquid',
  says: 'A w/o emulsion wants a waxy and a liquid emulsifier of low HLB.',
  weight: 2.5,
  source: COMMON_PRACTICE,
  judge({ emulsifiers }, { emulsionType }) {
    if (emulsionType !== 'w/o') return NEUTRAL;
    const characters = new Set(emulsifiers.map(({ facts }) => facts.character));
    if (characters.has('waxy') && characters.has('liquid')) {
      return { verdict: 'for', strength: 1, why: 'It holds a waxy and a liquid emulsifier.' };
    }
    if (emulsifiers.some(({ facts }) => facts.polymeric)) return NEUTRAL;
    return { verdict: 'against', strength: 1, why: 'It lacks a waxy or a liquid partner.' };
  },
};
