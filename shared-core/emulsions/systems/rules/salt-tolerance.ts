import { isSaltSensitive } from '../../conflicts/recognise';
import { SALT_LOAD_PPM } from '../../conflicts/salt-load';
import { hasCharge, NEUTRAL, type SystemRule } from '../system';

export const saltTolerance: SystemRule = {
  id: 'salt-tolerance',
  name: 'Tolerates electrolyte',
  says: 'Salt shields charges: ionics, carbomers and what is recorded as sensitive weaken; non-ionics tolerate more.',
  weight: 2,
  source: {
    text: 'a carbomer maker’s data sheet on neutralising (2002, 2009); Marquez R., A Short Course on HLD, module 2; Abu-Jdayil et al., J. Cosmet. Sci. 59 (2008), synopsis',
    basis: 'read',
  },
  judge(system, { electrolyte, rest }) {
    // What stands in the formula counts as much as what is wished.
    const salted = rest.saltPpm > SALT_LOAD_PPM;
    if (electrolyte === 'none' && !salted) return NEUTRAL;
    const strength = electrolyte === 'high' ? 1 : 0.5;
    const tender = system.emulsifiers.find(
      ({ facts }) =>
        isSaltSensitive(facts.material) ||
        (facts.polymeric && facts.charge === 'anionic' && facts.material.electrolyteTolerance !== 'high'),
    );
    if (tender)
      return {
        verdict: 'against',
        strength,
        why: `${tender.facts.material.tradeName} is sensitive to salt.`,
        warns: isSaltSensitive(tender.facts.material),
      };
    const ionic = hasCharge(system, 'anionic') || hasCharge(system, 'cationic');
    const proven = system.emulsifiers.every(({ facts }) => facts.material.electrolyteTolerance === 'high');
    if (proven) return { verdict: 'for', strength, why: 'Its emulsifiers are recorded as salt-tolerant.' };
    if (ionic) return { verdict: 'against', strength: strength / 2, why: 'Ionics shift strongly with salt.' };
    return { verdict: 'for', strength: strength / 2, why: 'Non-ionics tolerate more salt than ionics.' };
  },
};
