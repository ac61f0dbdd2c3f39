import type {
  Cell,
  RuleNode,
  SheetDefinition,
  SheetNode,
  TableNode,
  TextNode,
} from '@core/sheets/kit/definition';
import { TEXT_FONT } from '@core/sheets/kit/definition';
import type { PlacedText } from '@core/sheets/printable-text';

/** A text with the family it is set in. */
export interface SetText extends PlacedText {
  font: string;
}

/** What to do with each text on the way; gives the text that is printed. */
export type EachText = (text: SetText) => string;

function copyText(node: TextNode, where: string, each: EachText): TextNode {
  const font = node.font ?? TEXT_FONT;
  if (typeof node.text === 'string') return { ...node, text: each({ text: node.text, where, font }) };
  const text = node.text.map((run) => ({
    ...run,
    text: each({ text: run.text, where, font: run.font ?? font }),
  }));
  return { ...node, text };
}

/** Copies the nodes of a sheet, text by text; `place` names the section met last. */
export function copyNode<Node extends SheetNode | Cell>(
  node: Node,
  place: { at: string },
  each: EachText,
): Node {
  const copy = (one: SheetNode): SheetNode => copyNode(one, place, each);
  if ('text' in node) {
    const text = node as TextNode;
    if (text.headlineLevel && typeof text.text === 'string') place.at = text.text;
    return copyText(text, place.at, each) as Node;
  }
  if ('stack' in node) return { ...node, stack: (node.stack as SheetNode[]).map(copy) };
  if ('columns' in node) return { ...node, columns: (node.columns as SheetNode[]).map(copy) };
  if ('table' in node) {
    const table = node.table as TableNode['table'];
    const body = table.body.map((row) => row.map((cell) => copyNode(cell, place, each)));
    // pdfmake writes measures into the widths, and moves the ends of lines.
    return { ...node, table: { ...table, widths: [...table.widths], body } };
  }
  if ('canvas' in node)
    return { ...node, canvas: (node.canvas as RuleNode['canvas']).map((line) => ({ ...line })) };
  return { ...node };
}

/** A copy of a sheet that the renderer may change, every text passed through `each`. */
export function copySheet(definition: SheetDefinition, each: EachText): SheetDefinition {
  const place = { at: definition.info.title };
  const plain = (text: string): string => each({ text, where: 'the title', font: TEXT_FONT });
  const { info, footer } = definition;
  return {
    ...definition,
    info: { title: plain(info.title), author: plain(info.author), subject: info.subject },
    content: definition.content.map((node) => copyNode(node, place, each)),
    footer: (page, pages) => copyNode(footer(page, pages), { at: 'the foot of the page' }, each),
  };
}
