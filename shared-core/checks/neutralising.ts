import { isBase, isFattyAcid, named, needsBase } from '../emulsions/conflicts/recognise';
import { soapAtPh } from '../emulsions/working-ph';
import type { CheckRule, Finding } from './check';
import { baseMmol, needyAcidMmol, strongerAcidMmol } from './equivalents';
import { namesOf, type FormulaFacts, type LineFacts } from './facts';

/** Least share of its acid groups that must be neutralised to work. Common practice, no source. */
const LEAST_SHARE = { soap: 0.05, carbomer: 0.2, other: 0.05 };

const SOURCE = {
  text: 'Carbomer manufacturer technical data sheet, Neutralizing polymers, 2002 and 2009; soaps: general emulsion science; the least shares: common practice',
  basis: 'read',
} as const;
const CAUTION =
  'Neutralise on the bench computes how much. Alkalis are caustic: wear goggles and gloves, add alkali to water, follow the safety data sheet and local rules.';

function leastShare({ material }: LineFacts): number {
  if (isFattyAcid(material)) return LEAST_SHARE.soap;
  return named(material, /carbomer|crosspolymer/) ? LEAST_SHARE.carbomer : LEAST_SHARE.other;
}

const sum = (lines: readonly LineFacts[], of: (line: LineFacts) => number): number =>
  lines.reduce((total, line) => total + of(line), 0);

function tooLittle(acids: LineFacts[], bases: LineFacts[], used: readonly LineFacts[]): Finding[] {
  const wanted = sum(acids, (line) => needyAcidMmol(line) * leastShare(line));
  const [base, taken] = [sum(bases, baseMmol), sum([...used], strongerAcidMmol)];
  // A base or an acid whose strength is not known is not judged.
  if (bases.some((line) => baseMmol(line) === 0) || wanted === 0) return [];
  const left = Math.max(0, base - taken);
  if (left >= wanted) return [];
  const share = (100 * left) / sum(acids, needyAcidMmol);
  const eaten =
    taken > 0 ? ` Other acids take up ${Math.min(taken, base).toPrecision(2)} mmol of it first.` : '';
  return [
    {
      ruleId: 'neutralising',
      severity: 'warn',
      title: `The base neutralises ${share < 0.1 ? 'next to nothing' : `${share.toPrecision(2)} %`} of ${namesOf(acids)}`,
      lines: [...acids, ...bases].map((line) => line.lineId),
      advice: `In 100 g there are ${base.toPrecision(2)} mmol of base to ${sum(acids, needyAcidMmol).toPrecision(2)} mmol of acid groups.${eaten} ${CAUTION}`,
      source: SOURCE,
    },
  ];
}

/** Soap that is made at an acid target turns back: there a base is no help to a fatty acid. */
function whatToDo(acids: readonly LineFacts[], { ph }: FormulaFacts): string {
  const soapFails = ph !== null && soapAtPh(ph)?.fails === true;
  if (!soapFails || !acids.every(({ material }) => isFattyAcid(material))) return 'Add a base.';
  return `At a target of pH ${ph.low} soap would turn back into acid: use an emulsifier that tolerates acid in its place, or set the target from pH 7.5 to 8.5 and add a base.`;
}

/** Fatty acids emulsify, and carbomers thicken, only once a base has neutralised part of them: in equivalents, not by name. */
export const neutralising: CheckRule = {
  id: 'neutralising',
  name: 'Acids and carbomers have a base',
  tells: 'an acid or a carbomer has no base, or too little of one',
  judge(facts) {
    const { used } = facts;
    const acids = used.filter((line) => needsBase(line.material));
    if (acids.length === 0) return [];
    const bases = used.filter((line) => isBase(line.material));
    if (bases.length > 0) return tooLittle(acids, bases, used);
    return [
      {
        ruleId: 'neutralising',
        severity: 'warn',
        title: `${namesOf(acids)} must be neutralised, and there is no base`,
        lines: acids.map((line) => line.lineId),
        advice: `${whatToDo(acids, facts)} ${CAUTION}`,
        source: SOURCE,
      },
    ];
  },
};
