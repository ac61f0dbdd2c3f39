import Papa from 'papaparse';
import type { Field } from '../record/field';
import { fold } from '../quantities/fold';
import { LIMIT_FIELDS } from './fields';
import { blankLimit, limitContent, type LimitContent } from './limit';

type Key = keyof LimitContent;
const FIELDS = Object.entries(LIMIT_FIELDS) as [Key, Field][];
/** Between the words of one cell. */
const BETWEEN = '; ';

/** A row of a file: the limit that it says, or why it is refused. */
export interface ReadRow {
  /** The line of the file that it begins on; the head is line 1. */
  line: number;
  /** What it is about, as written. */
  subject: string;
  limit: LimitContent | null;
  faults: string[];
}

/** What a file says. */
export interface ReadLimits {
  rows: ReadRow[];
  /** Columns whose head names no field: what stands in them is left out. */
  unknown: string[];
  /** Why nothing can be read of it; null when it can. */
  refused: string | null;
}

const headKey = (head: string): string =>
  fold(head)
    .replace(/[^a-z0-9]+/g, ' ')
    .trim();
const BY_HEAD = new Map(
  FIELDS.flatMap(([key, field]): [string, Key][] => [
    [headKey(key), key],
    [headKey(field.label), key],
    [headKey(headOf(field)), key],
  ]),
);

/** The head of a field's column: its label, with the unit. */
function headOf({ label, shape }: Field): string {
  return 'unit' in shape && shape.unit ? `${label}, ${shape.unit}` : label;
}

function words(cell: string): string[] {
  return cell
    .split(/[;|]/)
    .map((word) => word.trim())
    .filter((word) => word !== '');
}

/** A number as a spreadsheet of any country writes it; text that is none stays as it is, to be refused by its field. */
function numberOf(cell: string): unknown {
  const plain = cell.replace(/\s|%|≤|</g, '').replace(/^(\d+),(\d+)$/, '$1.$2');
  return /^[+-]?\d+(\.\d+)?(e[+-]?\d+)?$/i.test(plain) ? Number(plain) : cell;
}

/** The word of a vocabulary, whatever its case; an unknown one stays, to be refused by its field. */
function wordOf(cell: string, all: readonly string[], names: Readonly<Record<string, string>> = {}): string {
  return all.find((word) => fold(word) === fold(cell) || fold(names[word] ?? '') === fold(cell)) ?? cell;
}

function valueOf({ shape, blank }: Field, cell: string): unknown {
  if (cell === '') return blank;
  switch (shape.kind) {
    case 'number':
      return numberOf(cell);
    case 'word':
      if (shape.empty !== null && fold(shape.empty) === fold(cell)) return null;
      return wordOf(cell, shape.words, shape.names);
    case 'words':
      return words(cell).map((word) => wordOf(word, shape.words));
    default:
      return cell;
  }
}

function faultsOf(
  issues: readonly { path: PropertyKey[]; message: string; code?: string }[],
  held: Record<string, unknown>,
) {
  return issues.map(({ path, message }) => {
    const field = (LIMIT_FIELDS as Record<string, Field>)[String(path[0])];
    const written = held[String(path[0])];
    const shape = field?.shape;
    if (shape && (shape.kind === 'word' || shape.kind === 'words') && message.startsWith('Invalid'))
      return `${field.label}: “${Array.isArray(written) ? written.join(BETWEEN) : String(written)}” is not one of ${shape.words.join(', ')}.`;
    return field ? `${field.label}: ${message}` : message;
  });
}

