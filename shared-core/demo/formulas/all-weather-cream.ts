import type { DemoFormula } from '../build-formula';
import { DUST, HOT_PHASES, MICROBIOLOGY, NEAT_PRESERVATIVE, VISCOMETER } from './bench-phrases';

/** An o/w cream on an anionic with a non-ionic, for frost and heat alike. */
export const ALL_WEATHER_CREAM: DemoFormula = {
  code: 'F-003',
  name: 'Four Winds Cream',
  productType: 'o/w emulsion',
  use: 'leave-on',
  purpose: 'A face cream that travels: anionic and non-ionic emulsifiers share the work',
  phases: [
    {
      title: 'Oil phase',
      at: 80,
      lines: [
        ['O-104', 6],
        ['O-105', 4],
        ['W-102', 3],
        ['W-301', 2],
        ['O-114', 1],
        ['N-113', 2, 'Non-ionic'],
        ['A-307', 1.5, 'Anionic'],
      ],
    },
    {
      title: 'Water phase',
      at: 80,
      lines: [
        ['H-100', 'q.s.'],
        ['H-101', 5],
        ['T-102', 0.15],
        ['R-301', 0.1],
      ],
    },
    {
      title: 'Cool-down',
      at: 40,
      lines: [
        ['R-101', 1],
        ['V-101', 0.2],
        ['V-106', 0.2],
        ['F-101', 0.2],
        ['C-102', 0.1, 'To pH 6.0'],
      ],
    },
  ],
  steps: [
    {
      phases: 'A',
      instruction: 'Melt A, then disperse the phosphate in it.',
      at: 80,
      rpm: 300,
      minutes: 20,
      lookFor: 'No grain of phosphate left',
      caution: HOT_PHASES,
    },
    {
      phases: 'B',
      instruction: 'Wet the gum with glycerin, add the rest of B and heat.',
      at: 80,
      rpm: 300,
      minutes: 15,
      lookFor: 'No lumps',
      caution: DUST,
    },
    {
      phases: 'AB',
      instruction: 'Add B to A under the homogeniser.',
      at: 78,
      rpm: 3500,
      minutes: 6,
      lookFor: 'Even and white',
      caution: HOT_PHASES,
    },
    {
      phases: 'AB',
      instruction: 'Cool with slow stirring.',
      at: 40,
      rpm: 100,
      minutes: 45,
      lookFor: 'Body from 55 °C',
    },
    {
      phases: 'C',
      instruction: 'Add C one by one, the lactic acid diluted in a little water. Make up the water lost.',
      at: 38,
      rpm: 150,
      minutes: 10,
      lookFor: 'pH 5.7 to 6.3; no loss of body',
      caution: NEAT_PRESERVATIVE,
    },
  ],
  target: {
    appearance: 'White, rich cream',
    odour: 'Faint linen',
    colour: 'White',
    phLow: 5.7,
    phHigh: 6.3,
    viscosityLow: 18_000,
    viscosityHigh: 32_000,
    viscosityMethod: VISCOMETER,
    densityLow: 0.95,
    densityHigh: 1,
    microbiology: MICROBIOLOGY,
  },
  notes:
    'Stability: cycles through freezing for the anionic, 45 °C for the non-ionic. No cationic may come near it. The HLB of the pair says nothing of the phosphate.',
};
