import type { DemoFormula } from '../build-formula';
import { COOLING, HOT_PHASES, MICROBIOLOGY, NEAT_BASE, NEAT_PRESERVATIVE, VISCOMETER } from './bench-phrases';

/** A soap-type cream: part of the stearic acid becomes the emulsifier. */
export const VANISHING_CREAM: DemoFormula = {
  code: 'F-004',
  name: 'Pearl Vanishing Cream',
  productType: 'o/w emulsion',
  use: 'leave-on',
  market: { kind: 'face cream', regions: ['EU'] },
  purpose: 'The old pearly cream, to show neutralising in place',
  phases: [
    {
      title: 'Oil phase',
      at: 75,
      lines: [
        ['A-301', 10, 'About a fifth of it becomes soap'],
        ['O-102', 4],
        ['W-101', 2],
      ],
    },
    {
      title: 'Water phase',
      at: 75,
      lines: [
        ['H-100', 'q.s.'],
        ['H-101', 6],
        ['C-204', 1.2, 'Neutralises about 22 % of the stearic acid'],
        ['R-301', 0.1],
      ],
    },
    {
      title: 'Cool-down',
      at: 40,
      lines: [
        ['R-101', 1],
        ['F-103', 0.2],
      ],
    },
  ],
  steps: [
    {
      phases: 'A',
      instruction: 'Melt A together.',
      at: 75,
      rpm: 100,
      minutes: 15,
      lookFor: 'Clear melt',
      caution: HOT_PHASES,
    },
    {
      phases: 'B',
      instruction: 'Dissolve the EDTA, glycerin and triethanolamine in the water and heat.',
      at: 75,
      rpm: 200,
      minutes: 15,
      lookFor: 'Clear',
      caution: NEAT_BASE,
    },
    {
      phases: 'AB',
      instruction: 'Pour A into B in a thin stream: soap forms as they meet.',
      at: 74,
      rpm: 1500,
      minutes: 5,
      lookFor: 'Turns milky at once; some froth',
      caution: HOT_PHASES,
    },
    {
      phases: 'AB',
      instruction: 'Cool with a slow anchor stirrer, without drawing in air.',
      at: 40,
      rpm: 60,
      minutes: 60,
      lookFor: 'Pearl appears below about 50 °C',
      caution: COOLING,
    },
    {
      phases: 'C',
      instruction: 'Add C. Make up the water lost.',
      at: 38,
      rpm: 80,
      minutes: 10,
      lookFor: 'Even pearl',
      caution: NEAT_PRESERVATIVE,
    },
  ],
  target: {
    appearance: 'Pearly soft cream',
    odour: 'Lavender',
    colour: 'White, pearly',
    phLow: 7.4,
    phHigh: 8.2,
    viscosityLow: 20_000,
    viscosityHigh: 45_000,
    viscosityMethod: VISCOMETER,
    densityLow: 0.94,
    densityHigh: 1,
    microbiology: MICROBIOLOGY,
  },
  notes:
    'Ionic only: it fears frost and acid, and it breaks with any cationic. With acid value 206, 10 g of acid hold 36.7 mmol and 1.2 g of triethanolamine 8.0 mmol: 22 %. Keep nitrosating substances out.',
};
