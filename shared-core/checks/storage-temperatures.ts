import { COMMON_PRACTICE } from '../working/working';
import type { CheckRule } from './check';
import { namesOf } from './facts';

/** Materials whose storage temperatures have nothing in common leave no temperature at which all of them keep. */
export const storageTemperatures: CheckRule = {
  id: 'storage-temperatures',
  name: 'Storage temperatures overlap',
  tells: 'materials have no storage temperature in common',
  judge({ lines }) {
    const used = lines.filter((line) => line.ppm > 0);
    const highestMin = Math.max(...used.map((line) => line.material.storage.minC ?? -Infinity));
    const lowestMax = Math.min(...used.map((line) => line.material.storage.maxC ?? Infinity));
    if (used.length === 0 || highestMin <= lowestMax) return [];
    const warm = used.filter((line) => line.material.storage.minC === highestMin);
    const cold = used.filter((line) => line.material.storage.maxC === lowestMax);
    return [
      {
        ruleId: 'storage-temperatures',
        severity: 'note',
        title: `${namesOf(warm)} keeps above ${highestMin} °C, ${namesOf(cold)} below ${lowestMax} °C`,
        lines: [...warm, ...cold].map((line) => line.lineId),
        advice:
          'No temperature suits both as raw materials; find out in the stability study where the product keeps.',
        source: COMMON_PRACTICE,
      },
    ];
  },
};
