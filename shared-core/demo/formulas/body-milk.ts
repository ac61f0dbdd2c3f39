import type { DemoFormula } from '../build-formula';
import { DUST, HOT_PHASES, MICROBIOLOGY, NEAT_PRESERVATIVE } from './bench-phrases';

/** A thin o/w milk on polysorbate and sorbitan ester, preserved by organic acids. */
export const BODY_MILK: DemoFormula = {
  code: 'F-002',
  name: 'Meadow Body Milk',
  productType: 'o/w emulsion',
  use: 'leave-on',
  purpose: 'A pourable body milk that spreads fast and leaves little behind',
  phases: [
    {
      title: 'Oil phase',
      at: 75,
      lines: [
        ['O-103', 4],
        ['O-106', 3],
        ['O-201', 2],
        ['W-101', 1],
        ['N-207', 1.8, 'High-HLB half of the pair'],
        ['N-201', 1.2, 'Low-HLB half of the pair'],
      ],
    },
    {
      title: 'Water phase',
      at: 75,
      lines: [
        ['H-100', 'q.s.'],
        ['H-101', 4],
        ['H-102', 3],
        ['T-102', 0.35],
        ['R-103', 0.4],
        ['R-104', 0.25],
        ['R-302', 0.2],
      ],
    },
    {
      title: 'Cool-down',
      at: 40,
      lines: [
        ['V-103', 1],
        ['V-101', 0.2],
        ['F-102', 0.3],
        ['C-101', 0.3, 'As a 20 % solution, to pH 5.0'],
      ],
    },
  ],
  steps: [
    {
      phases: 'B',
      instruction: 'Wet the xanthan gum with glycerin and propanediol, add the water, then the salts; heat.',
      at: 75,
      rpm: 400,
      minutes: 15,
      lookFor: 'Even, no fish eyes',
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
      rpm: 4000,
      minutes: 5,
      lookFor: 'Bluish-white film on the glass: fine droplets',
      caution: HOT_PHASES,
    },
    {
      phases: 'AB',
      instruction: 'Cool with stirring.',
      at: 40,
      rpm: 200,
      minutes: 30,
      lookFor: 'No cream line',
    },
    {
      phases: 'C',
      instruction: 'Add C; bring the pH to 5.0 with the citric acid solution. Make up the water lost.',
      at: 38,
      rpm: 200,
      minutes: 10,
      lookFor: 'pH 4.8 to 5.2, or the acids do not preserve',
      caution: NEAT_PRESERVATIVE,
    },
  ],
  target: {
    appearance: 'White pourable milk',
    odour: 'Pear',
    colour: 'White',
    phLow: 4.8,
    phHigh: 5.2,
    viscosityLow: 2_000,
    viscosityHigh: 5_000,
    viscosityMethod: 'Rotational viscometer, spindle 3, 20 rpm, 25 °C, after 24 h',
    densityLow: 0.98,
    densityHigh: 1.01,
    microbiology: MICROBIOLOGY,
  },
  notes:
    'Required HLB of the oil phase about 10.9. Benzoate and sorbate work as acids only: hold the pH at or below 5.2.',
};
