import { readNumber } from '../../quantities/read-number';

/** A cell that says how much: a number, with or without a per cent sign or a unit, or the mark of the q.s. line. */
export type Amount = { kind: 'number'; value: number; percent: boolean } | { kind: 'to 100' };

// "q.s.p. 100" in French, "ad 100,0" in German recipes.
const TO_HUNDRED = /^(q\.?\s?s\.?(\s?p\.?)?|ad|to)(\s*(ad|to))?(\s*100([.,]0+)?(\s*(%|g))?)?\.?$/i;
const UNIT = /\s*(%|g|kg|mg|parts?)$/i;

/** How much a cell says; null when it says something else, or nothing. */
export function amountOf(cell: string): Amount | null {
  const text = cell.trim();
  if (text !== '' && TO_HUNDRED.test(text)) return { kind: 'to 100' };
  const bare = text.replace(UNIT, '');
  if (!/\d/.test(bare)) return null;
  const reading = readNumber(bare);
  return reading.ok ? { kind: 'number', value: reading.value, percent: text.endsWith('%') } : null;
}

/** The cells of one line between quotation marks or not, as spreadsheets and CSV files write them (RFC 4180). */
function cellsOf(line: string, mark: string): string[] {
  const cells: string[] = [];
  let cell = '';
  let quoted = false;
  for (let at = 0; at < line.length; at += 1) {
    const sign = line[at];
    if (sign === '"' && quoted && line[at + 1] === '"') {
      cell += '"';
      at += 1;
    } else if (sign === '"' && (quoted || cell.trim() === '')) quoted = !quoted;
    else if (sign === mark && !quoted) {
      cells.push(cell.trim());
      cell = '';
    } else cell += sign;
  }
  return [...cells, cell.trim()];
}

/** A line of running text: its amount stands at its beginning or its end. */
function cellsOfText(line: string): string[] {
  const text = line.trim();
  const last =
    /^(.*?\S)\s+(\S*\d\S*(?:\s*(?:%|g|kg|mg|parts?))?|q\.?\s?s\.?(?:\s+to\s+100(?:\s*%)?)?)$/i.exec(text);
  if (last?.[1] && last[2] && amountOf(last[2])) return [last[1].replace(/[:,–-]+$/, '').trim(), last[2]];
  const first = /^(\d\S*(?:\s*(?:%|g|kg|mg))?)\s+(.+)$/.exec(text);
  if (first?.[1] && first[2] && amountOf(first[1])) return [first[2], first[1]];
  return [text];
}

/**
 * The cells of a pasted text, a row a line; empty lines are left out. Spreadsheets put tabs between cells; files,
 * semicolons; a line of running text has its amount at one of its ends.
 */
export function pastedTable(text: string): string[][] {
  const lines = text.split(/\r\n|\r|\n/).filter((line) => line.trim() !== '');
  const mark = lines.some((line) => line.includes('\t'))
    ? '\t'
    : lines.some((line) => line.includes(';'))
      ? ';'
      : null;
  return lines
    .map((line) => (mark === null ? cellsOfText(line) : cellsOf(line, mark)))
    .filter((cells) => cells.some((cell) => cell !== ''));
}
