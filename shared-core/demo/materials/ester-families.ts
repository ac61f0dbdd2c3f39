import { store, type DemoEntry } from '../build-material';

/** What sorbitan, glyceryl, polyglyceryl and sugar esters of this shelf have in common. */
export const ESTER = {
  functions: ['emulsifier', 'co-emulsifier'],
  phaseOfUse: 'oil',
  charge: 'non-ionic',
  architecture: 'classic',
  consistency: 'waxy',
  electrolyteTolerance: 'high',
  coldProcessable: false,
  solubleIn: ['hot oil', 'ethanol'],
  origin: 'naturally derived',
  storage: store(5, 30, 24, 12, 'moisture', 'heat'),
} satisfies Partial<DemoEntry>;

/** Liquid esters: little body; partners of a waxy one (common practice). */
export const LIQUID_ESTER = {
  ...ESTER,
  form: 'viscous liquid',
  consistency: 'oily',
  body: 'none',
  coldProcessable: true,
  solubleIn: ['oil', 'ethanol'],
  storage: store(10, 30, 18, 6, 'air', 'light'),
} satisfies Partial<DemoEntry>;
