import { formatNumber, type Region } from '../locale/numbers';
import type { Source, Worked } from '../working/working';
import type { SheetNode } from './kit/definition';
import { remark } from './kit/text';
import { SIZE, SOFT_INK } from './kit/type-scale';

const BASIS: Record<Source['basis'], string> = {
  read: '',
  memory: ' (from memory: check before relying on it)',
  'common-practice': '',
  library: ' (from the library)',
  user: ' (entered)',
};

/** A source as a sheet names it, with how it is known. */
export function sourceWords(source: Source): string {
  // Some texts say it themselves.
  return /from memory/.test(source.text) ? source.text : source.text + BASIS[source.basis];
}

/** How a number came about on paper: each step with the numbers put in, then its cautions and sources. */
export function workingNodes(worked: Worked, region: Region): SheetNode[] {
  const steps = worked.steps.map((step, index): SheetNode => ({
    margin: [0, 0, 0, 4],
    stack: [
      { text: `${index + 1}. ${step.says}`, fontSize: SIZE.table, color: SOFT_INK },
      {
        fontSize: SIZE.body,
        margin: [12, 1, 0, 0],
        text: [
          { text: `${step.shows} = ` },
          {
            text: `${formatNumber(step.result, region, { min: 0, max: 4 })} ${step.unit}`.trim(),
            bold: true,
          },
        ],
      },
    ],
  }));
  const sources = worked.sources.map(sourceWords).join('; ');
  return [...steps, ...worked.cautions.map(remark), ...(sources ? [remark(`Source: ${sources}`)] : [])];
}
