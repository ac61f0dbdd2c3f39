import { hlbGap, meanBand, NOTE_BEYOND, WARN_BEYOND, type HlbBand } from '../emulsions/hlb-band';
import { hlbOf, hlbSpread, meanHlbApplies } from '../emulsions/systems/character';
import { demandBand, oilPhaseDemand } from '../emulsions/systems/oil-phase';
import type { CheckRule, Finding } from './check';
import { namesOf, type FormulaFacts, type LineFacts } from './facts';

const GRIFFIN = {
  text: 'Griffin W.C., J. Soc. Cosmet. Chem. 1, 311 (1949) and 5, 249 (1954), mass-weighted means',
  basis: 'memory',
} as const;

function offeredBy(lines: readonly LineFacts[]): HlbBand | null {
  return meanBand(
    lines.flatMap(({ material, ppm }) => {
      const value = hlbOf(material);
      const spread = hlbSpread(material);
      return value === null || !spread ? [] : [{ mass: ppm, value, ...spread }];
    }),
  );
}

const figure = ({ value, low, high }: HlbBand): string =>
  high - low < 0.05 ? value.toFixed(1) : `${value.toFixed(1)} (${low.toFixed(1)} to ${high.toFixed(1)})`;

/** Estimates that the comparison rests on, said beside it. */
function ranges(lines: readonly LineFacts[]): string {
  const only = lines.filter(({ material }) => material.figures.hlb && material.figures.hlb.value === null);
  return only.length > 0 ? ` Only a range is recorded for ${namesOf(only)}: its middle is an estimate.` : '';
}

function compare(facts: FormulaFacts, offered: HlbBand): Finding[] {
  const type = facts.emulsionType === 'w/o' ? 'w/o' : 'o/w';
  const demand = oilPhaseDemand(
    facts.oils.map((line) => ({ material: line.material, mass: line.ppm })),
    type,
  );
  const required = demandBand(demand);
  if (required === null) return [];
  const gap = hlbGap(offered, required);
  if (Math.abs(gap) <= NOTE_BEYOND) return [];
  const unknown =
    demand.unknown.length > 0 ? ` Without a value, and left out: ${demand.unknown.join(', ')}.` : '';
  return [
    {
      ruleId: 'hlb-match',
      severity: Math.abs(gap) > WARN_BEYOND ? 'warn' : 'note',
      title: `The emulsifiers offer HLB ${figure(offered)}, the oils require ${figure(required)} (${type})`,
      lines: facts.emulsifiers.map((line) => line.lineId),
      advice: `Move the ratio towards the ${gap > 0 ? 'lower' : 'higher'}-HLB emulsifier, then try a series of ±1 HLB in steps of 0.5.${unknown}${ranges(facts.emulsifiers)}`,
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
  tells: 'the offered HLB lies outside the required band',
  judge(facts) {
    if (!facts.isEmulsion || facts.emulsifiers.length === 0) return [];
    if (!facts.emulsifiers.every(({ material }) => meanHlbApplies(material) && hlbOf(material) !== null))
      return [];
    const offered = offeredBy(facts.emulsifiers);
    return offered ? compare(facts, offered) : [];
  },
};
