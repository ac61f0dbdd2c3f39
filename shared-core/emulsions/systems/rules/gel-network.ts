import type { Material } from '../../../materials/material';
import { isFattyAlcohol, isPartner, NEUTRAL, type SystemRule } from '../system';

const isStearylAlone = ({ composition }: Material): boolean =>
  composition.length === 1 && /^stearyl alcohol$/i.test(composition[0]?.inci ?? '');

export const gelNetwork: SystemRule = {
  id: 'gel-network',
  name: 'Fatty alcohol builds a gel network',
  says: 'Fatty alcohol with a high-HLB or ionic partner builds the lamellar gel that carries a cream; pure stearyl alcohol fails at it.',
  weight: 1.5,
  source: {
    text: 'Eccleston G.M., Int. J. Cosmet. Sci. 4, 133-142 (1982), abstract; Int. J. Cosmet. Sci. 26(2) (2004), abstract',
    basis: 'read',
  },
  judge(system, { feel, emulsionType, oils }) {
    if (feel === 'milk' || emulsionType === 'w/o') return NEUTRAL;
    const alcohols = oils.filter(({ material }) => isFattyAlcohol(material)).map(({ material }) => material);
    if (system.fattyAlcohol) alcohols.push(system.fattyAlcohol.facts.material);
    if (alcohols.length === 0) return NEUTRAL;
    const name = alcohols.map((material) => material.tradeName).join(' and ');
    if (alcohols.every(isStearylAlone)) {
      return {
        verdict: 'against',
        strength: 1,
        why: `${name} is stearyl alcohol alone, which gave mobile liquids that cracked.`,
      };
    }
    const swells = system.emulsifiers.some(
      (member) =>
        isPartner(member, system) &&
        ((member.facts.hlb ?? 0) >= 10 ||
          member.facts.charge === 'anionic' ||
          member.facts.charge === 'cationic'),
    );
    if (!swells) return NEUTRAL;
    return { verdict: 'for', strength: 1, why: `${name} swells to a lamellar gel with its partner.` };
  },
};
