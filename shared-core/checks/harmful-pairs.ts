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
    second: /copper|^ci 7749|iron|ferr/,
    severity: 'warn',
    why: 'Copper and iron speed the oxidation of ascorbic acid: it browns and is lost. Add a chelator, or use a stable derivative.',
    source: CHEMISTRY,
  },
  {
    first: /^dihydroxyacetone$/,
    second: /^urea$|triethanolamine|aminomethyl|arginine|lysine|glycine|hydrolyzed .*protein/,
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
    first: /^(methyl|ethyl|propyl|butyl)paraben$/,
    second: /^polysorbate|^(ceteareth|steareth|laureth|ceteth)-\d+|^peg-\d+/,
    severity: 'note',
    why: 'Ethoxylates bind parabens: less is left free in the water phase to preserve it.',
    source: {
      text: 'J. Soc. Cosmet. Chem. 16 (1965) and 23 (1972), binding of preservatives by non-ionics',
      basis: 'memory',
    },
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
