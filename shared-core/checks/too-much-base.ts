import { isFattyAcid, named, needsBase } from '../emulsions/conflicts/recognise';
import { COMMON_PRACTICE } from '../working/working';
import { baseMmol, needyAcidMmol, strongerAcidMmol } from './equivalents';
import { namesOf, type LineFacts } from './facts';
import type { CheckRule } from './check';

const STRONG_ALKALI = /^(sodium|potassium|lithium|calcium) hydroxide$/;
/** Free alkali from here on burns, mmol in 100 g: 0.02 mol/L is about pH 12. */
const BURNS_MMOL = 2;
/** From this target on alkali is meant: hair straighteners, depilatories, soap. */
const MEANT_FROM_PH = 9;

const isAcid = ({ material }: LineFacts): boolean =>
  material.functions.includes('acid') || needsBase(material) || isFattyAcid(material);

/** All the acid that a line has to give, mmol in 100 g. */
const acidMmol = (line: LineFacts): number =>
  needsBase(line.material) || isFattyAcid(line.material) ? needyAcidMmol(line) : strongerAcidMmol(line);

/** More strong alkali than all acids together take up leaves free alkali: in equivalents. */
export const tooMuchBase: CheckRule = {
  id: 'too-much-base',
  name: 'No more alkali than acids take up',
  tells: 'there is more strong alkali than all acids take up',
  judge({ used, ph }) {
    const bases = used.filter(({ material }) => named(material, STRONG_ALKALI));
    if (bases.length === 0 || (ph && ph.high >= MEANT_FROM_PH)) return [];
    const acids = used.filter(isAcid);
    // An acid of which no strength is known may take it all up.
    if (acids.some((line) => acidMmol(line) === 0)) return [];
    const base = bases.reduce((sum, line) => sum + baseMmol(line), 0);
    const acid = acids.reduce((sum, line) => sum + acidMmol(line), 0);
    const free = base - acid;
    if (free < BURNS_MMOL) return [];
    return [
      {
        ruleId: 'too-much-base',
        severity: 'warn',
        title: `${free.toPrecision(2)} mmol of free alkali in 100 g: ${namesOf(bases)} is more than all acids take up`,
        lines: [...bases, ...acids].map((line) => line.lineId),
        advice: `There are ${base.toPrecision(3)} mmol of strong base to ${acid === 0 ? 'no acid' : `${acid.toPrecision(3)} mmol of acid`}: such a product is at about pH 12 or above and burns skin and eyes. Lower it, or give the acid that it is to neutralise. Acids inside other materials are not counted: measure the pH. Alkalis are caustic: goggles and gloves.`,
        source: COMMON_PRACTICE,
      },
    ];
  },
};
