import { COMMON_PRACTICE } from '../working/working';
import type { CheckRule } from './check';

/** A line whose material is no longer in the library cannot be made, priced or labelled. */
export const missingMaterial: CheckRule = {
  id: 'missing-material',
  name: 'Every line has its material',
  tells: 'a line’s material is no longer in the library',
  judge({ orphans }) {
    if (orphans.length === 0) return [];
    return [
      {
        ruleId: 'missing-material',
        severity: 'stop',
        title:
          orphans.length === 1
            ? 'The material of one line is not in the library any more'
            : `The materials of ${orphans.length} lines are not in the library any more`,
        lines: orphans.map((line) => line.id),
        advice: 'Choose another material for it, or remove the line. Other checks leave this line out.',
        source: COMMON_PRACTICE,
      },
    ];
  },
};
