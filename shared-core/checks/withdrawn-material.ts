import type { Material } from '../materials/material';
import { COMMON_PRACTICE } from '../working/working';
import type { CheckRule, Finding } from './check';
import { namesOf, type LineFacts } from './facts';

/** Why materials were withdrawn, as their maker wrote it. */
function reasonsOf(lines: readonly LineFacts[]): string {
  const reason = ({ tradeName, withdrawnOn, withdrawnWhy }: Material): string =>
    `${tradeName} from ${withdrawnOn}${withdrawnWhy === '' ? '' : `: ${withdrawnWhy}`}`;
  return [...new Set(lines.map(({ material }) => reason(material)))].join('; ');
}

/** A withdrawn material is not to be used from a day on: recalled, no longer made, no longer allowed. */
export const withdrawnMaterial: CheckRule = {
  id: 'withdrawn-material',
  name: 'No withdrawn materials',
  tells: 'a line uses a material that was withdrawn, or soon will be',
  judge({ lines, onDay }) {
    const marked = lines.filter(({ material }) => material.withdrawnOn !== '');
    const gone = marked.filter(({ material }) => onDay === null || material.withdrawnOn <= onDay);
    const told = (of: readonly LineFacts[], soon: boolean): Finding[] => {
      if (of.length === 0) return [];
      return [
        {
          ruleId: 'withdrawn-material',
          severity: soon ? 'note' : 'stop',
          title: `${soon ? 'To be withdrawn' : 'Withdrawn'}: ${namesOf(of)}`,
          lines: of.map((line) => line.lineId),
          advice: `Put another material in its place${soon ? ' before that day' : ''}. ${reasonsOf(of)}.`,
          source: COMMON_PRACTICE,
        },
      ];
    };
    return [
      ...told(gone, false),
      ...told(
        marked.filter((line) => !gone.includes(line)),
        true,
      ),
    ];
  },
};
