import { COMMON_PRACTICE } from '../../../working/working';
import { NEUTRAL, type SystemRule } from '../system';

export const mildToSkin: SystemRule = {
  id: 'mild-to-skin',
  name: 'Mild to the skin',
  says: 'Cleansing surfactants and what is recorded as irritant are a last choice for what stays on the skin.',
  weight: 1.5,
  source: COMMON_PRACTICE,
  judge({ emulsifiers }) {
    const harsh = emulsifiers.find(
      ({ facts: { material, charge } }) =>
        material.hazards.includes('irritant') ||
        (charge === 'anionic' && material.functions.includes('surfactant')),
    );
    if (!harsh) return NEUTRAL;
    const why = `${harsh.facts.material.tradeName} is a cleansing surfactant or recorded as irritant; a qualified assessor decides.`;
    return { verdict: 'against', strength: 1, why };
  },
};
