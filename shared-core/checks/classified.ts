import { cmrClassOf } from '../substances/classes';
import { substanceIndex } from '../substances/substance-index';
import type { Source } from '../working/working';
import type { CheckRule, Finding } from './check';
import { namesOf, type LineFacts } from './facts';

const ARTICLE_15: Source = {
  text: 'Regulation (EC) No 1223/2009, Article 15, with the harmonised classes of Regulation (EC) No 1272/2008, Annex VI',
  basis: 'memory',
};

const CATEGORIES = [
  {
    category: '1A or 1B',
    severity: 'warn',
    advice:
      'Forbidden, unless the Commission has made an exception and the scientific committee found this use safe. Replace it, or keep the exception with the product’s file.',
  },
  {
    category: '2',
    severity: 'note',
    advice:
      'Allowed only where the scientific committee has found it safe, as the annexes then say: keep the limit, and the opinion with the product’s file.',
  },
] as const;

/** Substances classed as CMR, with what the law then asks. */
export const classified: CheckRule = {
  id: 'classified',
  name: 'Substances classed as carcinogenic or harmful to reproduction',
  tells: 'a substance is classed as carcinogenic, mutagenic or toxic to reproduction',
  judge({ used, content, law }) {
    const index = substanceIndex(law?.substances ?? []);
    // A class of its dust alone counts where it may be breathed in.
    const dusty = content.market.dispenser !== null || content.market.kind === 'face powder';
    const counted = new Set<string>(dusty ? ['2', '2, as a powder breathed in'] : ['2']);
    const isOf = ({ material }: LineFacts, category: '1A or 1B' | '2'): boolean =>
      material.composition.some(({ inci }) => {
        const cmr = cmrClassOf(inci, index);
        return cmr !== null && (category === '2' ? counted.has(cmr) : cmr === category);
      });
    return CATEGORIES.flatMap((one): Finding[] => {
      const lines = used.filter((line) => isOf(line, one.category));
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
