import { GRIFFIN_1949 } from '../../sources';
import { servesType } from '../character';
import { hasCharge, NEUTRAL, type SystemRule } from '../system';

export const servesTheType: SystemRule = {
  id: 'serves-type',
  name: 'Serves the type of emulsion',
  says: 'At least one emulsifier must serve the emulsion type asked for; a cationic emulsion needs a cationic.',
  weight: 1,
  source: GRIFFIN_1949,
  judge(system, { emulsionType }) {
    if (emulsionType === 'cationic o/w' && !hasCharge(system, 'cationic')) {
      return { verdict: 'refuses', why: 'It holds no cationic.' };
    }
    const wanted = emulsionType === 'w/o' ? 'w/o' : 'o/w';
    const types = system.emulsifiers.map(({ facts }) => facts.material.emulsionType);
    if (!types.some((type) => servesType(type, wanted))) {
      return { verdict: 'refuses', why: `None of its emulsifiers serves ${wanted}.` };
    }
    if (wanted === 'w/o' && types.includes('o/w')) {
      return { verdict: 'against', strength: 1, why: 'An o/w emulsifier works against a w/o emulsion.' };
    }
    return NEUTRAL;
  },
};
