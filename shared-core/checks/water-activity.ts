import { activityOfWater, GROWTH_SOURCE, growthAt } from '../solutions/humectants';
import { NOT_PROOF, type CheckRule } from './check';
import { waterOf } from './self-preserving';

/** Humectants hold water back from microbes: how far, and what still grows there. */
export const waterActivityOfFormula: CheckRule = {
  id: 'water-activity',
  name: 'Water activity beside much humectant',
  tells: 'humectants lower the water activity so far that some microbes no longer grow',
  judge({ used, watery }) {
    const worked = activityOfWater(used, waterOf(used));
    if (!worked) return [];
    const stops = growthAt(worked.value);
    if (stops === '') return [];
    return [
      {
        ruleId: 'water-activity',
        severity: 'note',
        title: `Water activity about ${worked.value.toFixed(2)}: ${stops}`,
        lines: watery.map((line) => line.lineId),
        advice: `That helps the preservative, and replaces none: water that condenses under the lid, or that wet fingers bring, is not held back. Measure it in the finished product. ${NOT_PROOF}`,
        source: GROWTH_SOURCE,
        working: worked,
      },
    ];
  },
};
