import {
  ACOSTA_2008,
  BOURREL_1980,
  CAYIAS_1976,
  DAVIES_1957,
  GRIFFIN_1949,
  SALAGER_1979,
} from '../../emulsions/sources';
import { AULTON, ECCLESTON, GOLD_BOOK, PRACTICE, ROSEN, SINKO } from '../sources';
import type { Term } from '../term';

/** Emulsions, and what they are computed by. */
export const EMULSION_TERMS = {
  emulsion: {
    term: 'emulsion',
    says: 'Droplets of one liquid held in another with which it does not mix, such as oil in water. It is not stable by itself: an emulsifier slows its separation.',
    source: GOLD_BOOK,
  },
  'emulsion-type': {
    term: 'emulsion type',
    also: ['o/w or w/o'],
    says: 'Which liquid is the droplets: oil in water (o/w) or water in oil (w/o).',
    source: AULTON,
  },
  ow: {
    term: 'o/w',
    also: ['oil in water'],
    says: 'Oil droplets in water: most creams and milks. It rinses off and feels light.',
    source: AULTON,
  },
  wo: {
    term: 'w/o',
    also: ['water in oil'],
    says: 'Water droplets in oil: cold creams and protective creams. It resists water and feels richer.',
    source: AULTON,
  },
  'internal-phase': {
    term: 'internal phase',
    also: ['dispersed phase', 'discontinuous phase'],
    says: 'The liquid that forms the droplets. Above about 74 % of the volume round droplets no longer fit: they flatten and the emulsion stiffens.',
    source: SINKO,
  },
  'external-phase': {
    term: 'external phase',
    also: ['continuous phase'],
    says: 'The liquid around the droplets. It decides how the emulsion feels, dilutes and conducts.',
    source: SINKO,
  },
  'oil-phase': {
    term: 'oil phase',
    says: 'The oils, fats, waxes and whatever dissolves in them, weighed and heated together.',
    source: PRACTICE,
  },
  'water-phase': {
    term: 'water phase',
    says: 'The water and whatever dissolves or swells in it, weighed and heated together.',
    source: PRACTICE,
  },
  hlb: {
    term: 'HLB',
    also: ['hydrophile-lipophile balance'],
    says: 'Hydrophile-lipophile balance: how much an emulsifier favours water over oil, from 0 (oil) to 20 (water) for non-ionics. About 3 to 6 makes w/o, 8 to 18 o/w.',
    source: GRIFFIN_1949,
  },
  'required-hlb': {
    term: 'required HLB',
    says: 'The HLB of the emulsifier that emulsifies an oil best, different for o/w and w/o. Published values differ by 1 to 2 units, so it is a start for trials.',
    source: GRIFFIN_1949,
  },
  'offered-hlb': {
    term: 'offered HLB',
    says: 'The mean HLB of the emulsifiers in use, weighted by mass. It describes non-ionic emulsifiers only.',
    source: GRIFFIN_1949,
  },
  'davies-groups': {
    term: 'Davies’ group numbers',
    also: ['group contribution'],
    says: 'A second way to compute HLB: 7 plus a number for every group of the molecule. Its scale differs from Griffin’s for ethoxylates; never mix the two in one blend.',
    source: DAVIES_1957,
  },
  hld: {
    term: 'HLD',
    also: ['hydrophilic-lipophilic deviation'],
    says: 'Hydrophilic-lipophilic deviation: how far a system of surfactant, oil, salt and temperature is from inversion. Below 0 it favours o/w, above 0 w/o.',
    source: SALAGER_1979,
  },
  eacn: {
    term: 'EACN',
    also: ['equivalent alkane carbon number'],
    says: 'Equivalent alkane carbon number: the straight-chain alkane that behaves like the oil in HLD. Small for polar oils, large for waxy ones.',
    source: CAYIAS_1976,
  },
  cc: {
    term: 'Cc',
    also: ['characteristic curvature'],
    says: 'Characteristic curvature: a surfactant’s own part in HLD. Negative for hydrophilic, positive for lipophilic surfactants.',
    source: ACOSTA_2008,
  },
  salinity: {
    term: 'salinity',
    says: 'Salt in the water phase, in g per 100 mL. It pushes surfactants out of the water, ionic ones most.',
    source: SALAGER_1979,
  },
  'phase-inversion': {
    term: 'phase inversion',
    says: 'The change of an emulsion from o/w to w/o or back, by heat, salt or the ratio of the phases.',
    source: SINKO,
  },
  pit: {
    term: 'PIT',
    also: ['phase-inversion temperature', 'HLB temperature'],
    says: 'Phase-inversion temperature: where an emulsion on ethoxylated non-ionics turns from o/w to w/o. Near it the tension is lowest and droplets come out finest.',
    source: BOURREL_1980,
  },
  lamellar: {
    term: 'lamellar phase',
    also: ['gel network', 'liquid crystal', 'lamellar'],
    says: 'Sheets of emulsifier and fatty alcohol with water between them. As a gel network it gives most creams their body.',
    source: ECCLESTON,
  },
  creaming: {
    term: 'creaming',
    also: ['sedimentation'],
    says: 'Droplets that rise (or sink) and gather. They can be stirred in again, unless they merge.',
    source: SINKO,
  },
  coalescence: {
    term: 'coalescence',
    says: 'Droplets that merge into larger ones. It cannot be undone by stirring, and ends in two layers.',
    source: SINKO,
  },
  flocculation: {
    term: 'flocculation',
    says: 'Droplets that cling together in loose clusters without merging.',
    source: SINKO,
  },
  'ostwald-ripening': {
    term: 'Ostwald ripening',
    says: 'Large droplets that grow at the cost of small ones, through an oil that dissolves slightly in water.',
    source: ROSEN,
  },
  'interfacial-tension': {
    term: 'interfacial tension',
    says: 'The work it takes to make more surface between oil and water. Emulsifiers lower it, so that droplets form easily.',
    source: GOLD_BOOK,
  },
} as const satisfies Record<string, Term>;
