import { named } from '../emulsions/conflicts/recognise';
import type { Source } from '../working/working';
import type { CheckRule, Finding } from './check';
import { namesOf, type LineFacts } from './facts';

const ARTICLE_15: Source = {
  text: 'Regulation (EC) No 1223/2009, Article 15, with the harmonised classes of Regulation (EC) No 1272/2008, Annex VI',
  basis: 'memory',
};

/** Substances classed as carcinogenic, mutagenic or toxic to reproduction, by INCI name; from memory, and classes change. */
const CLASSES = [
  {
    category: '1A or 1B',
    severity: 'warn',
    what: /^(formaldehyde|boric acid|sodium borate|perboric acid|butylphenyl methylpropional|zinc pyrithione|trimethylbenzoyl diphenylphosphine oxide|n-methyl-2-pyrrolidone|methyl pyrrolidone|cyclotetrasiloxane|4-methylbenzylidene camphor|dibutyl phthalate|lead acetate|coal tar|benzophenone)$/,
    advice:
      'Forbidden, unless the Commission has made an exception and the scientific committee found this use safe. Replace it, or keep the exception with the product’s file.',
  },
  {
    category: '2',
    severity: 'note',
    what: /^(salicylic acid|methyl salicylate|hydroquinone|toluene|furfural|climbazole|p-aminophenol)$/,
    advice:
      'Allowed only where the scientific committee has found it safe, as the annexes then say: keep the limit, and the opinion with the product’s file.',
  },
] as const;

/** Titanium dioxide is classed as a powder that may be breathed in alone. */
const DUST = /^(titanium dioxide|ci 77891)$/;

/** Substances classed as CMR, with what the law then asks. */
export const classified: CheckRule = {
  id: 'classified',
  name: 'Substances classed as carcinogenic or harmful to reproduction',
  tells: 'a substance is classed as carcinogenic, mutagenic or toxic to reproduction',
  judge({ used, content }) {
    const dusty = content.market.dispenser !== null || content.market.kind === 'face powder';
    const isOf = ({ material }: LineFacts, { category, what }: (typeof CLASSES)[number]): boolean =>
      named(material, what) || (category === '2' && dusty && named(material, DUST));
    return CLASSES.flatMap((one): Finding[] => {
      const lines = used.filter((line) => isOf(line, one));
      if (lines.length === 0) return [];
      return [
        {
          ruleId: 'classified',
          severity: one.severity,
          title: `Classed as CMR, category ${one.category}: ${namesOf(lines)}`,
          lines: lines.map((line) => line.lineId),
          advice: `${one.advice} Classes change: check the text in force, and let a qualified assessor decide.`,
          source: ARTICLE_15,
        },
      ];
    });
  },
};
