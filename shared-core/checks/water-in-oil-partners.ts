import { missingInWaterInOil, pairingFacts } from '../emulsions/systems/character';
import { COMMON_PRACTICE } from '../working/working';
import type { CheckRule } from './check';

/** A w/o emulsion needs a waxy and a liquid emulsifier of low HLB, or a polymeric one. */
export const waterInOilPartners: CheckRule = {
  id: 'water-in-oil-partners',
  name: 'W/o: a waxy with a liquid emulsifier',
  tells: 'a w/o emulsion lacks a waxy or a liquid emulsifier',
  judge({ content, emulsifiers }) {
    if (content.productType !== 'w/o emulsion' || emulsifiers.length === 0) return [];
    const missing = missingInWaterInOil(emulsifiers.map((line) => pairingFacts(line.material)));
    if (missing.length === 0) return [];
    return [
      {
        ruleId: 'water-in-oil-partners',
        severity: 'warn',
        title: `A w/o emulsion without a ${missing.join(' and a ')} emulsifier`,
        lines: emulsifiers.map((line) => line.lineId),
        advice: `Add a ${missing.join(' and a ')} emulsifier of low HLB (about 3 to 6), or record the consistency of those used.`,
        source: COMMON_PRACTICE,
      },
    ];
  },
};
