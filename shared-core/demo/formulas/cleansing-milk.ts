import type { DemoFormula } from '../build-formula';
import { DUST, HOT_PHASES, MICROBIOLOGY, NEAT_PRESERVATIVE } from './bench-phrases';

/** A rinse-off cleansing milk on a pair of stearyl ethoxylates. */
export const CLEANSING_MILK: DemoFormula = {
  code: 'F-008',
  name: 'Evening Cleansing Milk',
  productType: 'o/w emulsion',
  use: 'rinse-off',
  purpose: 'A make-up-removing milk, rinsed or wiped off',
  phases: [
    {
      title: 'Oil phase',
      at: 75,
      lines: [
        ['O-203', 8],
        ['O-102', 6],
        ['W-101', 1.5],
        ['N-106', 2.25, 'Low-HLB half of the pair'],
        ['N-107', 1.75, 'High-HLB half of the pair'],
      ],
    },
    {
      title: 'Water phase',
      at: 75,
      lines: [
        ['H-100', 'q.s.'],
        ['H-101', 5],
        ['T-102', 0.3],
        ['R-103', 0.45],
        ['R-104', 0.3],
        ['R-302', 0.2],
      ],
    },
    {
      title: 'Cool-down',
      at: 40,
      lines: [
        ['V-103', 0.5],
        ['V-101', 0.3],
        ['F-102', 0.2],
        ['C-101', 0.3, 'As a 20 % solution, to pH 5.0'],
      ],
    },
  ],
  steps: [
    {
      phases: 'B',
      instruction: 'Wet the gum with glycerin, add water and salts; heat.',
      at: 75,
      rpm: 300,
      minutes: 15,
      lookFor: 'No lumps',
      caution: DUST,
    },
    {
      phases: 'A',
      instruction: 'Melt A together.',
      at: 75,
      rpm: 100,
      minutes: 10,
      lookFor: 'Clear melt',
      caution: HOT_PHASES,
    },
    {
      phases: 'AB',
      instruction: 'Add A to B under the homogeniser.',
      at: 72,
      rpm: 3000,
      minutes: 5,
      lookFor: 'Even and white',
      caution: HOT_PHASES,
    },
    { phases: 'AB', instruction: 'Cool with stirring.', at: 40, rpm: 150, minutes: 35, lookFor: 'Pourable' },
    {
      phases: 'C',
      instruction: 'Add C; adjust the pH last. Make up the water lost.',
      at: 38,
      rpm: 150,
      minutes: 10,
      lookFor: 'pH 4.8 to 5.2',
      caution: NEAT_PRESERVATIVE,
    },
  ],
  target: {
    appearance: 'White, thick milk',
    odour: 'Pear, faint',
    colour: 'White',
    phLow: 4.8,
    phHigh: 5.2,
    viscosityLow: 4_000,
    viscosityHigh: 9_000,
    viscosityMethod: 'Rotational viscometer, spindle 4, 20 rpm, 25 °C, after 24 h',
    densityLow: 0.97,
    densityHigh: 1,
    microbiology: MICROBIOLOGY,
  },
  notes: 'Required HLB of the oil phase about 9.5.',
};
