import { NEUTRAL, type SystemRule } from '../system';

/** Below this pH soap turns back into acid. */
const SOAP_PH = 8;

export const worksAtPh: SystemRule = {
  id: 'works-at-ph',
  name: 'Works at the pH',
  says: 'Soaps lose charge and emulsifying power below about pH 8; others work in their recorded range.',
  weight: 2,
  source: { text: 'Aulton M.E., Pharmaceutics, 2nd ed. (from memory)', basis: 'memory' },
  judge({ emulsifiers }, { ph }) {
    if (ph === null) return NEUTRAL;
    const outside = emulsifiers.find(({ facts: { material } }) => {
      const range = material.figures.workingPh;
      return range && ((range.low !== null && ph < range.low) || (range.high !== null && ph > range.high));
    });
    if (outside) {
      return { verdict: 'refuses', why: `${outside.facts.material.tradeName} does not work at pH ${ph}.` };
    }
    const soap = emulsifiers.find(({ facts }) => facts.soap);
    if (!soap || ph >= SOAP_PH) return NEUTRAL;
    const strength = Math.min(1, (SOAP_PH - ph) / 2);
    return {
      verdict: 'against',
      strength,
      why: `${soap.facts.material.tradeName} works as soap, which fails at pH ${ph}.`,
    };
  },
};
