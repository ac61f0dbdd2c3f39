import { named } from '../emulsions/conflicts/recognise';
import type { CheckRule } from './check';
import { namesOf } from './facts';

/** Essential oils, absolutes and flower waters, by their INCI names: oils pressed from seeds hold no such allergens. */
const SCENTED =
  /^parfum|^aroma|(peel|flower|leaf|herb|wood|root|bark|needle|rind|bud)( \w+)? (oil|water|extract|absolute)$|^(lavandula|citrus|rosa|mentha|eucalyptus|melaleuca|cananga|pelargonium|cinnamomum|eugenia|cymbopogon).*oil$/;
const SEED = /(seed|fruit|kernel) oil$/;

/** Fragrance and scented botanicals must tell their allergens, or the label cannot. */
export const allergenData: CheckRule = {
  id: 'allergen-data',
  name: 'Fragrance and botanicals have their allergens recorded',
  tells: 'a fragrance or botanical has no allergens recorded, so that the label may lack some',
  judge({ used }) {
    const silent = used.filter(
      ({ material }) =>
        material.allergens.length === 0 &&
        (material.functions.includes('fragrance') || (named(material, SCENTED) && !named(material, SEED))),
    );
    if (silent.length === 0) return [];
    return [
      {
        ruleId: 'allergen-data',
        severity: silent.some(({ material }) => material.functions.includes('fragrance')) ? 'warn' : 'note',
        title: `No allergens recorded: ${namesOf(silent)}`,
        lines: silent.map((line) => line.lineId),
        advice:
          'Ask the supplier for the list of declarable allergens, and record it at the material, even when it is empty in the notes: without it the ingredient list cannot name them.',
        source: {
          text: 'Regulation (EC) No 1223/2009, Article 19 and Annex III, as changed by (EU) 2023/1545: check the current text',
          basis: 'memory',
        },
      },
    ];
  },
};
