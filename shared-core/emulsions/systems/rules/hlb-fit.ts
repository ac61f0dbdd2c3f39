import { hlbGap, NOTE_BEYOND, WARN_BEYOND } from '../../hlb-band';
import { GRIFFIN_1949 } from '../../sources';
import { demandBand } from '../oil-phase';
import { NEUTRAL, type SystemRule } from '../system';

/** The middle of the offered band counts too: of two systems within the spread the better centred one leads. */
function centring(value: number, low: number, high: number): number {
  return 1 - Math.min(1, Math.max(low - value, value - high, 0));
}

export const hlbFit: SystemRule = {
  id: 'hlb-fit',
  name: 'Offered HLB meets the required',
  says: 'The mean HLB of the non-ionics should meet that of the oil phase, a fatty alcohol added for body included.',
  weight: 3,
  source: GRIFFIN_1949,
  judge({ offered }, { required }) {
    const wanted = demandBand(required);
    if (offered === null || wanted === null) return NEUTRAL;
    const gap = Math.abs(hlbGap(offered, wanted));
    const why = `It offers HLB ${offered.value.toFixed(1)}, the oils require ${wanted.value.toFixed(1)}.`;
    if (gap > WARN_BEYOND) return { verdict: 'refuses', why };
    if (gap > NOTE_BEYOND) return { verdict: 'against', strength: gap / WARN_BEYOND, why };
    return { verdict: 'for', strength: centring(offered.value, wanted.low, wanted.high), why };
  },
};
