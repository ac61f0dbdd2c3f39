import { COMMON_PRACTICE } from '../working/working';
import type { CheckRule } from './check';
import { namesOf, percentText } from './facts';

/** Below this share a line of a 1 kg batch weighs less than 0.1 g, ppm of the formula. */
const SMALL_PPM = 100;

/** A share so small that a bench balance cannot weigh it well. */
export const smallLines: CheckRule = {
  id: 'small-lines',
  name: 'Lines that can be weighed',
  tells: 'a share is too small to be weighed well',
  threshold: { label: 'Warns below this share', usual: SMALL_PPM, max: 10_000 },
  judge({ used }, threshold) {
    const small = used.filter((line) => line.ppm < threshold);
    if (small.length === 0) return [];
    return [
      {
        ruleId: 'small-lines',
        severity: 'note',
        title: `Less than ${percentText(threshold)}: ${namesOf(small)}`,
        lines: small.map((line) => line.lineId),
        advice:
          'In a small batch that is so little that rounding can double or lose it. Weigh it as a premix in a part of the water or oil; the batch plan computes one.',
        source: COMMON_PRACTICE,
      },
    ];
  },
};
