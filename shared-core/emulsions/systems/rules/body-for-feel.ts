import { COMMON_PRACTICE } from '../../../working/working';
import { bodyExpected, bodyPoints, type SystemRule } from '../system';
import { WANTED_BODY } from '../wish';

export const bodyForFeel: SystemRule = {
  id: 'body-for-feel',
  name: 'Body for the feel',
  says: 'Waxy emulsifiers give body, liquid ones little: creams want the first, milks the second.',
  weight: 2,
  source: COMMON_PRACTICE,
  judge(system, { feel }) {
    const gap = Math.abs(bodyPoints(system) - WANTED_BODY[feel]);
    const why = `It is likely to give ${bodyExpected(system)} body; wished is a ${feel}.`;
    if (gap <= 0.75) return { verdict: 'for', strength: 1 - gap / 1.5, why };
    return { verdict: 'against', strength: Math.min(1, gap / 3), why };
  },
};
