import { COMMON_PRACTICE } from '../../../working/working';
import { NEUTRAL, type SystemRule } from '../system';

export const needsBaseToo: SystemRule = {
  id: 'needs-base',
  name: 'Works without neutralising',
  says: 'Acid emulsifiers and carbomers work only once a base neutralises them, which is one more step and one more caution.',
  weight: 0.7,
  source: COMMON_PRACTICE,
  judge({ emulsifiers }) {
    const acid = emulsifiers.find(({ facts }) => facts.needsBase);
    if (!acid) return NEUTRAL;
    const why = `${acid.facts.material.tradeName} must be neutralised; alkalis are caustic.`;
    return { verdict: 'against', strength: 1, why };
  },
};
