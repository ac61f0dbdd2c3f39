import type { MarketRegion } from '../products/product-kinds';
import { joined } from '../locale/words';
import type { Judged } from '../limits/judged';
import { subjectWords } from '../limits/words';

/** Words that a label must carry, and because of what. */
export interface LabelPhrase {
  text: string;
  because: string[];
  regions: MarketRegion[];
  /** True where it hangs on the kind of product, or holds only from a later day. */
  open: boolean;
  condition: string;
  /** The products that they are asked of, where only some. */
  onlyFor: string;
}

/** The words that limits ask of a label, each once. */
export function labelPhrases(judged: readonly Judged[]): LabelPhrase[] {
  const found = new Map<string, LabelPhrase>();
  for (const one of judged) {
    if (one.phrase === '') continue;
    const known = found.get(one.phrase);
    const subject = subjectWords(one);
    const open = !one.certain || one.time === 'coming';
    if (!known) {
      const { condition, kinds } = one.limit;
      const onlyFor = joined(kinds);
      found.set(one.phrase, {
        text: one.phrase,
        because: [subject],
        regions: [one.region],
        open,
        condition,
        onlyFor,
      });
      continue;
    }
    if (!known.because.includes(subject)) known.because.push(subject);
    if (!known.regions.includes(one.region)) known.regions.push(one.region);
    known.open &&= open;
  }
  return [...found.values()].sort((a, b) => Number(a.open) - Number(b.open));
}
