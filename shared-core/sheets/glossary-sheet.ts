import { GLOSSARY, TERMS, type KeyedTerm, type TermKey } from '../glossary/glossary';
import { sourceWords } from '../working/source-words';
import type { Cell, SheetDefinition } from './kit/definition';
import { contentWidth, sheet, type SheetFrame, type SheetSettings } from './kit/page';
import { cell, ruledTable } from './kit/tables';
import { heading, remark } from './kit/text';
import { titleBlock } from './kit/title-block';
import { SIZE, SOFT_INK } from './kit/type-scale';

function nameCell({ term, also = [] }: KeyedTerm): Cell {
  const others = also.length > 0 ? [cell(also.join(', '), { fontSize: SIZE.small, color: SOFT_INK })] : [];
  return { stack: [cell(term, { bold: true }), ...others] };
}

function meaningCell({ says, source }: KeyedTerm): Cell {
  return { stack: [cell(says), cell(sourceWords(source), { fontSize: SIZE.small, color: SOFT_INK })] };
}

/**
 * Words of the trade as a hand-out for a class: each with its line and where that comes from.
 *
 * @param keys which words, in alphabetical order whatever their order here; all when empty
 * @param printedAt ISO 8601
 */
export function glossarySheet(
  keys: readonly TermKey[],
  settings: SheetSettings,
  printedAt: string,
): SheetDefinition {
  const width = contentWidth(settings.paperSize);
  const terms = keys.length > 0 ? TERMS.filter(({ key }) => keys.includes(key)) : TERMS;
  const frame: SheetFrame = { kind: 'Glossary', title: titleOf(keys), number: '', settings, printedAt };
  return sheet(frame, [
    ...titleBlock(frame, []),
    ruledTable({
      columns: [
        { head: 'Word', share: 26 },
        { head: 'What it means, and where from', share: 74 },
      ],
      rows: terms.map((one) => [nameCell(one), meaningCell(one)]),
      width,
    }),
    heading('Before relying on it', 20),
    remark(
      'Written for teaching. “Not verified” marks a source that was not looked at again. Laws and standards change: the text in force decides.',
    ),
  ]);
}

function titleOf(keys: readonly TermKey[]): string {
  const [only] = keys;
  return keys.length === 1 && only ? GLOSSARY[only].term : 'Words of the trade';
}
