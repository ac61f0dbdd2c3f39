import { COMMON_PRACTICE } from '../../../working/working';
import { hasCharge, isPartner, NEUTRAL, type SystemRule } from '../system';

export const cationicWithPartner: SystemRule = {
  id: 'cationic-with-partner',
  name: 'Cationic with a non-ionic',
  says: 'A cationic emulsion wants a higher-HLB non-ionic, for body and stability.',
  weight: 2.5,
  source: COMMON_PRACTICE,
  judge(system) {
    if (!hasCharge(system, 'cationic')) return NEUTRAL;
    const partner = system.emulsifiers.find(
      (member) =>
        member.facts.charge === 'non-ionic' &&
        member.facts.hlb !== null &&
        member.facts.hlb >= 8 &&
        isPartner(member, system),
    );
    if (!partner)
      return { verdict: 'against', strength: 1, why: 'It has no non-ionic partner of HLB 8 or more.' };
    return {
      verdict: 'for',
      strength: 1,
      why: `${partner.facts.material.tradeName} is its non-ionic partner.`,
    };
  },
};
