import { COMMON_PRACTICE } from '../working/working';
import { namesOf } from './facts';
import type { CheckRule } from './check';

/** An archived material is one that the maker no longer buys. */
export const archivedMaterial: CheckRule = {
  id: 'archived-material',
  name: 'No archived materials',
  tells: 'a line uses a material that was archived',
  judge({ lines }) {
    const archived = lines.filter((line) => line.material.status === 'archived');
    if (archived.length === 0) return [];
    return [
      {
        ruleId: 'archived-material',
        severity: 'warn',
        title: `Archived: ${namesOf(archived)}`,
        lines: archived.map((line) => line.lineId),
        advice: 'Replace it with a material in use, or unarchive it if you still have it.',
        source: COMMON_PRACTICE,
      },
    ];
  },
};
