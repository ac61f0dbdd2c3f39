import { named } from '../emulsions/conflicts/recognise';
import type { CheckRule } from './check';
import { namesOf } from './facts';

/** Secondary and tertiary amines and alkanolamides, by their INCI names (from memory); tea and tea tree are none. */
const AMINES =
  /triethanolamine|diethanolamine|diisopropanolamine|triisopropanolamine|\btea-|\b(dea|dipa|tipa)\b|morpholin|dimethylamine$/;
/** What gives off nitrite or nitrosates by itself. */
const NITROSATING = /2-bromo-2-nitropropane|5-bromo-5-nitro|bronopol|bronidox|\bnitrite\b/;

/** An amine beside what nitrosates it forms nitrosamines, which cause cancer. */
export const nitrosamines: CheckRule = {
  id: 'nitrosamines',
  name: 'No amine with a nitrosating agent',
  tells: 'an amine meets something that can turn it into a nitrosamine',
  judge({ used }) {
    const amines = used.filter(({ material }) => named(material, AMINES));
    const others = used.filter(({ material }) => named(material, NITROSATING));
    if (amines.length === 0 || others.length === 0) return [];
    return [
      {
        ruleId: 'nitrosamines',
        severity: 'stop',
        title: `${namesOf(amines)} with ${namesOf(others)}: nitrosamines can form`,
        lines: [...amines, ...others].map((line) => line.lineId),
        advice:
          'Nitrosamines cause cancer. Replace one of the two, and let a qualified assessor decide; the law forbids these amines beside nitrosating substances in many places.',
        source: {
          text: 'Regulation (EC) No 1223/2009, Annex III, entries 60 to 62 (not with nitrosating systems): check the current text',
          basis: 'memory',
        },
      },
    ];
  },
};
