import type { Charge } from '../../../materials/vocabulary';
import { hasCharge, NEUTRAL, type SystemRule } from '../system';

export const oneSign: SystemRule = {
  id: 'one-sign',
  name: 'One sign of charge',
  says: 'A cationic and an anionic form an insoluble salt; they are never put together.',
  weight: 1,
  source: {
    text: 'Rosen M.J., Surfactants and Interfacial Phenomena, 3rd ed., Wiley, Hoboken 2004; Sinko P.J. (ed.), Martin’s Physical Pharmacy and Pharmaceutical Sciences, 5th ed., Lippincott, Baltimore 2006',
    basis: 'memory',
  },
  judge(system) {
    if (!hasCharge(system, 'cationic') || !hasCharge(system, 'anionic')) return NEUTRAL;
    const named = (charge: Charge): string =>
      system.emulsifiers
        .filter(({ facts }) => facts.charge === charge)
        .map(({ facts }) => `${facts.material.tradeName}${facts.soap ? ' (soap)' : ''}`)
        .join(', ');
    const why = `${named('cationic')} is cationic, ${named('anionic')} anionic: together they form an insoluble salt, both lose their effect, and the emulsion may break.`;
    return { verdict: 'refuses', why };
  },
};
