import { COMMON_PRACTICE } from '../../../working/working';
import { holdsFattyAlcohol } from '../../conflicts/recognise';
import { isCationicPartner } from '../character';
import { hasCharge, isPartner, membersOf, NEUTRAL, type SystemRule } from '../system';

export const cationicWithPartner: SystemRule = {
  id: 'cationic-with-partner',
  name: 'Cationic with a non-ionic',
  says: 'A cationic emulsion needs a higher-HLB non-ionic, for body and stability.',
  weight: 2.5,
  source: COMMON_PRACTICE,
  judge(system, { oils }) {
    if (!hasCharge(system, 'cationic')) return NEUTRAL;
    const partners = system.emulsifiers.filter(({ facts }) => isCationicPartner(facts));
    const partner = partners.find((member) => isPartner(member, system));
    if (!partner) {
      const why = 'It has no non-ionic partner of HLB 8 or more.';
      const others = [...oils, ...membersOf(system).map(({ facts }) => facts)];
      const alcohol = others.some(({ material }) => holdsFattyAlcohol(material));
      return { verdict: 'against', strength: 1, why, warns: partners.length === 0 && !alcohol };
    }
    return {
      verdict: 'for',
      strength: 1,
      why: `${partner.facts.material.tradeName} is its non-ionic partner.`,
    };
  },
};
