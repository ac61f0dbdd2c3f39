import type { DemoFormula } from '../build-formula';
import { DUST, HOT_PHASES, MICROBIOLOGY, NEAT_PRESERVATIVE, VISCOMETER } from './bench-phrases';

/** A plain o/w cream on a high- and low-HLB non-ionic pair. */
export const DAY_CREAM: DemoFormula = {
  code: 'F-001',
  name: 'Hedgerow Day Cream',
  productType: 'o/w emulsion',
  use: 'leave-on',
  purpose: 'A light daily face cream; the reference formula for the non-ionic pair',
  phases: [
    {
      title: 'Oil phase',
      at: 75,
      lines: [
        ['O-102', 6],
        ['O-203', 4],
        ['O-108', 3],
        ['W-102', 3],
        ['W-301', 2],
        ['N-101', 2.7, 'High-HLB half of the pair'],
        ['N-210', 1.8, 'Low-HLB half of the pair'],
      ],
    },
    {
      title: 'Water phase',
      at: 75,
      lines: [
        ['H-100', 'q.s.'],
        ['H-101', 4],
        ['T-102', 0.2],
        ['V-105', 0.2],
        ['R-301', 0.1],
      ],
    },
    {
      title: 'Cool-down',
      at: 40,
      lines: [
        ['R-101', 1],
        ['V-103', 1],
        ['V-101', 0.3],
        ['F-101', 0.3],
        ['C-101', 0.05, 'As a 20 % solution, to pH 5.5'],
      ],
    },
  ],
  steps: [
    {
      phases: 'B',
      instruction: 'Wet the xanthan gum with the glycerin, add to the water with the rest of B and heat.',
      at: 75,
      rpm: 300,
      minutes: 15,
      lookFor: 'No lumps, allantoin dissolved',
      caution: DUST,
    },
    {
      phases: 'A',
      instruction: 'Melt A together.',
      at: 75,
      rpm: 100,
      minutes: 15,
      lookFor: 'Clear melt, no pellet left',
      caution: HOT_PHASES,
    },
    {
      phases: 'AB',
      instruction: 'Add A to B under the homogeniser.',
      at: 72,
      rpm: 3000,
      minutes: 5,
      lookFor: 'White, even, no oil ring',
      caution: HOT_PHASES,
    },
    {
      phases: 'AB',
      instruction: 'Cool with slow stirring; scrape the wall.',
      at: 40,
      rpm: 120,
      minutes: 40,
      lookFor: 'Thickens from about 50 °C as the gel network forms',
    },
    {
      phases: 'C',
      instruction: 'Add C one by one; adjust the pH last. Make up the water lost.',
      at: 38,
      rpm: 150,
      minutes: 10,
      lookFor: 'Smooth gloss; pH 5.2 to 5.8',
      caution: NEAT_PRESERVATIVE,
    },
  ],
  target: {
    appearance: 'White glossy cream, free of grains',
    odour: 'Fresh linen',
    colour: 'White',
    phLow: 5.2,
    phHigh: 5.8,
    viscosityLow: 14_000,
    viscosityHigh: 24_000,
    viscosityMethod: VISCOMETER,
    densityLow: 0.96,
    densityHigh: 1,
    microbiology: MICROBIOLOGY,
  },
  notes:
    'Required HLB of the oil phase about 10.6; the pair is set to it. Try ±1 HLB in steps of 0.5 at the same total. Viscosity keeps rising for a day.',
};
