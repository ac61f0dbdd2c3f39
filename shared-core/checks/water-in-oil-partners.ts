import { bodyCharacter } from '../emulsions/systems/character';
import { COMMON_PRACTICE } from '../working/working';
import type { CheckRule } from './check';

/** A w/o emulsion wants a waxy and a liquid emulsifier of low HLB. */
export const waterInOilPartners: CheckRule = {
  id: 'water-in-oil-partners',
  name: 'W/o: a waxy with a liquid emulsifier',
  judge({ content, emulsifiers }) {
    if (content.productType !== 'w/o emulsion' || emulsifiers.length === 0) return [];
    const serving = emulsifiers.filter(
      (line) => line.material.emulsionType === 'w/o' || line.material.emulsionType === 'both',
    );
    const judged = serving.length > 0 ? serving : emulsifiers;
    const characters = new Set(judged.map((line) => bodyCharacter(line.material)));
    const missing = (['waxy', 'liquid'] as const).filter((wanted) => !characters.has(wanted));
    if (missing.length === 0) return [];
    return [
      {
        ruleId: 'water-in-oil-partners',
        severity: 'warn',
        title: `A w/o emulsion without a ${missing.join(' and a ')} emulsifier`,
        lines: judged.map((line) => line.lineId),
        advice: `Add a ${missing.join(' and a ')} emulsifier of low HLB (about 3 to 6), or record the consistency of those used.`,
        source: COMMON_PRACTICE,
      },
    ];
  },
};
