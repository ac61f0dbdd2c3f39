import type { DemoFormula } from '../build-formula';
import { COOLING, HOT_PHASES, MICROBIOLOGY, NEAT_PRESERVATIVE, VISCOMETER } from './bench-phrases';

/** A w/o cream on a waxy with a liquid low-HLB emulsifier. */
export const COLD_WEATHER_CREAM: DemoFormula = {
  code: 'F-005',
  name: 'Lamplighter Cold Cream',
  productType: 'w/o emulsion',
  use: 'leave-on',
  market: { kind: 'face cream', regions: ['EU'] },
  purpose: 'A protecting winter cream, water in oil',
  phases: [
    {
      title: 'Oil phase',
      at: 75,
      lines: [
        ['O-101', 10],
        ['O-103', 5],
        ['W-205', 3],
        ['W-201', 1.5],
        ['P-604', 2, 'Waxy emulsifier'],
        ['N-202', 1.5, 'Liquid emulsifier'],
      ],
    },
    {
      title: 'Water phase',
      at: 75,
      lines: [
        ['H-100', 'q.s.'],
        ['H-101', 4],
        ['C-301', 0.7],
      ],
    },
    {
      title: 'Cool-down',
      at: 40,
      lines: [
        ['R-101', 1],
        ['V-101', 0.3],
        ['F-103', 0.2],
      ],
    },
  ],
  steps: [
    {
      phases: 'A',
      instruction: 'Melt A together in the main vessel.',
      at: 75,
      rpm: 150,
      minutes: 15,
      lookFor: 'Clear melt',
      caution: HOT_PHASES,
    },
    {
      phases: 'B',
      instruction: 'Dissolve the salt in water and glycerin; heat.',
      at: 75,
      rpm: 200,
      minutes: 10,
      lookFor: 'Clear',
      caution: HOT_PHASES,
    },
    {
      phases: 'AB',
      instruction: 'Add B to A in a thin stream, the first third over at least ten minutes.',
      at: 72,
      rpm: 800,
      minutes: 25,
      lookFor: 'Yellow-white, shiny; a drop does not spread in water',
      caution: HOT_PHASES,
    },
    {
      phases: 'AB',
      instruction: 'Cool with stirring.',
      at: 40,
      rpm: 300,
      minutes: 40,
      lookFor: 'No beads of water',
      caution: COOLING,
    },
    {
      phases: 'C',
      instruction: 'Add C, then homogenise cold: this sets the viscosity.',
      at: 30,
      rpm: 2500,
      minutes: 3,
      lookFor: 'Thickens under shear; smooth',
      caution: NEAT_PRESERVATIVE,
    },
  ],
  target: {
    appearance: 'Glossy ivory cream',
    odour: 'Lavender',
    colour: 'Ivory',
    viscosityLow: 25_000,
    viscosityHigh: 50_000,
    viscosityMethod: VISCOMETER,
    densityLow: 0.93,
    densityHigh: 0.99,
    microbiology: MICROBIOLOGY,
  },
  notes:
    'The pH of a w/o emulsion is not read directly: measure that of the water phase before use. Conductivity tells the type.',
};
