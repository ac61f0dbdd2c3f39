import type { Finding } from '@core/checks/check';
import type { FormulaContent } from '@core/formulas/formula';
import { formulaShares } from '@core/formulas/shares';
import { WHOLE_PPM } from '@core/quantities/share';
import { describe, expect, it } from 'vitest';
import { library, soundFormulas } from '../demo/demo-shelf';
import { NOTHING_TO_FOLLOW, WAYS } from './advice-ways';
import type { Way } from './follow';
import { find, shelf, spoilt, toHundred } from './spoilt';

/** A finding whatever its figures, and whichever of the lines it names. */
const words = ({ ruleId, title }: Finding): string => `${ruleId}: ${title.replace(/[\d.,]+/g, '#')}`;
const serious = (found: readonly Finding[]): Finding[] => found.filter(({ severity }) => severity !== 'note');

/** What is left of a finding once its advice was followed, or what else that brought; null where all is well. */
function leftBy(
  finding: Finding,
  found: readonly Finding[],
  way: Way,
  formula: FormulaContent,
): string | null {
  const followed = way(formula);
  if (followed === null) return 'does not apply';
  if (formulaShares(followed).totalPpm !== WHOLE_PPM) return 'not 100 %';
  const after = find(followed);
  const before = new Set(found.map(({ ruleId }) => ruleId));
  const still = after.find((one) => words(one) === words(finding));
  if (still) return 'still there';
  const brought = serious(after).find(({ ruleId, title }) => !before.has(ruleId) && title !== '');
  return brought ? words(brought) : null;
}

/** The findings of a formula whose advice, whichever way it is followed, leaves it there or brings a new warning. */
function badAdvice(formula: FormulaContent, told: ReadonlySet<string> = new Set()): string[] {
  const found = find(formula);
  return found.flatMap((finding) => {
    if (NOTHING_TO_FOLLOW.has(finding.ruleId) || told.has(words(finding))) return [];
    const ways = WAYS[finding.ruleId]?.({ finding, formula, shelf });
    if (!ways) return [`nobody knows how to follow ${finding.ruleId}`];
    const left = new Set<string>();
    for (const way of ways) {
      const one = leftBy(finding, found, way, formula);
      if (one === null) return [];
      left.add(one);
    }
    return [
      `${formula.code} ${formula.name}: ${finding.severity} ${words(finding)} [${[...left].join(' | ')}]`,
    ];
  });
}

describe('the advice of a check, followed', () => {
  it.each(library.formulas.map((one) => [one.code, one] as const))(
    'clears what %s is told, and brings no warning of another check',
    (_code, formula) => {
      expect(badAdvice(toHundred(formula))).toEqual([]);
    },
  );

  it.each(soundFormulas.map((one, at) => [one.code, one, at] as const))(
    'clears what %s is told once it is spoilt, and brings no warning of another check',
    (_code, formula, at) => {
      const told = new Set(find(formula).map(words));
      const bad = spoilt(formula, at, soundFormulas.length).flatMap((one) => badAdvice(one, told));
      expect(bad).toEqual([]);
    },
  );
});

/** What a finding asks for, as a thing that is to go up or down. */
function asks({ ruleId, title, advice, lines }: Finding): string[] {
  const each = (way: 'up' | 'down'): string[] => lines.map((id) => `${way} ${id}`);
  switch (ruleId) {
    case 'law':
    case 'legal-limit':
      return advice.startsWith('Lower it') ? each('down') : [];
    case 'usage-range':
      return each(advice.includes('raise it') ? 'up' : 'down');
    case 'no-preservative':
      return title.startsWith('Too little') ? each('up') : [];
    case 'emulsifier-to-oil':
      return advice.includes('raise it') ? ['up the emulsifiers'] : ['down the emulsifiers'];
    case 'neutralising':
      return ['up the base'];
    case 'too-much-base':
      return ['down the base'];
    case 'water-in-oil-salt':
      return ['up the salt'];
    case 'electrolyte':
      return ['down the salt'];
    case 'heat-sensitive':
      return lines.map((id) => `down the heat of ${id}`);
    case 'unmelted':
      return lines.map((id) => `up the heat of ${id}`);
    default:
      return [];
  }
}

/** The target pH that a finding asks for. */
function phOf({ advice }: Finding): [number, number] | 'none suits' | null {
  if (advice.includes('No pH suits')) return 'none suits';
  const said = /Set the target (within|at) pH ([\d.]+)(?: to ([\d.]+))?( or below| or above)?/.exec(advice);
  if (!said) return null;
  const [first, last] = [Number(said[2]), Number(said[3] ?? said[2])];
  return [said[4] === ' or below' ? 0 : first, said[4] === ' or above' ? 14 : last];
}

function contradictions(formula: FormulaContent): string[] {
  const found = find(formula);
  const asked = new Set(found.flatMap(asks));
  const both = [...asked].filter((one) => one.startsWith('up ') && asked.has(one.replace('up ', 'down ')));
  const phs = found.map(phOf);
  const rooms = phs.filter((one) => Array.isArray(one));
  if (rooms.length > 0 && phs.includes('none suits')) both.push('a pH, and that none suits');
  if (Math.max(...rooms.map(([low]) => low)) > Math.min(...rooms.map(([, high]) => high)))
    both.push('two target pH that do not meet');
  return both.map((one) => `${formula.name}: ${one}; ${found.map(words).join(' | ')}`);
}

describe('the findings of one formula', () => {
  it('never ask for opposite things', () => {
    const every = [
      ...library.formulas,
      ...soundFormulas.flatMap((one, at) => spoilt(one, at, soundFormulas.length)),
    ];
    expect(every.flatMap(contradictions)).toEqual([]);
  });
});
