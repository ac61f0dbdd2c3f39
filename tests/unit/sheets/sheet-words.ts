import type { Cell, SheetDefinition, SheetNode } from '@core/sheets/kit/definition';

/** The texts of a node in the order in which they are read, one for each piece that is set by itself. */
export function textsOf(node: SheetNode | Cell): string[] {
  if ('stack' in node) return (node.stack as SheetNode[]).flatMap(textsOf);
  if ('columns' in node) return (node.columns as SheetNode[]).flatMap(textsOf);
  if ('table' in node) return (node as { table: { body: Cell[][] } }).table.body.flat().flatMap(textsOf);
  if ('text' in node) {
    const { text } = node as { text: string | { text: string }[] };
    const whole = typeof text === 'string' ? text : text.map((run) => run.text).join('');
    return whole === '' ? [] : [whole];
  }
  return [];
}

/** All that a sheet says, but for its foot. */
export function wordsOf({ content }: Pick<SheetDefinition, 'content'>): string[] {
  return content.flatMap(textsOf);
}

/** The rows of the first table under whose head all of `heads` stand, head left out; each cell as one text. */
export function rowsUnder(nodes: readonly (SheetNode | Cell)[], ...heads: string[]): string[][] {
  for (const node of nodes) {
    if ('table' in node) {
      const { table } = node as { table: { body: Cell[][]; headerRows?: number } };
      const head = table.body[(table.headerRows ?? 1) - 1]?.flatMap(textsOf) ?? [];
      if (heads.every((one) => head.includes(one)))
        return table.body
          .slice(table.headerRows ?? 1)
          .map((row) => row.map((cell) => textsOf(cell).join('\n')));
    }
    const inside = 'stack' in node ? node.stack : 'columns' in node ? node.columns : [];
    const found = rowsUnder(inside as SheetNode[], ...heads);
    if (found.length > 0) return found;
  }
  return [];
}

/** What stands beside each label among the facts under a title. */
export function factOf(sheet: Pick<SheetDefinition, 'content'>, label: string): string | undefined {
  const words = wordsOf(sheet);
  const at = words.indexOf(label);
  return at < 0 ? undefined : words[at + 1];
}
