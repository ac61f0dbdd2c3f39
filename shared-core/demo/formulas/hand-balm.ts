import type { DemoFormula } from '../build-formula';
import { COOLING, HOT_PHASES } from './bench-phrases';

/** An anhydrous balm of waxes, butter and oils. */
export const HAND_BALM: DemoFormula = {
  code: 'F-009',
  name: 'Gardener’s Hand Balm',
  productType: 'anhydrous',
  use: 'leave-on',
  market: { kind: 'hand cream', regions: ['EU'] },
  purpose: 'A firm unscented balm in a tin',
  phases: [
    {
      title: 'Waxes and oils',
      at: 78,
      lines: [
        ['W-201', 18],
        ['W-202', 3],
        ['W-301', 20],
        ['O-202', 15],
        ['O-205', 10],
        ['O-201', 'q.s.'],
      ],
    },
    {
      title: 'Heat-sensitive',
      at: 60,
      lines: [
        ['V-201', 3],
        ['V-101', 0.5],
      ],
    },
  ],
  steps: [
    {
      phases: 'A',
      instruction: 'Melt the waxes in the oils in a water bath; hold for ten minutes.',
      at: 78,
      rpm: 80,
      minutes: 20,
      lookFor: 'Clear melt, no flake left',
      caution: HOT_PHASES,
    },
    {
      phases: 'AB',
      instruction: 'Cool to 60 °C with stirring and add B.',
      at: 60,
      rpm: 80,
      minutes: 10,
      lookFor: 'Clear, no skin on the wall',
      caution: COOLING,
    },
    {
      phases: 'AB',
      instruction: 'Pour into warm dry tins and cool within the hour.',
      at: 58,
      minutes: 15,
      lookFor: 'Level top, no crater, no grains the next day',
      caution: 'Hot wax sticks to the skin and burns: gloves.',
    },
  ],
  target: {
    appearance: 'Firm even balm, no grains',
    odour: 'Beeswax',
    colour: 'Pale yellow',
    densityLow: 0.9,
    densityHigh: 0.95,
    microbiology: 'No water: keep it dry. Count at most 100 CFU per g (house limit of the demonstration)',
  },
  notes:
    'Without water it needs no preservative, as long as no water gets in. Shea turns grainy when cooled slowly.',
};
