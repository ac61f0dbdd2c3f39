import { COMMON_PRACTICE } from '../working/working';
import type { CheckRule } from './check';
import { percentText } from './facts';

/** A formula adds up to exactly 100 %; a q.s. line cannot be asked for less than nothing. */
export const total: CheckRule = {
  id: 'total',
  name: 'The lines add up to 100 %',
  tells: 'the lines do not add up to 100 %',
  judge({ content, shares }) {
    const lines = content.phases.flatMap((phase) => phase.lines);
    if (lines.length === 0) return [];
    const toHundred = lines.find((line) => line.toHundred);
    const left = toHundred ? (shares.byLine.get(toHundred.id) ?? 0) : 0;
    if (toHundred && left < 0) {
      return [
        {
          ruleId: 'total',
          severity: 'stop',
          title: `The other lines come to ${percentText(1_000_000 - left)}, so nothing is left for the q.s. line`,
          lines: [toHundred.id],
          advice: `Lower the other lines by at least ${percentText(-left)}.`,
          source: COMMON_PRACTICE,
        },
      ];
    }
    if (shares.differencePpm === 0) return [];
    const missing = shares.differencePpm > 0;
    return [
      {
        ruleId: 'total',
        severity: 'stop',
        title: `The lines come to ${percentText(shares.totalPpm)}, ${percentText(Math.abs(shares.differencePpm))} too ${missing ? 'little' : 'much'}`,
        lines: [],
        advice: missing
          ? 'Add what is missing, or mark one line q.s. to 100.'
          : 'Lower a line, or mark one line q.s. to 100.',
        source: COMMON_PRACTICE,
      },
    ];
  },
};
