import type { InciPart } from '../materials/composition';
import { same } from '../record/same';
import type { Cell, SheetRow } from '../tables/table';
import type { Column } from './guess-columns';
import { plain } from './plain';
import { readCell, type CellReading, type ReadingWays } from './read-cell';
import type { Fault, TableRow, Values } from './row';
import { targetOf } from './targets';

/** By what a row of a table is known to be a material of the library. */
export const KEYS = ['code', 'tradeName'] as const;
export type KeyTarget = (typeof KEYS)[number];

/** So many different cells of a column are kept as they were understood: most columns repeat a few. */
const MOST_UNDERSTOOD = 2_000;

/** What is to be read of a column, and what its cells were found to say. */
interface ColumnReader {
  at: number;
  key: string;
  heading: string;
  read(cell: Cell): CellReading;
}

function columnReader({ at, heading, unit }: Column, key: string, ways: ReadingWays): ColumnReader {
  const target = targetOf(key);
  const understood = new Map<Cell, CellReading>();
  const read = (cell: Cell): CellReading => {
    const before = understood.get(cell);
    if (before) return before;
    const reading = readCell(cell, target, unit, ways);
    if (typeof cell !== 'object' && understood.size < MOST_UNDERSTOOD) understood.set(cell, reading);
    return reading;
  };
  return { at, key, heading: heading || target.label, read };
}

function readRow(row: SheetRow, columns: readonly ColumnReader[]): TableRow {
  const values: Record<string, unknown> = {};
  const faults: Fault[] = [];
  for (const { at, heading, key, read } of columns) {
    const cell = row.cells[at] ?? null;
    // Most cells of a wide table are empty.
    if (cell === null) continue;
    const reading = read(cell);
    if (reading.ok) {
      if (reading.value !== undefined) values[key] = reading.value;
      continue;
    }
    const words = reading.words && { target: key, written: reading.words };
    faults.push({ heading, message: reading.message, ...(words && { words }) });
  }
  return { line: row.line, values: SHARE in values ? withShare(values) : values, faults };
}

const SHARE = 'composition.share';

/** The share in a column of its own belongs to the one INCI name of the row. */
function withShare(values: Record<string, unknown>): Values {
  const { [SHARE]: share, ...others } = values;
  const parts = others.composition as InciPart[] | undefined;
  if (!share || parts?.length !== 1) return others;
  const [lowPpm, highPpm] = share as [number, number];
  return { ...others, composition: [{ inci: parts[0]!.inci, lowPpm, highPpm }] };
}

function saysSomething({ values, faults }: TableRow): boolean {
  for (const _ in values) return true;
  return faults.length > 0;
}

/**
 * Reads rows of a table as the columns say, any number at a time; rows that say nothing at all are left out. A cell that
 * says what another one of its column said is not understood anew: their values are one and the same, and not to be changed.
 */
export function rowReader(
  columns: readonly Column[],
  ways: ReadingWays,
): (rows: readonly SheetRow[]) => TableRow[] {
  const readers = columns.flatMap((column) =>
    column.target === null ? [] : [columnReader(column, column.target, ways)],
  );
  return (rows) => rows.map((row) => readRow(row, readers)).filter(saysSomething);
}

/** All rows of a table, as {@link rowReader} reads them. */
export const readRows = (
  rows: readonly SheetRow[],
  columns: readonly Column[],
  ways: ReadingWays,
): TableRow[] => rowReader(columns, ways)(rows);

/** The key that a table's rows can be known by: the code where every row has one, else the trade name. */
export function likelyKey(rows: readonly TableRow[]): KeyTarget {
  const coded = rows.filter(({ values }) => typeof values.code === 'string').length;
  return rows.length > 0 && coded === rows.length ? 'code' : 'tradeName';
}

export const keyOf = ({ values }: Pick<TableRow, 'values'>, key: KeyTarget): string =>
  typeof values[key] === 'string' ? plain(values[key]) : '';

const refusal = (message: string): Fault => ({ heading: '', message });

const isOffer = (key: string): boolean => key.startsWith('offer.');
const offerIn = (values: Values): Values =>
  Object.fromEntries(Object.entries(values).filter(([key]) => isOffer(key)));
const withoutOffer = (values: Values): Values =>
  Object.fromEntries(Object.entries(values).filter(([key]) => !isOffer(key)));

/** A further row of a material: its INCI name and its offer are one more each, all else must agree or be empty. */
function joined(first: TableRow, next: TableRow): TableRow {
  const { composition, ...others } = withoutOffer(next.values);
  const offer = offerIn(next.values);
  const clash = Object.entries(others).find(
    ([key, value]) => first.values[key] !== undefined && !same(first.values[key], value),
  );
  const faults = [...first.faults, ...next.faults];
  if (clash)
    faults.push(
      refusal(`Line ${next.line} gives another value for ${targetOf(clash[0]).label}. A material has one.`),
    );
  const parts = [...((first.values.composition as InciPart[]) ?? []), ...((composition as InciPart[]) ?? [])];
  const offers = [
    ...((first.values.offers as Values[]) ?? []),
    ...(Object.keys(offer).length > 0 ? [offer] : []),
  ];
  const values = {
    ...others,
    ...first.values,
    ...(parts.length > 0 && { composition: parts }),
    ...(offers.length > 0 && { offers }),
  };
  return { line: first.line, values, faults };
}

/** Whether a row only adds to a material that stands above: an INCI name with its share, or an offer. */
function addsOnly({ values }: TableRow, shares: boolean): boolean {
  if (shares && values.composition !== undefined) return true;
  const others = Object.keys(withoutOffer(values)).filter(
    (key) => !(KEYS as readonly string[]).includes(key),
  );
  return others.length === 0 && Object.keys(values).some(isOffer);
}

/**
 * The materials of a table: with a column of shares, rows of one key are the INCI names of one material, and rows that
 * hold nothing but an offer are its offers; any other key that comes twice is a fault of the later row.
 */
export function gatherRows(
  rows: readonly TableRow[],
  key: KeyTarget,
  columns: readonly Column[],
): TableRow[] {
  const bySeveral = columns.some(({ target }) => target === SHARE);
  const seen = new Map<string, number>();
  const gathered: TableRow[] = [];
  for (const row of rows) {
    const name = keyOf(row, key);
    const before = name === '' ? undefined : seen.get(name);
    if (before === undefined) {
      if (name !== '') seen.set(name, gathered.length);
      gathered.push(row);
    } else if (addsOnly(row, bySeveral)) gathered[before] = joined(gathered[before]!, row);
    else {
      const twice = refusal(`“${String(row.values[key])}” is already in line ${gathered[before]!.line}.`);
      gathered.push({ ...row, faults: [...row.faults, twice] });
    }
  }
  return gathered;
}
