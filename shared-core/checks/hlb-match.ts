import { hlbOf, meanHlbApplies } from '../emulsions/systems/character';
import { oilPhaseDemand } from '../emulsions/systems/oil-phase';
import type { CheckRule, Finding } from './check';
import type { FormulaFacts, LineFacts } from './facts';

/** Published HLB and required-HLB figures disagree by 1 to 2 units: below one there is nothing to say. */
const NOTE_BEYOND = 1;
const WARN_BEYOND = 2;

const GRIFFIN = {
  text: 'Griffin W.C., J. Soc. Cosmet. Chem. 1, 311 (1949) and 5, 249 (1954), mass-weighted means (from memory)',
  basis: 'memory',
} as const;

function oilsOf(facts: FormulaFacts, type: 'o/w' | 'w/o'): LineFacts[] {
  return facts.lines.filter(
    ({ material, ppm }) =>
      ppm > 0 &&
      !material.functions.includes('emulsifier') &&
      (material.figures[type === 'o/w' ? 'requiredHlbOw' : 'requiredHlbWo'] !== undefined ||
        (material.phaseOfUse === 'oil' && material.functions.includes('emollient'))),
  );
}

function compare(facts: FormulaFacts, counted: LineFacts[], offered: number): Finding[] {
  const type = facts.content.productType === 'w/o emulsion' ? 'w/o' : 'o/w';
  const oils = oilsOf(facts, type);
  const demand = oilPhaseDemand(
    oils.map((line) => ({ material: line.material, mass: line.ppm })),
    type,
  );
  if (demand.value === null || demand.low === null || demand.high === null) return [];
  // The sources' own spread is no fault of the formula: only what lies outside it counts.
  const gap = offered > demand.high ? offered - demand.high : Math.min(offered - demand.low, 0);
  if (Math.abs(gap) <= NOTE_BEYOND) return [];
  const unknown =
    demand.unknown.length > 0 ? ` Without a value, and left out: ${demand.unknown.join(', ')}.` : '';
  return [
    {
      ruleId: 'hlb-match',
      severity: Math.abs(gap) > WARN_BEYOND ? 'warn' : 'note',
      title: `The emulsifiers offer HLB ${offered.toFixed(1)}, the oils require ${demand.value.toFixed(1)} (${type})`,
      lines: counted.map((line) => line.lineId),
      advice: `Move the ratio towards the ${gap > 0 ? 'lower' : 'higher'}-HLB emulsifier, then try a series of ±1 HLB in steps of 0.5.${unknown}`,
      source: GRIFFIN,
    },
  ];
}

/**
 * Offered against required HLB. Judged only where a mean describes the emulsifiers: all of them classic non-ionics
 * with a value. Ionics, polymerics and particulates are left to trials.
 */
export const hlbMatch: CheckRule = {
  id: 'hlb-match',
  name: 'Offered HLB meets the required HLB',
  judge(facts) {
    if (!facts.isEmulsion || facts.emulsifiers.length === 0) return [];
    if (!facts.emulsifiers.every(({ material }) => meanHlbApplies(material) && hlbOf(material) !== null))
      return [];
    const ppm = facts.emulsifiers.reduce((sum, line) => sum + line.ppm, 0);
    const offered =
      facts.emulsifiers.reduce((sum, line) => sum + line.ppm * (hlbOf(line.material) ?? 0), 0) / ppm;
    return compare(facts, facts.emulsifiers, offered);
  },
};
