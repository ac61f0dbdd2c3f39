import { COMMON_PRACTICE } from '../working/working';
import { NOT_PROOF, type CheckRule, type Finding } from './check';
import { namesOf, percentText, type FormulaFacts, type LineFacts } from './facts';
import { leastDosePpm, LOW_RISK, selfPreserving } from './self-preserving';

function unpreserved({ used, watery }: FormulaFacts, weak: LineFacts[]): Finding {
  const boosters = used.filter((line) => line.material.functions.includes('preservative booster'));
  const only = boosters.length > 0 ? ` ${namesOf(boosters)} only helps a preservative.` : '';
  const doses = weak.map(
    (line) =>
      `${line.material.tradeName} at ${percentText(line.ppm)} (usual from ${percentText(Math.round(leastDosePpm(line)))})`,
  );
  return {
    ruleId: 'no-preservative',
    severity: 'warn',
    title:
      weak.length > 0
        ? `Too little to preserve: ${doses.join(', ')}`
        : `Water (${namesOf(watery)}) and no preservative`,
    lines: (weak.length > 0 ? weak : watery).map((line) => line.lineId),
    advice: `Add a preservative that works at the product’s pH, at its usual dose.${only} ${NOT_PROOF}`,
    source: COMMON_PRACTICE,
  };
}

/** Water feeds microbes: a formula with water wants a preservative, and enough of it. */
export const noPreservative: CheckRule = {
  id: 'no-preservative',
  name: 'Water is preserved',
  tells: 'there is water and no preservative at a working dose',
  judge(facts) {
    if (facts.watery.length === 0) return [];
    const preservatives = facts.used.filter((line) => line.material.functions.includes('preservative'));
    if (preservatives.some((line) => line.ppm >= leastDosePpm(line))) return [];
    const why = selfPreserving(facts.used);
    if (why === null) return [unpreserved(facts, preservatives)];
    return [
      {
        ruleId: 'no-preservative',
        severity: 'note',
        title: 'No preservative, and it may need none',
        lines: facts.watery.map((line) => line.lineId),
        advice: `${why} An estimate from the composition: measure it, and let an assessor decide. ${NOT_PROOF}`,
        source: LOW_RISK,
      },
    ];
  },
};
