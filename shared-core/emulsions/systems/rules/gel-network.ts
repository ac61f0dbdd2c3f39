import { NEUTRAL, type SystemRule } from '../system';

export const gelNetwork: SystemRule = {
  id: 'gel-network',
  name: 'Fatty alcohol builds a gel network',
  says: 'Fatty alcohol with a high-HLB or ionic partner builds the lamellar gel that carries a cream; pure stearyl alcohol fails at it.',
  weight: 1.5,
  source: {
    text: 'Eccleston G.M., Int. J. Cosmet. Sci. 4, 133-142 (1982), abstract; Int. J. Cosmet. Sci. 26(2) (2004), abstract',
    basis: 'read',
  },
  judge({ emulsifiers, fattyAlcohol }, { feel, emulsionType }) {
    if (!fattyAlcohol || feel === 'milk' || emulsionType === 'w/o') return NEUTRAL;
    const name = fattyAlcohol.facts.material.tradeName;
    const parts = fattyAlcohol.facts.material.composition;
    if (parts.length === 1 && /^stearyl alcohol$/i.test(parts[0]?.inci ?? '')) {
      return {
        verdict: 'against',
        strength: 1,
        why: `${name} is stearyl alcohol alone, which gave mobile liquids that cracked.`,
      };
    }
    const swells = emulsifiers.some(
      ({ facts }) => (facts.hlb ?? 0) >= 10 || facts.charge === 'anionic' || facts.charge === 'cationic',
    );
    if (!swells) return NEUTRAL;
    return { verdict: 'for', strength: 1, why: `${name} swells to a lamellar gel with its partner.` };
  },
};
