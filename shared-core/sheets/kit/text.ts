import type { RuleNode, SheetNode, StackNode, TextNode, TextStyle } from './definition';
import { NUMBER_FONT } from './definition';
import { QUIET_RULE, RULE, SIZE, SOFT_INK } from './type-scale';

/** Room that must be left below a heading, about three lines of a table. */
const KEPT_BELOW = 64;

/**
 * The heading of a section, never left alone at the foot of a page: it claims room below itself in one
 * unbreakable block, and gives that room back to what follows.
 * @param room in points, for what must stand below it on the same page
 */
export function heading(text: string, room = KEPT_BELOW): StackNode {
  const below = 3 + room;
  return {
    stack: [
      {
        unbreakable: true,
        stack: [{ text, headlineLevel: 2, fontSize: SIZE.section, bold: true, margin: [0, 11, 0, below] }],
      },
      { stack: [], margin: [0, -room, 0, 0] },
    ],
  };
}

export function paragraph(text: string, style: TextStyle = {}): TextNode {
  return { text, margin: [0, 0, 0, 4], ...style };
}

/** A remark below a table or a figure. */
export function remark(text: string): TextNode {
  return { text, fontSize: SIZE.small, color: SOFT_INK, margin: [0, 3, 0, 2] };
}

/** A lot, batch or item number, in the face that tells 0 from O. */
export function numberText(text: string, fontSize: number = SIZE.table): TextNode {
  return { text, font: NUMBER_FONT, fontSize };
}

export function rule(width: number, weight: 'strong' | 'quiet' = 'quiet'): RuleNode {
  const strong = weight === 'strong';
  return {
    canvas: [
      {
        type: 'line',
        x1: 0,
        y1: 0,
        x2: width,
        y2: 0,
        lineWidth: strong ? 1.2 : 0.5,
        lineColor: strong ? RULE : QUIET_RULE,
      },
    ],
  };
}

/** A heading kept on one page with what follows it. */
export function keptTogether(...nodes: SheetNode[]): SheetNode {
  return { stack: nodes, unbreakable: true };
}
