import { named } from '../emulsions/conflicts/recognise';
import { COMMON_PRACTICE } from '../working/working';
import type { CheckRule, Finding } from './check';
import { namesOf, sumPpm, type LineFacts } from './facts';

/** Oils pressed from seeds, fruits and kernels hold unsaturated chains; jojoba is a wax that hardly turns, hydrogenated ones have none left. */
const UNSATURATED =
  /(seed|fruit|kernel|germ|nut|bran|leaf) oil$|^(prunus amygdalus dulcis|persea gratissima|oenothera biennis|borago officinalis|olea europaea).* oil$|^squalene$|^(oleic|linoleic|linolenic) acid$|oleate$/;
const STABLE = /^simmondsia chinensis|^cocos nucifera|^ricinus communis|^hydrogenated /;
const RETINOID = /retin(ol|yl|al|oate)/;
const ANTIOXIDANT =
  /tocopherol|^bht$|ascorbyl palmitate|rosmarinus officinalis|propyl gallate|ubiquinone|pentaerythrityl tetra-di/;
/** From this much on an unsaturated oil is worth protecting, ppm of the formula. Common practice, no source. */
const WORTH_IT_PPM = 20_000;

function finding(lines: LineFacts[], severity: Finding['severity'], what: string): Finding {
  return {
    ruleId: 'antioxidant',
    severity,
    title: `${what} (${namesOf(lines)}) and no antioxidant`,
    lines: lines.map((line) => line.lineId),
    advice:
      'Air and light break double bonds: the product turns rancid or loses its active. Add a little tocopherol or another antioxidant to the oil phase, below its highest temperature, and keep light and air away.',
    source: COMMON_PRACTICE,
  };
}

/** Unsaturated oils and retinoids want an antioxidant beside them. */
export const antioxidant: CheckRule = {
  id: 'antioxidant',
  name: 'Unsaturated oils and retinoids are protected',
  tells: 'unsaturated oils or retinoids have no antioxidant beside them, and may turn rancid',
  threshold: { label: 'Warns from this share of unsaturated oils', usual: WORTH_IT_PPM, max: 800_000 },
  judge({ used }, threshold) {
    const guarded = used.some(
      ({ material }) => material.functions.includes('antioxidant') || named(material, ANTIOXIDANT),
    );
    if (guarded) return [];
    const retinoids = used.filter(({ material }) => named(material, RETINOID));
    const oils = used.filter(({ material }) => named(material, UNSATURATED) && !named(material, STABLE));
    return [
      ...(retinoids.length > 0 ? [finding(retinoids, 'warn', 'A retinoid')] : []),
      ...(oils.length > 0 && sumPpm(oils) >= threshold ? [finding(oils, 'note', 'Unsaturated oil')] : []),
    ];
  },
};
