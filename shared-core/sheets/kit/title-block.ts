import type { SheetNode } from './definition';
import type { Fact } from './facts';
import { factRow } from './facts';
import { contentWidth } from './page';
import type { SheetFrame } from './page';
import { rule } from './text';
import { SIZE, SOFT_INK } from './type-scale';

/** The head of the first page: kind and title, the maker's name and address, a rule, then the facts. */
export function titleBlock(frame: SheetFrame, facts: readonly Fact[], subtitle = ''): SheetNode[] {
  const { makerName, makerAddress, paperSize } = frame.settings;
  const width = contentWidth(paperSize, frame.orientation);
  const maker = makerName || makerAddress ? Math.round(width * 0.34) : 0;
  const named: SheetNode = {
    width: width - maker - (maker ? 16 : 0),
    stack: [
      { text: frame.kind, fontSize: SIZE.body, bold: true, color: SOFT_INK },
      { text: frame.title, headlineLevel: 1, fontSize: titleSize(frame.title), bold: true, lineHeight: 1.02 },
      ...(subtitle ? [{ text: subtitle, color: SOFT_INK, margin: [0, 2, 0, 0] } as SheetNode] : []),
    ],
  };
  const by: SheetNode = {
    width: maker,
    stack: [
      ...(makerName ? [{ text: makerName, bold: true, alignment: 'right' } as SheetNode] : []),
      ...(makerAddress
        ? [{ text: makerAddress, fontSize: SIZE.small, color: SOFT_INK, alignment: 'right' } as SheetNode]
        : []),
    ],
  };
  return [
    { columns: maker ? [named, by] : [named], columnGap: maker ? 16 : 0, margin: [0, 0, 0, 7] },
    { ...rule(width, 'strong'), margin: [0, 0, 0, 7] },
    factRow(facts, width),
  ];
}

// A name of 200 characters still leaves the page to its content.
function titleSize(title: string): number {
  if (title.length > 120) return 12;
  return title.length > 60 ? 14 : SIZE.title;
}
