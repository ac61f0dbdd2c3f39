import { COMMON_PRACTICE } from '../working/working';
import type { CheckRule } from './check';

/** A formula without lines, or with lines at zero, weighs nothing there. */
export const empty: CheckRule = {
  id: 'empty',
  name: 'There is something to weigh',
  tells: 'the formula has no lines yet',
  judge({ content, shares }) {
    const lines = content.phases.flatMap((phase) => phase.lines);
    if (lines.length === 0) {
      return [
        {
          ruleId: 'empty',
          severity: 'stop',
          title: 'The formula has no lines yet',
          lines: [],
          advice: 'Add materials to a phase.',
          source: COMMON_PRACTICE,
        },
      ];
    }
    const zero = lines.filter((line) => shares.byLine.get(line.id) === 0);
    if (zero.length === 0) return [];
    return [
      {
        ruleId: 'empty',
        severity: 'warn',
        title: zero.length === 1 ? 'One line is at 0 %' : `${zero.length} lines are at 0 %`,
        lines: zero.map((line) => line.id),
        advice: 'Give it a share, or remove it.',
        source: COMMON_PRACTICE,
      },
    ];
  },
};