function rowOf(cells: readonly string[], keys: readonly (Key | null)[], line: number): ReadRow {
  const held: Record<string, unknown> = { ...blankLimit('') };
  keys.forEach((key, at) => {
    if (key) held[key] = valueOf(LIMIT_FIELDS[key] as Field, (cells[at] ?? '').trim());
  });
  const read = limitContent.safeParse(held);
  const subject = String(held.subject);
  const extra = cells.slice(keys.length).some((cell) => cell.trim() !== '');
  const faults = [
    ...(read.success ? [] : faultsOf(read.error.issues, held)),
    ...(extra
      ? ['The row has more cells than the head: a separator stands in a text that is not quoted.']
      : []),
  ];
  return { line, subject, limit: read.success && faults.length === 0 ? read.data : null, faults };
}

const keysOf = (head: readonly string[]): (Key | null)[] =>
  head.map((cell) => BY_HEAD.get(headKey(cell)) ?? null);

/** What parts the cells: the sign by which the head names the most fields. Cells hold all of these signs themselves. */
function delimiterOf(text: string): string {
  const named = (delimiter: string): number => {
    const [head = []] = Papa.parse<string[]>(text, { delimiter, preview: 1 }).data;
    return keysOf(head).filter((key) => key !== null).length;
  };
  return [',', ';', '\t'].reduce((best, one) => (named(one) > named(best) ? one : best));
}

/**
 * Reads limits from a CSV file: comma, semicolon or tab; the first line names the columns by the fields' labels.
 * Several words in a cell stand apart by semicolons. A row that cannot be taken says why.
 */
export function readLimitsCsv(text: string): ReadLimits {
  const plain = text.replace(/^\uFEFF/, '');
  const { data, errors } = Papa.parse<string[]>(plain, {
    skipEmptyLines: false,
    delimiter: delimiterOf(plain),
  });
  const [head, ...body] = data;
  const none = (refused: string): ReadLimits => ({ rows: [], unknown: [], refused });
  if (!head || head.every((cell) => cell.trim() === ''))
    return none('The file is empty. Its first line must name the columns.');
  const quote = errors.find(({ type }) => type === 'Quotes');
  if (quote)
    return none(
      `A quotation mark is left open or stands alone near line ${(quote.row ?? 0) + 1}. Mend it, and choose the file again.`,
    );
  const keys = keysOf(head);
  const twice = keys.find((key, at) => key !== null && keys.indexOf(key) !== at);
  if (twice) return none(`Two columns are called “${LIMIT_FIELDS[twice].label}”. Keep one of them.`);
  const missing = (['subject', 'regions', 'source'] as const).filter((key) => !keys.includes(key));
  if (missing.length > 0)
    return none(
      `A column is missing: ${missing.map((key) => `“${LIMIT_FIELDS[key].label}”`).join(', ')}. The first line must name the columns.`,
    );
  let line = 1 + linesIn(head);
  const rows: ReadRow[] = [];
  for (const cells of body) {
    if (cells.some((cell) => cell.trim() !== '')) rows.push(rowOf(cells, keys, line));
    line += linesIn(cells);
  }
  return {
    rows,
    unknown: head.filter((cell, at) => keys[at] === null && cell.trim() !== ''),
    refused: rows.length === 0 ? 'No row stands below the head.' : null,
  };
}

/** How many lines of the file a record takes: texts may run over several. */
function linesIn(cells: readonly string[]): number {
  return 1 + cells.reduce((sum, cell) => sum + (cell.match(/\n/g)?.length ?? 0), 0);
}

function cellOf({ shape }: Field, value: unknown): string {
  if (value === null || value === undefined) return '';
  if (Array.isArray(value)) return value.join(BETWEEN);
  if (shape.kind === 'word') return shape.names?.[value as string] ?? (value as string);
  return typeof value === 'number' ? String(value) : (value as string);
}

/** Limits as a CSV file that can be read in again. */
export function limitsCsv(limits: readonly LimitContent[]): string {
  const fields = FIELDS.map(([, field]) => headOf(field));
  const data = limits.map((limit) => FIELDS.map(([key, field]) => cellOf(field, limit[key])));
  return `\uFEFF${Papa.unparse({ fields, data }, { newline: '\r\n' })}\r\n`;
}
