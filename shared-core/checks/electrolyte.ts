import { isAcrylicPolymer, isElectrolyte } from '../emulsions/conflicts/recognise';
import type { CheckRule } from './check';
import { namesOf } from './facts';

/** Salt shields the charges that hold a carbomer gel, and many another polymer or emulsifier, open. */
export const electrolyte: CheckRule = {
  id: 'electrolyte',
  name: 'No salt with what salt thins',
  judge({ lines }) {
    const used = lines.filter((line) => line.ppm > 0);
    const salts = used.filter((line) => isElectrolyte(line.material));
    const sensitive = used.filter(
      ({ material }) =>
        material.electrolyteTolerance === 'low' ||
        (isAcrylicPolymer(material) && material.electrolyteTolerance === null),
    );
    if (salts.length === 0 || sensitive.length === 0) return [];
    return [
      {
        ruleId: 'electrolyte',
        severity: 'warn',
        title: `${namesOf(salts)} may thin ${namesOf(sensitive)}`,
        lines: [...sensitive, ...salts].map((line) => line.lineId),
        advice:
          'Leave the salt out, or use a thickener or emulsifier that tolerates electrolyte, and check viscosity after a day.',
        source: {
          text: 'Carbomer manufacturer technical data sheet TDS-237, Neutralizing polymers, 2002 and 2009; Abu-Jdayil et al., J. Cosmet. Sci. 59 (2008), synopsis: creams split above 0.25 % mixed salts',
          basis: 'read',
        },
      },
    ];
  },
};
