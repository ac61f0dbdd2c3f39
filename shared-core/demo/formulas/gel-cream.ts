import type { DemoFormula } from '../build-formula';
import { DUST, MICROBIOLOGY, NEAT_BASE, NEAT_PRESERVATIVE, VISCOMETER } from './bench-phrases';

/** A cold-made gel-cream on a polymeric emulsifier with carbomer. */
export const GEL_CREAM: DemoFormula = {
  code: 'F-007',
  name: 'Brook Gel-Cream',
  productType: 'o/w emulsion',
  use: 'leave-on',
  market: { kind: 'face cream', regions: ['EU'] },
  purpose: 'A fresh gel-cream, made cold, that breaks on the skin',
  phases: [
    {
      title: 'Water and polymers',
      at: 25,
      lines: [
        ['H-100', 'q.s.'],
        ['H-101', 4],
        ['H-103', 3],
        ['P-601', 0.25],
        ['T-101', 0.2],
        ['R-301', 0.05],
      ],
    },
    {
      title: 'Oils',
      at: 25,
      lines: [
        ['O-104', 5],
        ['O-108', 3],
        ['O-114', 2],
        ['V-101', 0.2],
      ],
    },
    {
      title: 'Neutralising',
      at: 25,
      lines: [['C-202', 1.8, '0.4 part of sodium hydroxide to one of polymer']],
    },
    {
      title: 'Last additions',
      at: 25,
      lines: [
        ['R-101', 1],
        ['V-103', 1],
        ['F-101', 0.2],
      ],
    },
  ],
  steps: [
    {
      phases: 'A',
      instruction: 'Sift both polymers on the water and let them swell; then add the rest of A.',
      at: 25,
      rpm: 500,
      minutes: 40,
      lookFor: 'Thin, hazy, no white specks',
      caution: DUST,
    },
    {
      phases: 'AB',
      instruction: 'Add the mixed oils B.',
      at: 25,
      rpm: 1500,
      minutes: 10,
      lookFor: 'Milky; may look coarse until neutralised',
    },
    {
      phases: 'C',
      instruction: 'Add the sodium hydroxide solution in portions; measure the pH after each.',
      at: 25,
      rpm: 800,
      minutes: 10,
      lookFor: 'Thickens sharply from about pH 5; stop at pH 6.0',
      caution: NEAT_BASE,
    },
    {
      phases: 'D',
      instruction: 'Add D with a slow anchor stirrer, without drawing in air.',
      at: 25,
      rpm: 80,
      minutes: 15,
      lookFor: 'Smooth, translucent white',
      caution: NEAT_PRESERVATIVE,
    },
  ],
  target: {
    appearance: 'Translucent white gel-cream',
    odour: 'Fresh linen',
    colour: 'White',
    phLow: 5.7,
    phHigh: 6.5,
    viscosityLow: 15_000,
    viscosityHigh: 30_000,
    viscosityMethod: VISCOMETER,
    densityLow: 0.98,
    densityHigh: 1.01,
    microbiology: MICROBIOLOGY,
  },
  notes:
    'Salt and cationics destroy the gel. HLB does not describe a polymeric emulsifier; droplets are held by the gel.',
};
