import Papa from 'papaparse';
import { Problem } from '../problems/problem';
import type { Cell, Sheet, SheetRow } from './table';

const DELIMITERS = [';', ',', '\t', '|'] as const;
type Delimiter = (typeof DELIMITERS)[number];
const NAMES: Record<Delimiter, string> = { ';': 'semicolons', ',': 'commas', '\t': 'tabs', '|': 'bars' };

/** As many records as tell what parts the cells. */
const SAMPLE = 50;

/** A spreadsheet would run what begins so; a quotation mark before it keeps it as text, and is taken off when read. */
const RUNS = /^'*[=+\-@\t\r]/;
const isPlainNumber = (text: string): boolean => /^[+-]?\d+([.,]\d+)?$/.test(text);

/** Text that no spreadsheet runs as a formula; {@link shown} takes it back. Numbers stay as they are. */
export function inert(text: string): string {
  return RUNS.test(text) && !isPlainNumber(text) ? `'${text}` : text;
}
const shown = (text: string): string =>
  text.startsWith("'") && /^'+[=+\-@\t\r]/.test(text) ? text.slice(1) : text;

type LineBreak = '\r' | '\n' | '\r\n';

/** The line break of a text: found once, since every parsing would look through the text for it. */
const lineBreakOf = (text: string): LineBreak =>
  Papa.parse<string[]>(text, { preview: 1, delimiter: ',' }).meta.linebreak as LineBreak;

/** How evenly a sign parts the records: the cells of most records, where that is more than one. */
function evenness(text: string, newline: LineBreak, delimiter: Delimiter): number {
  const { data } = Papa.parse<string[]>(text, {
    ...{ delimiter, newline, preview: SAMPLE, skipEmptyLines: 'greedy' },
  });
  const counts = new Map<number, number>();
  for (const { length } of data) counts.set(length, (counts.get(length) ?? 0) + 1);
  const [width = 1, times = 0] = [...counts].sort((a, b) => b[1] - a[1] || b[0] - a[0])[0] ?? [];
  const heads = data[0]?.length ?? 1;
  return width === 1 && heads === 1 ? 0 : (times / data.length) * Math.min(Math.max(width, heads), 60);
}

function delimiterOf(text: string, newline: LineBreak): Delimiter {
  const scores = DELIMITERS.map((delimiter) => [delimiter, evenness(text, newline, delimiter)] as const);
  return scores.reduce((best, one) => (one[1] > best[1] ? one : best))[0];
}

/** How many lines of the file a record takes: its texts may run over several. */
function linesIn(cells: readonly string[]): number {
  let lines = 1;
  for (const cell of cells)
    if (cell.includes('\n') || cell.includes('\r')) lines += cell.match(/\r\n|\r|\n/g)?.length ?? 0;
  return lines;
}

/** A cell as it is kept; most cells of a wide table are empty. */
const kept = (cell: string): Cell => (cell === '' || cell.trim() === '' ? null : shown(cell));

/** The words of a first line such as `sep=;`, by which spreadsheets name what parts the cells. */
const NAMED = /^sep=(.)\r?\n/;

/**
 * The rows of a text file (CSV, RFC 4180, or tab-separated): what parts the cells is found by itself, quoted cells may
 * hold it and line breaks. Cells are text.
 * @param name what the sheet is called: the file's name
 * @throws Problem invalid-input when the file is empty or a quotation mark is left open
 */
export function readCsv(text: string, name: string): Sheet {
  const plain = text.replace(/^\uFEFF/, '');
  const named = NAMED.exec(plain);
  const body = named ? plain.slice(named[0].length) : plain;
  const newline = lineBreakOf(body);
  const delimiter = (named?.[1] ?? delimiterOf(body, newline)) as Delimiter;
  const { data, errors } = Papa.parse<string[]>(body, { delimiter, newline });
  const quote = errors.find(({ type }) => type === 'Quotes');
  let line = named ? 2 : 1;
  const rows: SheetRow[] = [];
  data.forEach((record, at) => {
    if (quote?.row === at)
      throw new Problem({
        code: 'invalid-input',
        title: `A quotation mark is left open or unpaired near line ${line}.`,
        advice: 'Correct it there, or save the table as XLSX, and choose the file again.',
      });
    const cells = record.map(kept);
    if (cells.some((cell) => cell !== null)) rows.push({ line, hidden: false, cells });
    line += linesIn(record);
  });
  if (rows.length === 0)
    throw new Problem({
      code: 'invalid-input',
      title: 'The file is empty.',
      advice: 'Choose a file whose first row names the columns.',
    });
  return {
    name,
    hidden: false,
    rows,
    notes: [`The cells are separated by ${NAMES[delimiter] ?? delimiter}.`],
  };
}

/**
 * Rows as a CSV file that a spreadsheet opens as UTF-8: RFC 4180, with its mark at the beginning. What a spreadsheet
 * would run as a formula is kept from it by a quotation mark, which reading takes off again.
 * @param delimiter what parts the cells; spreadsheets expect semicolons where numbers have commas
 */
export function writeCsv(
  head: readonly string[],
  rows: readonly (readonly string[])[],
  delimiter: ',' | ';' = ',',
): string {
  const data = [head, ...rows].map((cells) => cells.map(inert));
  return `\uFEFF${Papa.unparse(data, { newline: '\r\n', delimiter })}\r\n`;
}
