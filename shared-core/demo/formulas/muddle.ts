import type { DemoFormula } from '../build-formula';
import { HOT_PHASES } from './bench-phrases';

/** The code of the formula that is wrong on purpose: every other one of the demonstration passes its checks. */
export const MUDDLE_CODE = 'T-001';

/** An exercise: a cream in which more than twenty things are wrong, each to be mended by what the checks say. */
export const MUDDLE: DemoFormula = {
  code: MUDDLE_CODE,
  name: 'Thistlebog Muddle',
  productType: 'o/w emulsion',
  use: 'leave-on',
  market: { kind: 'face cream', regions: ['EU'] },
  purpose: 'Wrong on purpose, to learn by: correct it until no check finds anything',
  phases: [
    {
      title: 'Oil phase',
      at: 70,
      lines: [
        ['O-203', 14],
        ['W-203', 2],
        ['N-205', 0.8],
        ['V-109', 0.5],
        ['F-101', 0.8],
      ],
    },
    {
      title: 'Water phase',
      at: 70,
      lines: [
        ['H-100', 58],
        ['T-101', 0.4],
        ['U-202', 0.3],
        ['C-302', 1],
        ['R-103', 1.5],
        ['V-107', 3],
        ['V-110', 12],
        ['V-108', 0.005],
      ],
    },
    {
      title: 'Cool-down',
      at: 40,
      lines: [
        ['W-103', 1.5],
        ['O-202', 1],
      ],
    },
  ],
  steps: [
    {
      phases: 'AB',
      instruction: 'Heat A and B, add A to B under the homogeniser.',
      at: 70,
      rpm: 3000,
      minutes: 5,
      lookFor: 'An even milk; this one will not be',
      caution: HOT_PHASES,
    },
    {
      phases: 'C',
      instruction: 'Cool with slow stirring, add C.',
      at: 40,
      rpm: 120,
      minutes: 20,
      lookFor: 'No grains, no oil ring',
    },
  ],
  target: {
    appearance: 'White cream',
    colour: 'White',
    odour: 'Fresh linen',
    phLow: 6.8,
    phHigh: 7.4,
    viscosityLow: 10_000,
    viscosityHigh: 20_000,
    viscosityMethod: 'Rotational, spindle 6, 20 rpm, 25 °C, after a day',
    densityLow: 0.96,
    densityHigh: 1,
  },
  notes: 'An exercise for a class: nobody should make it as it stands.',
};
