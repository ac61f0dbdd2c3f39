import type { ColumnsNode, SheetNode, TableLayout, TableNode, TextNode } from './definition';
import { PADDING } from './tables';
import { QUIET_RULE, SIZE, SOFT_INK } from './type-scale';

/** What something is called, and what it is. */
export interface Fact {
  label: string;
  value: string | TextNode;
}

const OPEN_LAYOUT: TableLayout = {
  hLineWidth: (row) => (row === 0 ? 0 : 0.4),
  hLineColor: () => QUIET_RULE,
  vLineWidth: () => 0,
  vLineColor: () => QUIET_RULE,
  paddingLeft: (column) => (column === 0 ? 0 : PADDING),
  paddingRight: () => PADDING,
  paddingTop: () => 2,
  paddingBottom: () => 2,
};

function valueNode(value: Fact['value']): TextNode {
  return typeof value === 'string' ? { text: value, fontSize: SIZE.table } : value;
}

/** Label and value in two columns, one fact a row; facts without a value are left out. */
export function factList(facts: readonly Fact[], width: number, labelWidth = 130): TableNode | null {
  const known = facts.filter((fact) => typeof fact.value !== 'string' || fact.value !== '');
  if (known.length === 0) return null;
  return {
    table: {
      widths: [labelWidth - PADDING, width - labelWidth - 2 * PADDING],
      body: known.map((fact) => [
        { text: fact.label, fontSize: SIZE.table, color: SOFT_INK },
        valueNode(fact.value),
      ]),
    },
    layout: OPEN_LAYOUT,
  };
}

/** Facts side by side under the title: a small label over its value, up to `across` in a row. */
export function factRow(facts: readonly Fact[], width: number, across = 4): SheetNode {
  const known = facts.filter((fact) => typeof fact.value !== 'string' || fact.value !== '');
  const rows: ColumnsNode[] = [];
  const gap = 10;
  const each = (width - gap * (across - 1)) / across;
  for (let start = 0; start < known.length; start += across) {
    rows.push({
      columnGap: gap,
      margin: [0, 0, 0, 5],
      columns: known.slice(start, start + across).map((fact) => ({
        width: each,
        stack: [
          { text: fact.label, fontSize: SIZE.label, color: SOFT_INK },
          {
            fontSize: SIZE.body,
            ...valueNode(fact.value),
            ...(typeof fact.value === 'string' ? { fontSize: SIZE.body } : {}),
          },
        ],
      })),
    });
  }
  return { stack: rows };
}
