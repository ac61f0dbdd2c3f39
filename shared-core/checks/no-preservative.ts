import { COMMON_PRACTICE } from '../working/working';
import { NOT_PROOF, type CheckRule } from './check';
import { namesOf } from './facts';

/** Water feeds microbes: a formula with water wants a preservative. */
export const noPreservative: CheckRule = {
  id: 'no-preservative',
  name: 'Water is preserved',
  judge({ lines, watery }) {
    const used = lines.filter((line) => line.ppm > 0);
    if (watery.length === 0 || used.some((line) => line.material.functions.includes('preservative')))
      return [];
    const boosters = used.filter((line) => line.material.functions.includes('preservative booster'));
    const only = boosters.length > 0 ? ` ${namesOf(boosters)} only helps a preservative.` : '';
    return [
      {
        ruleId: 'no-preservative',
        severity: 'warn',
        title: `Water (${namesOf(watery)}) and no preservative`,
        lines: watery.map((line) => line.lineId),
        advice: `Add a preservative that works at the product’s pH.${only} ${NOT_PROOF}`,
        source: COMMON_PRACTICE,
      },
    ];
  },
};
