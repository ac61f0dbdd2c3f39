import { isBase, needsBase } from '../emulsions/conflicts/recognise';
import type { CheckRule } from './check';
import { namesOf } from './facts';

/** Fatty acids emulsify, and carbomers thicken, only once a base has neutralised part of them. */
export const neutralising: CheckRule = {
  id: 'neutralising',
  name: 'Acids and carbomers have a base',
  judge({ lines }) {
    const used = lines.filter((line) => line.ppm > 0);
    const acids = used.filter((line) => needsBase(line.material));
    if (acids.length === 0 || used.some((line) => isBase(line.material))) return [];
    return [
      {
        ruleId: 'neutralising',
        severity: 'warn',
        title: `${namesOf(acids)} must be neutralised, and there is no base`,
        lines: acids.map((line) => line.lineId),
        advice:
          'Add a base (the emulsion bench computes how much). Alkalis are caustic: wear goggles and gloves, add alkali to water, follow the safety data sheet and local rules.',
        source: {
          text: 'Carbomer manufacturer technical data sheet TDS-237, Neutralizing polymers, 2002 and 2009; soaps: general emulsion science',
          basis: 'read',
        },
      },
    ];
  },
};
