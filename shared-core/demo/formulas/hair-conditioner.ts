import type { DemoFormula } from '../build-formula';
import { ACID_LAST, COOLING, DUST, HOT_PHASES, MICROBIOLOGY, NEAT_PRESERVATIVE } from './bench-phrases';

/** A rinse-off conditioner: a cationic with a higher-HLB non-ionic and fatty alcohol. */
export const HAIR_CONDITIONER: DemoFormula = {
  code: 'F-006',
  name: 'Comb-Through Conditioner',
  productType: 'cationic o/w emulsion',
  use: 'rinse-off',
  market: { kind: 'hair conditioner', regions: ['EU'] },
  purpose: 'A rinse-off conditioner for dry hair',
  phases: [
    {
      title: 'Oil phase',
      at: 78,
      lines: [
        ['W-102', 5],
        ['K-401', 4, 'Cationic'],
        ['O-103', 2],
        ['W-303', 1],
        ['N-101', 0.7, 'Non-ionic partner'],
      ],
    },
    {
      title: 'Water phase',
      at: 78,
      lines: [
        ['H-100', 'q.s.'],
        ['H-102', 3],
        ['T-103', 0.4],
        ['R-301', 0.1],
      ],
    },
    {
      title: 'Cool-down',
      at: 40,
      lines: [
        ['U-203', 2],
        ['U-204', 1],
        ['R-101', 1],
        ['V-103', 0.7],
        ['F-102', 0.5],
        ['C-101', 0.15, 'As a 20 % solution, to pH 4.4'],
      ],
    },
  ],
  steps: [
    {
      phases: 'B',
      instruction:
        'Sift the hydroxyethylcellulose into the cold water, stir until clear, add the rest and heat.',
      at: 78,
      rpm: 400,
      minutes: 30,
      lookFor: 'Clear, no gel grains',
      caution: DUST,
    },
    {
      phases: 'A',
      instruction: 'Melt A together.',
      at: 78,
      rpm: 100,
      minutes: 15,
      lookFor: 'No pellet left',
      caution: HOT_PHASES,
    },
    {
      phases: 'AB',
      instruction: 'Add A to B with strong stirring.',
      at: 76,
      rpm: 1200,
      minutes: 10,
      lookFor: 'Even, pearly',
      caution: HOT_PHASES,
    },
    {
      phases: 'AB',
      instruction: 'Cool with slow stirring.',
      at: 40,
      rpm: 100,
      minutes: 45,
      lookFor: 'Body from 60 °C',
      caution: COOLING,
    },
    {
      phases: 'C',
      instruction: 'Add C one by one; adjust the pH last. Make up the water lost.',
      at: 38,
      rpm: 150,
      minutes: 15,
      lookFor: 'pH 4.2 to 4.8',
      caution: `${NEAT_PRESERVATIVE} ${ACID_LAST}`,
    },
  ],
  target: {
    appearance: 'White, thick, pearly',
    odour: 'Pear',
    colour: 'White',
    phLow: 4.2,
    phHigh: 4.8,
    viscosityLow: 6_000,
    viscosityHigh: 14_000,
    viscosityMethod: 'Rotational viscometer, spindle 4, 20 rpm, 25 °C, after 24 h',
    densityLow: 0.96,
    densityHigh: 1,
    microbiology: MICROBIOLOGY,
  },
  notes:
    'Nothing anionic in it, and none in the vessel from the batch before: rinse well. Thickened by a non-ionic gum for that reason.',
};
