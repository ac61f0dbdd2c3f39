import { servesType } from '../emulsions/systems/character';
import type { CheckRule, Finding } from './check';
import { namesOf, type FormulaFacts } from './facts';

const GRIFFIN = {
  text: 'Griffin W.C., J. Soc. Cosmet. Chem. 1, 311 (1949): HLB 3 to 6 serves w/o, 8 to 18 o/w',
  basis: 'memory',
} as const;

function nothingEmulsifies({ content }: FormulaFacts): Finding[] {
  return [
    {
      ruleId: 'emulsion-type',
      severity: 'warn',
      title: `An emulsion (${content.productType}) without an emulsifier`,
      lines: [],
      advice: 'Add one, or give the material that emulsifies the function “emulsifier”.',
      source: GRIFFIN,
    },
  ];
}

/** The emulsifiers serve the type of emulsion that the formula is meant to be. */
export const emulsionType: CheckRule = {
  id: 'emulsion-type',
  name: 'The emulsifiers serve the type of emulsion',
  tells: 'the emulsifiers serve another type of emulsion',
  judge(facts) {
    if (!facts.isEmulsion) return [];
    if (facts.emulsifiers.length === 0) return nothingEmulsifies(facts);
    const wanted = facts.content.productType === 'w/o emulsion' ? 'w/o' : 'o/w';
    const serves = facts.emulsifiers.some(({ material }) => servesType(material.emulsionType, wanted));
    if (serves) return [];
    return [
      {
        ruleId: 'emulsion-type',
        severity: 'warn',
        title: `None of the emulsifiers serves ${wanted}: ${namesOf(facts.emulsifiers)}`,
        lines: facts.emulsifiers.map((line) => line.lineId),
        advice: `The emulsion is likely to turn out the other way round. Choose emulsifiers for ${wanted}, or change the type of product.`,
        source: GRIFFIN,
      },
    ];
  },
};
