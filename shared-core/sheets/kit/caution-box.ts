import type { SheetNode } from './definition';
import { RULE, SIZE } from './type-scale';

/** Cautions in a firm outline with a thick left bar, told by words and lines, so that a copier keeps them. */
export function cautionBox(cautions: readonly string[], width: number, title = 'Caution'): SheetNode[] {
  if (cautions.length === 0) return [];
  return [
    {
      unbreakable: cautions.join('').length < 1500,
      margin: [0, 6, 0, 2],
      table: {
        widths: [width - 20 - 4],
        body: [
          [
            {
              stack: [
                { text: `▲ ${title}`, bold: true, fontSize: SIZE.body, margin: [0, 0, 0, 1] },
                ...cautions.map((text): SheetNode => ({ text: `– ${text}`, fontSize: SIZE.table })),
              ],
            },
          ],
        ],
      },
      layout: {
        hLineWidth: () => 0.9,
        hLineColor: () => RULE,
        vLineWidth: (column) => (column === 0 ? 4 : 0.9),
        vLineColor: () => RULE,
        paddingLeft: () => 9,
        paddingRight: () => 9,
        paddingTop: () => 3,
        paddingBottom: () => 4,
      },
    },
  ];
}
