import { named } from '../emulsions/conflicts/recognise';
import { COMMON_PRACTICE, type Source } from '../working/working';
import type { CheckRule, FindingSeverity } from './check';
import { namesOf } from './facts';

interface Pair {
  first: RegExp;
  second: RegExp;
  severity: FindingSeverity;
  why: string;
  source: Source;
}

const CHEMISTRY: Source = {
  text: 'general organic chemistry (oxidation, condensation with amines)',
  basis: 'memory',
};

/** Actives that harm each other, each with why. */
const PAIRS: readonly Pair[] = [
  {
    first: /benzoyl peroxide/,
    second: /retin(ol|yl|al)|ascorbic acid|tocopherol|hydroquinone/,
    severity: 'warn',
    why: 'Benzoyl peroxide oxidises it: both lose their effect.',
    source: CHEMISTRY,
  },
  {
    first: /^ascorbic acid$/,
    // “Ferrugineum” is a rhododendron, no iron.
    second: /copper|^ci 7749|\biron\b|\bferr(ous|ic)\b/,
    severity: 'warn',
    why: 'Copper and iron speed the oxidation of ascorbic acid: it browns and is lost. Add a chelator, or use a stable derivative.',
    source: CHEMISTRY,
  },
  {
    first: /^dihydroxyacetone$/,
    second:
      /^urea$|triethanolamine|aminomethyl|arginine|lysine|\bglycine\b(?! (soja|max))|hydrolyzed .*protein/,
    severity: 'warn',
    why: 'Dihydroxyacetone reacts with amines, amino acids and proteins: it browns in the jar and tans less.',
    source: CHEMISTRY,
  },
  {
    first: /^(glycolic|lactic|salicylic|mandelic) acid$/,
    second: /retin(ol|yl|al)/,
    severity: 'note',
    why: 'An acid at a peeling dose beside a retinoid irritates more than either, and acid breaks retinol down: mind both doses and the pH.',
    source: COMMON_PRACTICE,
  },
  {
    first: /^(sodium benzoate|potassium benzoate|benzoic acid)$/,
    second: /^(ascorbic acid|sodium ascorbate)$/,
    severity: 'warn',
    why: 'Benzoate and ascorbic acid form traces of benzene where light, warmth, copper or iron help: choose another preservative or a stable derivative, and add a chelator.',
    source: {
      text: 'Gardner L.K., Lawrence G.D., Benzene production from decarboxylation of benzoic acid in the presence of ascorbic acid and a transition-metal catalyst, J. Agric. Food Chem. 41, 693-695 (1993)',
      basis: 'memory',
    },
  },
  {
    first: /^(zinc oxide|ci 77947)$/,
    second: /^butyl methoxydibenzoylmethane$/,
    severity: 'note',
    why: 'Zinc ions form a salt of avobenzone that falls out, and protection falls: take a coated grade, and look for crystals.',
    source: COMMON_PRACTICE,
  },
  {
    first:
      /^(imidazolidinyl urea|diazolidinyl urea|dmdm hydantoin|quaternium-15|sodium hydroxymethylglycinate)$/,
    second: /hydrolyzed .*(protein|collagen|keratin|silk)|^(collagen|gelatin)$/,
    severity: 'note',
    why: 'What gives off formaldehyde cross-links proteins: both lose, and it may cloud or set. Choose another preservative.',
    source: CHEMISTRY,
  },
  {
    first: /^thioglycolic acid$|thioglycolate$|^cysteamine/,
    second: /peroxide$|persulfate$|bromate$/,
    severity: 'stop',
    why: 'A reducing agent meets an oxidising one: heat, gas, and nothing left of either. Never put them into one product.',
    source: CHEMISTRY,
  },
  {
    first: /avobenzone|^butyl methoxydibenzoylmethane$/,
    second: /^ethylhexyl methoxycinnamate$/,
    severity: 'warn',
    why: 'In light the two react with each other, and protection falls: add a photostabiliser or choose another filter. Protection is measured, never computed.',
    source: {
      text: 'Sayre R.M. et al., Unexpected photolysis of the sunscreen octinoxate in the presence of avobenzone, Photochem. Photobiol. 81, 452-456 (2005)',
      basis: 'memory',
    },
  },
];

/** Actives that break each other down, or irritate more together. */
export const harmfulPairs: CheckRule = {
  id: 'harmful-pairs',
  name: 'Compatible actives',
  tells: 'two actives spoil each other',
  judge({ used }) {
    return PAIRS.flatMap(({ first, second, severity, why, source }) => {
      const ones = used.filter(({ material }) => named(material, first));
      const others = used.filter((line) => named(line.material, second) && !ones.includes(line));
      if (ones.length === 0 || others.length === 0) return [];
      return [
        {
          ruleId: 'harmful-pairs',
          severity,
          title: `${namesOf(ones)} with ${namesOf(others)}`,
          lines: [...ones, ...others].map((line) => line.lineId),
          advice: why,
          source,
        },
      ];
    });
  },
};
