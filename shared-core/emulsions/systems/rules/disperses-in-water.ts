import { GRIFFIN_1949 } from '../../sources';
import { dispersesInWater } from '../character';
import { NEUTRAL, type SystemRule } from '../system';

export const oneDisperses: SystemRule = {
  id: 'disperses-in-water',
  name: 'One disperses in water',
  says: 'An o/w emulsion needs one emulsifier at least that disperses in water: HLB 10 or more, or a charge.',
  weight: 1,
  source: GRIFFIN_1949,
  judge({ emulsifiers }, { emulsionType }) {
    if (emulsionType === 'w/o') return NEUTRAL;
    if (emulsifiers.some(({ facts }) => dispersesInWater(facts) !== false)) return NEUTRAL;
    return {
      verdict: 'refuses',
      why: 'None of its emulsifiers disperses in water (HLB 10 or more, or a charge).',
    };
  },
};
