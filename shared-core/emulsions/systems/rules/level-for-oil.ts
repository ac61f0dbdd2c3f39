import { COMMON_PRACTICE } from '../../../working/working';
import { levelAgainstOil, systemKind, usualLevel } from '../level';
import { NEUTRAL, type SystemRule } from '../system';

export const levelForOil: SystemRule = {
  id: 'level-for-oil',
  name: 'Usual level for the oil',
  says: 'The emulsifier needed follows the oil: about one part to five, less with charges, far less for polymers. More feels waxy or tacky, costs more and helps little; far less leaves the droplets bare.',
  weight: 2,
  source: COMMON_PRACTICE,
  judge({ levelPercent, emulsifiers }, { oilPercent, emulsionType, levelFrom }) {
    const kind = systemKind(
      emulsifiers.map(({ facts }) => facts),
      emulsionType,
    );
    const usual = usualLevel(kind, oilPercent);
    const figures = (): string =>
      `${levelPercent.toFixed(1)} % in all; ${oilPercent.toFixed(1)} % of oil phase usually takes ${usual.toFixed(1)} %`;
    if (levelAgainstOil(kind, levelPercent, oilPercent)?.verdict === 'too little') {
      const why = `Its usage ranges, or the level asked for, allow no more than ${figures()}.`;
      return { verdict: 'against', strength: 1, why, warns: true };
    }
    const over = levelPercent / Math.max(usual, levelFrom ?? 0) - 1;
    if (over <= 0.1 + 1e-9) return NEUTRAL;
    return {
      verdict: 'against',
      strength: Math.min(1, over / 0.5),
      why: `Its usage ranges call for ${figures()}.`,
    };
  },
};
