import type { DemoFormula } from '../build-formula';
import { DUST, MICROBIOLOGY, NEAT_BASE, NEAT_PRESERVATIVE, VISCOMETER } from './bench-phrases';

/** A clear carbomer gel neutralised with triethanolamine. */
export const FACIAL_GEL: DemoFormula = {
  code: 'F-010',
  name: 'Clear Pool Facial Gel',
  productType: 'gel',
  use: 'leave-on',
  market: { kind: 'face cream', regions: ['EU'] },
  purpose: 'A clear oil-free gel with niacinamide',
  phases: [
    {
      title: 'Water and carbomer',
      at: 25,
      lines: [
        ['H-100', 'q.s.'],
        ['H-102', 5],
        ['H-101', 4],
        ['V-104', 3],
        ['T-101', 0.5],
        ['R-301', 0.05],
      ],
    },
    {
      title: 'Preserving',
      at: 25,
      lines: [
        ['R-101', 1],
        ['V-103', 2],
      ],
    },
    { title: 'Neutralising', at: 25, lines: [['C-204', 0.7, 'About 1.4 parts to one of carbomer']] },
  ],
  steps: [
    {
      phases: 'A',
      instruction: 'Sift the carbomer on the water and let it swell; dissolve the rest of A in it.',
      at: 25,
      rpm: 500,
      minutes: 45,
      lookFor: 'Hazy, thin, no specks',
      caution: DUST,
    },
    {
      phases: 'B',
      instruction: 'Add B.',
      at: 25,
      rpm: 200,
      minutes: 10,
      lookFor: 'Even',
      caution: NEAT_PRESERVATIVE,
    },
    {
      phases: 'C',
      instruction: 'Add the triethanolamine in portions with slow stirring; measure the pH.',
      at: 25,
      rpm: 80,
      minutes: 15,
      lookFor: 'Clears and thickens; pH 6.0 to 6.8',
      caution: NEAT_BASE,
    },
  ],
  target: {
    appearance: 'Clear gel, few bubbles',
    odour: 'None',
    colour: 'Colourless',
    phLow: 6,
    phHigh: 6.8,
    viscosityLow: 20_000,
    viscosityHigh: 40_000,
    viscosityMethod: VISCOMETER,
    densityLow: 1,
    densityHigh: 1.04,
    microbiology: MICROBIOLOGY,
  },
  notes: 'Keep salts out of it. Deaerate before filling.',
};
