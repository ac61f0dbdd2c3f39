import type { Cell, SheetNode } from '@core/sheets/kit/definition';

/** An element of the PDF's structure tree (ISO 32000-1, 14.8.4), before the document exists. */
export interface StructureElement {
  type: 'Document' | 'H1' | 'H2' | 'H3' | 'P' | 'Table' | 'TR' | 'TH' | 'TD' | 'Figure';
  alt?: string;
  children: StructureElement[];
  root: StructureElement;
  /** Lines laid out for it and drawn of it; a line drawn once more is a repeated table head. */
  laidOut: number;
  drawn: number;
}

/** A node that knows its element. The name starts with _ because pdfmake leaves such keys out of its messages. */
export interface Tagged {
  _structure?: StructureElement;
}

function element(
  type: StructureElement['type'],
  parent: StructureElement | null,
  alt?: string,
): StructureElement {
  const made: Omit<StructureElement, 'root'> = {
    type,
    children: [],
    laidOut: 0,
    drawn: 0,
    ...(alt && { alt }),
  };
  const whole = Object.assign(made, { root: parent?.root }) as StructureElement;
  if (!parent) whole.root = whole;
  parent?.children.push(whole);
  return whole;
}

function tagCell(cell: Cell, row: StructureElement, type: 'TH' | 'TD') {
  if (Object.keys(cell).length === 0) return;
  const made = element(type, row);
  if ('text' in cell) (cell as Tagged)._structure = made;
  else tagNode(cell as SheetNode, made);
}

function tagNode(node: SheetNode, parent: StructureElement) {
  if ('text' in node) {
    const type = node.headlineLevel ? (`H${node.headlineLevel}` as const) : 'P';
    if (node.text !== '') (node as Tagged)._structure = element(type, parent);
  } else if ('image' in node || 'svg' in node)
    (node as Tagged)._structure = element('Figure', parent, node.alt);
  else if ('stack' in node) node.stack.forEach((one) => tagNode(one, parent));
  else if ('columns' in node) node.columns.forEach((one) => tagNode(one, parent));
  else if ('table' in node) {
    const heads = node.table.headerRows ?? 0;
    // A table without a head only arranges things: its cells are read in order, as if it were not there.
    const table = heads > 0 ? element('Table', parent) : null;
    node.table.body.forEach((cells, index) => {
      const row = table ? element('TR', table) : null;
      for (const cell of cells) {
        if (row) tagCell(cell, row, index < heads ? 'TH' : 'TD');
        else if (Object.keys(cell).length > 0) tagNode(cell as SheetNode, parent);
      }
    });
  }
}

/** Gives every node of a sheet its place in the structure tree, in reading order. */
export function tagContent(content: readonly SheetNode[]): StructureElement {
  const root = element('Document', null);
  content.forEach((node) => tagNode(node, root));
  return root;
}
