import { holdsFattyAlcohol } from '../emulsions/conflicts/recognise';
import { isCationicPartner, pairingFacts, workingCharge } from '../emulsions/systems/character';
import { COMMON_PRACTICE } from '../working/working';
import type { CheckRule } from './check';

/** A conditioner's cationic wants a higher-HLB non-ionic beside it, for body and stability. */
export const cationicPartner: CheckRule = {
  id: 'cationic-partner',
  name: 'Cationic o/w: a non-ionic partner',
  tells: 'a cationic emulsion has no non-ionic partner',
  judge({ content, emulsifiers, used }) {
    const cationics = emulsifiers.filter((line) => workingCharge(line.material) === 'cationic');
    if (content.productType !== 'cationic o/w emulsion' && cationics.length === 0) return [];
    if (!content.productType.endsWith('o/w emulsion')) return [];
    const partner = emulsifiers.some(({ material }) => isCationicPartner(pairingFacts(material)));
    if (partner) return [];
    return [
      {
        ruleId: 'cationic-partner',
        // Fatty alcohol builds the gel network of most conditioners by itself.
        severity: used.some((line) => holdsFattyAlcohol(line.material)) ? 'note' : 'warn',
        title: 'A cationic emulsion without a non-ionic partner',
        lines: cationics.map((line) => line.lineId),
        advice: 'Add a non-ionic emulsifier of HLB 8 or more, for body and stability.',
        source: COMMON_PRACTICE,
      },
    ];
  },
};
