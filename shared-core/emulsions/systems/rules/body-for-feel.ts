import { COMMON_PRACTICE } from '../../../working/working';
import { bodyExpected, bodyPoints, type SystemRule } from '../system';
import { WANTED_BODY } from '../wish';

export const bodyForFeel: SystemRule = {
  id: 'body-for-feel',
  name: 'Body for the feel',
  says: 'Waxy emulsifiers and fatty alcohol give body, liquid ones little: creams need it, milks do not.',
  weight: 2,
  source: COMMON_PRACTICE,
  judge(system, wish) {
    const gap = Math.abs(bodyPoints(system, wish) - WANTED_BODY[wish.feel]);
    const body = bodyExpected(system, wish);
    const why = `It is likely to give ${body === 'none' ? 'no' : body} body; you asked for a ${wish.feel}.`;
    if (gap <= 0.75) return { verdict: 'for', strength: 1 - gap / 1.5, why };
    return { verdict: 'against', strength: Math.min(1, gap / 3), why };
  },
};
