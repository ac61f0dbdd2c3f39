import { GRIFFIN_1949 } from '../../sources';
import { NEUTRAL, type SystemRule } from '../system';

/** Beyond this distance from the required HLB (or its sources' spread) a system is refused. */
const FARTHEST = 2.5;

export const hlbFit: SystemRule = {
  id: 'hlb-fit',
  name: 'Offered HLB meets the required',
  says: 'The mean HLB of the non-ionics should meet that of the oil phase.',
  weight: 3,
  source: GRIFFIN_1949,
  judge({ offeredHlb }, { required }) {
    if (offeredHlb === null || required.value === null) return NEUTRAL;
    const outside = Math.max(
      (required.low ?? required.value) - offeredHlb,
      offeredHlb - (required.high ?? required.value),
      0,
    );
    const figures = `offers HLB ${offeredHlb.toFixed(1)}, the oils require ${required.value.toFixed(1)}`;
    if (outside > FARTHEST) return { verdict: 'refuses', why: `It ${figures}.` };
    if (outside > 1) return { verdict: 'against', strength: outside / FARTHEST, why: `It ${figures}.` };
    return { verdict: 'for', strength: 1 - outside, why: `It ${figures}.` };
  },
};
