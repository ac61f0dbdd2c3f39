import type { DemoFormula } from '../build-formula';
import { DUST, HOT_PHASES, MICROBIOLOGY, NEAT_PRESERVATIVE, VISCOMETER } from './bench-phrases';

/** An o/w cream without oxyethylene: a glucose ester with a little sucrose ester, for low-HLB oils. */
export const SUGAR_ESTER_CREAM: DemoFormula = {
  code: 'F-011',
  name: 'Orchard Night Cream',
  productType: 'o/w emulsion',
  use: 'leave-on',
  purpose: 'A night cream of seed oils on sugar esters, without oxyethylene',
  phases: [
    {
      title: 'Oil phase',
      at: 75,
      lines: [
        ['O-203', 6],
        ['O-105', 4],
        ['W-301', 3],
        ['W-101', 2],
        ['N-219', 2.7, 'Low-HLB half of the pair'],
        ['N-216', 0.4, 'High-HLB half of the pair'],
      ],
    },
    {
      title: 'Water phase',
      at: 75,
      lines: [
        ['H-100', 'q.s.'],
        ['H-101', 5],
        ['H-102', 2],
        ['T-105', 0.3],
        ['R-103', 0.4],
        ['R-104', 0.25],
        ['R-302', 0.2],
      ],
    },
    {
      title: 'Cool-down',
      at: 40,
      lines: [
        ['V-201', 2],
        ['V-101', 0.3],
        ['F-103', 0.2],
        ['C-102', 0.35, 'To pH 5.0'],
      ],
    },
  ],
  steps: [
    {
      phases: 'B',
      instruction: 'Wet the sclerotium gum with glycerin and propanediol, add water and salts; heat.',
      at: 75,
      rpm: 400,
      minutes: 20,
      lookFor: 'No lumps',
      caution: DUST,
    },
    {
      phases: 'A',
      instruction: 'Melt A together; the sugar esters dissolve last.',
      at: 75,
      rpm: 150,
      minutes: 20,
      lookFor: 'No grains on the bottom',
      caution: HOT_PHASES,
    },
    {
      phases: 'AB',
      instruction: 'Add A to B under the homogeniser.',
      at: 72,
      rpm: 3500,
      minutes: 6,
      lookFor: 'Fine and white',
      caution: HOT_PHASES,
    },
    {
      phases: 'AB',
      instruction: 'Cool with slow stirring.',
      at: 40,
      rpm: 120,
      minutes: 40,
      lookFor: 'Body from 45 °C',
    },
    {
      phases: 'C',
      instruction: 'Add C; bring the pH to 5.0 with the lactic acid, diluted. Make up the water lost.',
      at: 38,
      rpm: 150,
      minutes: 10,
      lookFor: 'pH 4.8 to 5.2',
      caution: NEAT_PRESERVATIVE,
    },
  ],
  target: {
    appearance: 'Soft ivory cream',
    odour: 'Lavender',
    colour: 'Ivory',
    phLow: 4.8,
    phHigh: 5.2,
    viscosityLow: 10_000,
    viscosityHigh: 20_000,
    viscosityMethod: VISCOMETER,
    densityLow: 0.96,
    densityHigh: 1,
    microbiology: MICROBIOLOGY,
  },
  notes:
    'Required HLB of the oil phase about 7.7: seed oils ask for little. Calendula may sensitise some people.',
};
