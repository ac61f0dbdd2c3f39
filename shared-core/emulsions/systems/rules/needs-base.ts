import { COMMON_PRACTICE } from '../../../working/working';
import { NEUTRAL, type SystemRule } from '../system';

export const needsBaseToo: SystemRule = {
  id: 'needs-base',
  name: 'Works without neutralising',
  says: 'Acid emulsifiers and carbomers work only once a base neutralises them, which is one more step and one more caution.',
  weight: 0.7,
  source: COMMON_PRACTICE,
  judge({ emulsifiers }, { rest }) {
    const acid = emulsifiers.find(({ facts }) => facts.needsBase);
    if (!acid) return NEUTRAL;
    const name = acid.facts.material.tradeName;
    const why = rest.hasBase
      ? `${name} must be neutralised; see that the base in the formula suffices for it.`
      : `${name} must be neutralised, and no base is among the other lines: Neutralise computes how much. Alkalis are caustic.`;
    return { verdict: 'against', strength: 1, why, warns: !rest.hasBase };
  },
};
