import { EXCIPIENTS, GOLD_BOOK, PRACTICE, ROSEN, SINKO } from '../sources';
import type { Term } from '../term';

/** Emulsifiers and other surfactants. */
export const SURFACTANT_TERMS = {
  surfactant: {
    term: 'surfactant',
    says: 'A substance with a part that seeks water and a part that seeks oil, so that it gathers where the two meet.',
    source: GOLD_BOOK,
  },
  emulsifier: {
    term: 'emulsifier',
    says: 'A surfactant, polymer or fine powder that helps droplets form and keeps them apart.',
    source: GOLD_BOOK,
  },
  'co-emulsifier': {
    term: 'co-emulsifier',
    also: ['partner'],
    says: 'A second, usually weaker emulsifier beside the main one, such as a fatty alcohol, for body and stability.',
    source: PRACTICE,
  },
  anionic: {
    term: 'anionic',
    says: 'With a negative charge in water: soaps, sulfates, phosphates, carbomer. It does not go with a cationic.',
    source: ROSEN,
  },
  cationic: {
    term: 'cationic',
    says: 'With a positive charge in water: quaternary ammonium conditioners. It clings to hair and skin, and forms an insoluble salt with an anionic.',
    source: ROSEN,
  },
  'non-ionic': {
    term: 'non-ionic',
    also: ['nonionic'],
    says: 'Without a charge: ethoxylates, sugar and polyglycerol esters. It goes with either charge and tolerates salt.',
    source: ROSEN,
  },
  amphoteric: {
    term: 'amphoteric',
    also: ['zwitterionic', 'betaine'],
    says: 'With both charges: cationic in acid, anionic in alkali. Mild, and often used beside an anionic.',
    source: ROSEN,
  },
  polymeric: {
    term: 'polymeric emulsifier',
    says: 'A large molecule that thickens and holds droplets at once. HLB does not describe it.',
    source: ROSEN,
  },
  particulate: {
    term: 'particulate emulsifier',
    also: ['Pickering emulsion'],
    says: 'A fine powder that sits at the surface of droplets and keeps them apart. HLB does not describe it.',
    source: ROSEN,
  },
  ethoxylate: {
    term: 'ethoxylate',
    also: ['PEG', 'oxyethylene', '-eth-'],
    says: 'A substance with oxyethylene chains, such as ceteareth-20. The chains lose water in heat, so that it turns lipophilic.',
    source: ROSEN,
  },
  hydrophilic: {
    term: 'hydrophilic',
    says: 'Seeking water. A hydrophilic emulsifier has a high HLB.',
    source: GOLD_BOOK,
  },
  lipophilic: {
    term: 'lipophilic',
    also: ['hydrophobic'],
    says: 'Seeking oil. A lipophilic emulsifier has a low HLB.',
    source: GOLD_BOOK,
  },
  cmc: {
    term: 'CMC',
    also: ['critical micelle concentration', 'micelle'],
    says: 'Critical micelle concentration: above it further surfactant gathers in clusters (micelles) instead of at surfaces.',
    source: GOLD_BOOK,
  },
  krafft: {
    term: 'Krafft temperature',
    also: ['Krafft point'],
    says: 'Below it an ionic surfactant crystallises instead of forming micelles. It is why ionic emulsions fear frost.',
    source: GOLD_BOOK,
  },
  'cloud-point': {
    term: 'cloud point',
    says: 'The temperature at which a solution of an ethoxylate turns cloudy, because its chains lose their water.',
    source: ROSEN,
  },
  soap: {
    term: 'soap',
    says: 'The salt of a fatty acid with a base. An anionic emulsifier; acid turns it back into the fatty acid, which is a wax.',
    source: SINKO,
  },
  'self-emulsifying': {
    term: 'self-emulsifying',
    also: ['SE'],
    says: 'A grade with a little soap or another emulsifier in it, so that it emulsifies without a partner, such as glyceryl stearate SE.',
    source: EXCIPIENTS,
  },
} as const satisfies Record<string, Term>;
