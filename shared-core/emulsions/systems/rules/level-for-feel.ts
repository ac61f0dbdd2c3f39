import { COMMON_PRACTICE } from '../../../working/working';
import { NEUTRAL, type SystemRule } from '../system';
import { USUAL_LEVEL } from '../wish';

export const levelForFeel: SystemRule = {
  id: 'level-for-feel',
  name: 'Level as usual for the feel',
  says: 'More emulsifier than the feel usually takes feels waxy or tacky, costs more, and helps little.',
  weight: 2,
  source: COMMON_PRACTICE,
  judge({ levelPercent }, { feel, levelFrom }) {
    const usual = Math.max(USUAL_LEVEL[feel], levelFrom ?? 0);
    const over = levelPercent / usual - 1;
    if (over <= 0.1) return NEUTRAL;
    return {
      verdict: 'against',
      strength: Math.min(1, over / 0.5),
      why: `Its usage ranges ask for ${levelPercent.toFixed(1)} % in all; a ${feel} usually takes ${usual} %.`,
    };
  },
};
