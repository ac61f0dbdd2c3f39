import { outsideWorkingPh, soapAtPh } from '../../working-ph';
import { NEUTRAL, type SystemRule } from '../system';

export const worksAtPh: SystemRule = {
  id: 'works-at-ph',
  name: 'Works at the pH',
  says: 'Soaps lose charge and emulsifying power below about pH 8; others work in their recorded range.',
  weight: 2,
  source: {
    text: 'Aulton M.E. (ed.), Pharmaceutics: The Science of Dosage Form Design, 2nd ed., Churchill Livingstone, Edinburgh 2002',
    basis: 'memory',
  },
  judge({ emulsifiers }, { ph }) {
    if (ph === null) return NEUTRAL;
    const at = { low: ph, high: ph };
    const outside = emulsifiers.find(({ facts }) => outsideWorkingPh(facts.material, at));
    if (outside) {
      return { verdict: 'refuses', why: `${outside.facts.material.tradeName} does not work at pH ${ph}.` };
    }
    const soap = emulsifiers.find(({ facts }) => facts.soap);
    const loss = soap ? soapAtPh(at) : null;
    if (!soap || !loss) return NEUTRAL;
    const why = `${soap.facts.material.tradeName} works as soap, which ${loss.fails ? 'fails' : 'weakens'} at pH ${ph}.`;
    return { verdict: 'against', strength: loss.strength, why, warns: loss.fails };
  },
};
