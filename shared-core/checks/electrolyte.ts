import { isSaltSensitive } from '../emulsions/conflicts/recognise';
import { SALT_LOAD_PPM, saltPpm } from '../emulsions/conflicts/salt-load';
import type { CheckRule } from './check';
import { namesOf, percentText } from './facts';

/** Salt shields the charges that hold a carbomer gel, and many another polymer or emulsifier, open. */
export const electrolyte: CheckRule = {
  id: 'electrolyte',
  name: 'No salt with what salt thins',
  tells: 'salts may thin a gel or split an emulsion',
  judge({ used }) {
    const salts = used.filter((line) => saltPpm(line, 'most') > 0);
    const load = salts.reduce((sum, line) => sum + saltPpm(line, 'most'), 0);
    const sensitive = used.filter((line) => isSaltSensitive(line.material) && !salts.includes(line));
    if (load <= SALT_LOAD_PPM || sensitive.length === 0) return [];
    return [
      {
        ruleId: 'electrolyte',
        severity: 'warn',
        title: `${percentText(Math.round(load))} of salt (${namesOf(salts)}) may thin ${namesOf(sensitive)}`,
        lines: [...sensitive, ...salts].map((line) => line.lineId),
        advice:
          'Leave the salt out, or use a thickener or emulsifier that tolerates electrolyte, and check viscosity after a day. Preservatives and chelators that are salts count too.',
        source: {
          text: 'Carbomer manufacturer technical data sheet, Neutralizing polymers, 2002 and 2009; Abu-Jdayil et al., J. Cosmet. Sci. 59 (2008), synopsis: creams split above 0.25 % mixed salts; from 0.1 % on: common practice',
          basis: 'read',
        },
      },
    ];
  },
};
