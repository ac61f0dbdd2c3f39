import { isChelator } from '../emulsions/conflicts/recognise';
import { COMMON_PRACTICE } from '../working/working';
import type { CheckRule } from './check';

/** A chelator binds the traces of metal that turn oils rancid, colours off and preservatives weak. A note only. */
export const chelator: CheckRule = {
  id: 'chelator',
  name: 'A chelator beside water',
  tells: 'there is water and no chelator',
  judge({ lines, watery }) {
    if (watery.length === 0 || lines.some((line) => line.ppm > 0 && isChelator(line.material))) return [];
    return [
      {
        ruleId: 'chelator',
        severity: 'note',
        title: 'Water and no chelator',
        lines: watery.map((line) => line.lineId),
        advice:
          'A little chelator protects oils, colour and scent from traces of metal, and helps many preservatives.',
        source: COMMON_PRACTICE,
      },
    ];
  },
};
