import type { Region } from '../locale/numbers';
import { regionText, workingNumber, workingText } from '../locale/readable';
import { unitWords } from '../locale/words';
import { sourcesWords } from '../working/source-words';
import type { Worked } from '../working/working';
import type { SheetNode } from './kit/definition';
import { remark } from './kit/text';
import { SIZE, SOFT_INK } from './kit/type-scale';

/** The steps of a working on paper, each with the numbers put in. */
export function stepNodes({ steps }: Worked, region: Region): SheetNode[] {
  return steps.map((step, index): SheetNode => ({
    margin: [0, 0, 0, 4],
    stack: [
      { text: `${index + 1}. ${workingText(step.says, region)}`, fontSize: SIZE.table, color: SOFT_INK },
      {
        fontSize: SIZE.body,
        margin: [12, 1, 0, 0],
        text: [
          ...(step.shows ? [{ text: `${workingText(step.shows, region)} = ` }] : []),
          {
            text: `${workingNumber(step.result, region)} ${unitWords(step.result, step.unit)}`.trim(),
            bold: true,
          },
        ],
      },
    ],
  }));
}

/** Where a working's law and figures come from, on one line; nothing where no source is given. */
export function sourceNodes({ sources }: Worked): SheetNode[] {
  return sources.length > 0 ? [remark(`Source: ${sourcesWords(sources)}`)] : [];
}

/** How a number came about on paper: its steps, then its cautions and sources. */
export function workingNodes(worked: Worked, region: Region): SheetNode[] {
  return [
    ...stepNodes(worked, region),
    ...[...new Set(worked.cautions)].map((caution) => remark(regionText(caution, region))),
    ...sourceNodes(worked),
  ];
}
