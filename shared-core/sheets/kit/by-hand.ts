import type { SheetNode, TableLayout } from './definition';
import { blankCell, cell, PADDING, ruledTable } from './tables';
import { keptTogether } from './text';
import { QUIET_RULE, RULE, SIZE, SOFT_INK } from './type-scale';

/** Least height of a row that a hand writes in, in points: 8 mm with the room above and below its text. */
export const HAND_ROW = 18;
const LINE_STEP = 20;

/** Ruled lines to write on. */
export function writingLines(count: number, width: number): SheetNode {
  return {
    unbreakable: true,
    canvas: Array.from({ length: count }, (_, index) => ({
      type: 'line' as const,
      x1: 0,
      y1: (index + 1) * LINE_STEP,
      x2: width,
      y2: (index + 1) * LINE_STEP,
      lineWidth: 0.5,
      lineColor: QUIET_RULE,
    })),
  };
}

const UNDERLINED: TableLayout = {
  hLineWidth: (row) => (row === 0 ? 0 : 0.7),
  hLineColor: () => RULE,
  vLineWidth: () => 0,
  vLineColor: () => RULE,
  paddingLeft: (column) => (column === 0 ? 0 : PADDING),
  paddingRight: () => PADDING,
  paddingTop: () => 13,
  paddingBottom: () => 2,
};

/** One line for each signatory: what they sign for, then name, signature and date. Never split over pages. */
export function signatureBlock(roles: readonly string[], width: number): SheetNode {
  const columns = [
    { head: '', share: 22 },
    { head: 'Name', share: 30, byHand: true },
    { head: 'Signature', share: 30, byHand: true },
    { head: 'Date', share: 18, byHand: true },
  ];
  const rows = roles.map((role) => [cell(role, { bold: true }), blankCell(), blankCell(), blankCell()]);
  return keptTogether(ruledTable({ width, columns, rows, rowHeight: HAND_ROW }));
}

/** Blanks to fill in, side by side: a label with a line after it. */
export function blanks(labels: readonly string[], width: number): SheetNode {
  const each = width / labels.length;
  return {
    unbreakable: true,
    table: {
      widths: labels.map((_, index) => each - PADDING - (index === 0 ? 0 : PADDING)),
      body: [labels.map((text) => ({ text, fontSize: SIZE.label, color: SOFT_INK }))],
    },
    layout: UNDERLINED,
  };
}

/** Boxes to tick; one choice, said in words beside each. */
export function tickBoxes(choices: readonly string[]): SheetNode {
  return { text: choices.map((choice) => `☐ ${choice}`).join('        '), margin: [0, 2, 0, 3] };
}
