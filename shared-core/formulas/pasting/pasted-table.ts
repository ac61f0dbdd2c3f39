import { readPowerOfTen } from '../../quantities/power-of-ten';
import { readNumber } from '../../quantities/read-number';

/**
 * A cell that says how much: a number, with or without a per cent sign, or the mark of the q.s. line. A mass is told in
 * grams, so that those of one recipe can be held against each other whatever their units.
 */
export type Amount = { kind: 'number'; value: number; percent: boolean } | { kind: 'to 100' };

// "q.s.p. 100" in French, "ad 100,0" and "auf 100" in German recipes.
const FILLED = String.raw`(?:q\.?\s?s\.?(?:\s?p\.?)?)(?:\s*(?:ad|to|auf))?`;
const WHOLE = String.raw`100(?:[.,]0+)?(?:\s*(?:%|g))?`;
const TO_HUNDRED = new RegExp(`^(?:${FILLED}(?:\\s*${WHOLE})?|(?:ad|to|auf)(?:\\s*${WHOLE})?)\\.?$`, 'i');
const UNIT = /\s*(%|g|kg|mg|parts?)$/i;
const GRAMS: Readonly<Record<string, number>> = { kg: 1000, mg: 1e-3 };

/** A power bears its sign wherever a spreadsheet writes one: “12E4” is a code. */
const POWERED = /\de[+−-]\d/i;

/** How much a cell says; null when it says something else, or nothing. */
export function amountOf(cell: string): Amount | null {
  const text = cell.trim();
  if (text !== '' && TO_HUNDRED.test(text)) return { kind: 'to 100' };
  const bare = text.replace(UNIT, '');
  const grams = GRAMS[UNIT.exec(text)?.[1]?.toLowerCase() ?? ''] ?? 1;
  if (!/\d/.test(bare)) return null;
  const powered = POWERED.test(bare) ? readPowerOfTen(bare.replace('−', '-'), readNumber) : null;
  const reading = powered ?? readNumber(bare);
  return reading.ok
    ? { kind: 'number', value: Number((reading.value * grams).toPrecision(12)), percent: text.endsWith('%') }
    : null;
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

/** The mark of the q.s. line at the end of a running text: “Wasser ad 100”, “eau q.s.p. 100”. */
const ENDS_TO_HUNDRED = new RegExp(
  String.raw`^(.*?\S)[\s,:–—-]+(${FILLED}(?:\s*${WHOLE})?|(?:ad|to|auf)\s*${WHOLE})\.?$`,
  'i',
);

/** A line of running text: its amount stands at its beginning or its end. */
function cellsOfText(line: string): string[] {
  const text = line.trim();
  const filled = ENDS_TO_HUNDRED.exec(text);
  if (filled?.[1] && filled[2]) return [filled[1].replace(/[:,–—-]+$/, '').trim(), filled[2]];
  const last = /^(.*?\S)\s+(\S*\d\S*(?:\s*(?:%|g|kg|mg|parts?))?)$/i.exec(text);
  if (last?.[1] && last[2] && amountOf(last[2])) return [last[1].replace(/[:,–—-]+$/, '').trim(), last[2]];
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
