import { COMMON_PRACTICE } from '../working/working';
import type { CheckRule } from './check';
import { namesOf } from './facts';

/** Below this share a line of a 1 kg batch weighs less than 0.1 g, ppm of the formula. */
const SMALL_PPM = 100;

/** A share so small that a bench balance cannot weigh it well. */
export const smallLines: CheckRule = {
  id: 'small-lines',
  name: 'Lines that can be weighed',
  judge({ used }) {
    const small = used.filter((line) => line.ppm < SMALL_PPM);
    if (small.length === 0) return [];
    return [
      {
        ruleId: 'small-lines',
        severity: 'note',
        title: `Less than 0.01 %: ${namesOf(small)}`,
        lines: small.map((line) => line.lineId),
        advice:
          'In a batch of 1 kg that is less than 0.1 g, which rounding can double or lose. Weigh it as a premix in a part of the water or oil; the batch plan computes one.',
        source: COMMON_PRACTICE,
      },
    ];
  },
};
