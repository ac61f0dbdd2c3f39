import { dispersesInWater, pairingFacts } from '../emulsions/systems/character';
import { GRIFFIN_1949 } from '../emulsions/sources';
import type { CheckRule } from './check';
import { namesOf } from './facts';

/** An o/w emulsion needs one emulsifier at least that the water takes up. */
export const oneDisperses: CheckRule = {
  id: 'disperses-in-water',
  name: 'O/w: one emulsifier disperses in water',
  tells: 'no emulsifier of an o/w emulsion disperses in water',
  judge({ emulsionType, emulsifiers }) {
    if (emulsionType === null || emulsionType === 'w/o' || emulsifiers.length === 0) return [];
    if (emulsifiers.some(({ material }) => dispersesInWater(pairingFacts(material)) !== false)) return [];
    return [
      {
        ruleId: 'disperses-in-water',
        severity: 'warn',
        title: `No emulsifier that disperses in water: ${namesOf(emulsifiers)}`,
        lines: emulsifiers.map((line) => line.lineId),
        advice:
          'Add one of HLB 10 or more, or one with a charge: without it the emulsion is likely to turn out w/o, or to cream at once.',
        source: GRIFFIN_1949,
      },
    ];
  },
};
