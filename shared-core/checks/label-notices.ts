import { labelPhrases } from '../labelling/phrases';
import { joined } from '../locale/words';
import { NO_ADVICE } from '../limits/law';
import type { CheckRule } from './check';

/** Words that the law asks of the label for what is in it: a notice, so that none is forgotten. */
export const labelNotices: CheckRule = {
  id: 'label-notices',
  name: 'Words that the label must carry',
  tells: 'a substance requires words on the label',
  judge({ lawOf }) {
    const phrases = labelPhrases(lawOf?.judged ?? []);
    return phrases.map((phrase) => {
      const lines = (lawOf?.judged ?? [])
        .filter((one) => one.phrase === phrase.text)
        .flatMap(({ counted }) => counted.flatMap(({ parts }) => parts.map(({ lineId }) => lineId)));
      return {
        ruleId: 'label-notices',
        severity: 'note' as const,
        title: `The label carries “${phrase.text}”, because of ${joined(phrase.because)} (${joined(phrase.regions)})`,
        lines: [...new Set(lines)],
        advice: [
          phrase.open ? 'It depends on the kind of product, or holds only from a later day.' : '',
          phrase.onlyFor === '' ? '' : `Required for: ${phrase.onlyFor}.`,
          phrase.condition,
          NO_ADVICE,
        ]
          .filter((part) => part !== '')
          .join(' '),
        source: { text: 'the limits of law recorded in this library', basis: 'library' as const },
      };
    });
  },
};
