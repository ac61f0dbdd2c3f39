import type { Cell, Sheet, SheetRow } from '../table';
import type { Archive } from './archive';
import { type CellContext, cellValue, type RawCell } from './cell-value';
import { columnLetters, MOST_COLUMNS, MOST_ROWS, readReference, writeReference } from './cell-reference';
import { unescapeText } from './escaped-text';
import { emptyMerged, type Merge, readMerge } from './merged-cells';
import type { FormatKind } from './number-formats';
import { damaged, tooLarge } from './refusals';
import { add, noTally, notesOf, type Oddities } from './sheet-notes';
import type { WorksheetPart } from './workbook';
import { type Attributes, isOn, type Listener, readXmlPart } from './xml-part';

/** What all sheets of a workbook may hold together: cells (the gaps between them too) and letters of their texts. */
export class Room {
  private cells = 10_000_000;
  private letters = 200_000_000;

  take(cells: number, letters: number): void {
    this.cells -= cells;
    this.letters -= letters;
    if (this.cells < 0 || this.letters < 0)
      throw tooLarge('more cells, or longer texts, than a table can hold');
  }
}

/** Formats whose numbers become text, as they are shown. */
const isShown = (kind: FormatKind): boolean => kind === 'percent' || kind.startsWith('money ');

const lastFilled = (cells: readonly Cell[]) => cells.findLastIndex((cell) => cell !== null);

/** Hears a worksheet (ECMA-376 Part 1, 18.3.1.99) and gathers its rows. */
class SheetListener implements Listener {
  readonly rows: SheetRow[] = [];
  readonly merges: Merge[] = [];
  readonly odd: Oddities = {
    formulas: noTally(),
    unvalued: noTally(),
    noDay: noTally(),
    merged: noTally(),
    hiddenColumns: [],
  };
  /** First and last of columns that are hidden, zero-based. */
  readonly hiddenColumns: [number, number][] = [];
  root = '';
  private inData = false;
  private line = 0;
  private column = -1;
  private row: SheetRow | null = null;
  private cell: RawCell | null = null;
  private hasFormula = false;
  private gathering: 'value' | 'inline' | null = null;
  private run = '';

  constructor(
    private readonly context: CellContext,
    private readonly room: Room,
  ) {}

  open(name: string, attributes: Attributes): void {
    if (this.root === '') this.root = name;
    if (this.cell) this.openInCell(name);
    else if (this.row) {
      if (name === 'c') this.openCell(attributes);
    } else if (this.inData) {
      if (name === 'row') this.openRow(attributes);
    } else if (name === 'sheetData') this.inData = true;
    else if (name === 'col') this.hideColumns(attributes);
    else if (name === 'mergeCell') this.merges.push(readMerge(attributes.ref ?? '', this.merges));
  }

  text(text: string): void {
    if (this.gathering) this.run += text;
  }

  close(name: string): void {
    if (this.gathering && (name === 'v' || name === 't')) this.closeRun();
    else if (this.cell) {
      if (name === 'c') this.closeCell();
    } else if (this.row) {
      if (name === 'row') this.closeRow();
    } else if (name === 'sheetData') this.inData = false;
  }

  /** 18.3.1.73: the row's number may be left out, and is then the next. */
  private openRow({ r, hidden }: Attributes): void {
    this.line = r === undefined ? this.line + 1 : /^\d{1,7}$/.test(r) ? Number(r) : 0;
    if (this.line < 1 || this.line > MOST_ROWS)
      throw damaged(`a row lies outside of the sheet (${r ?? this.line})`);
    this.row = { line: this.line, hidden: isOn(hidden), cells: [] };
    this.column = -1;
  }

  private closeRow(): void {
    const { cells } = this.row!;
    if (cells.length > 0) this.rows.push(this.row!);
    this.row = null;
  }

  /** 18.3.1.4: the cell's reference may be left out, and is then the next. */
  private openCell({ r, t, s }: Attributes): void {
    if (r === undefined) this.column++;
    else {
      const place = readReference(r);
      if (place?.line !== this.line) throw damaged(`a cell lies outside of its row (${r.slice(0, 20)})`);
      this.column = place.column;
    }
    if (this.column >= MOST_COLUMNS) throw damaged(`a cell of row ${this.line} lies outside of the sheet`);
    this.cell = { type: t ?? 'n', style: Number(s ?? 0), value: null, inline: null };
    this.hasFormula = false;
  }

  private openInCell(name: string): void {
    if (name === 'f') this.hasFormula = true;
    else if (name === 'v' || name === 't') {
      this.gathering = name === 'v' ? 'value' : 'inline';
      this.run = '';
    }
  }

  private closeRun(): void {
    const cell = this.cell!;
    if (this.gathering === 'value') cell.value = (cell.value ?? '') + this.run;
    else cell.inline = (cell.inline ?? '') + unescapeText(this.run);
    this.gathering = null;
  }

  private closeCell(): void {
    const raw = this.cell!;
    this.cell = null;
    const place = () => writeReference({ column: this.column, line: this.line });
    if (this.hasFormula) this.tellFormula(raw, place);
    const value = cellValue(raw, this.context, () => add(this.odd.noDay, place));
    if (value === null) return;
    const { cells } = this.row!;
    if ((cells[this.column] ?? null) !== null) throw damaged(`the cell ${place()} is there twice`);
    this.room.take(Math.max(0, this.column + 1 - cells.length), typeof value === 'string' ? value.length : 0);
    while (cells.length < this.column) cells.push(null);
    cells[this.column] = value;
  }

  /** 18.3.1.40 f: the value that a formula last had stands beside it, if the program that wrote it worked it out. */
  private tellFormula(raw: RawCell, place: () => string): void {
    add(this.odd.formulas, place);
    if (raw.value === null || (raw.value === '' && raw.type !== 'str')) add(this.odd.unvalued, place);
  }

  /** 18.3.1.13 col. */
  private hideColumns({ min, max, hidden }: Attributes): void {
    if (!isOn(hidden) || this.hiddenColumns.length >= MOST_COLUMNS) return;
    this.hiddenColumns.push([Number(min) - 1, Math.min(Number(max), MOST_COLUMNS) - 1]);
  }
}

/** Rows may be written in any order; one line twice is a damaged file. */
function inOrder(rows: SheetRow[]): SheetRow[] {
  const sorted = rows.every((row, at) => at === 0 || rows[at - 1]!.line < row.line)
    ? rows
    : rows.toSorted((a, b) => a.line - b.line);
  const twice = sorted.find((row, at) => at > 0 && sorted[at - 1]!.line === row.line);
  if (twice) throw damaged(`row ${twice.line} is there twice`);
  return sorted;
}

/** Letters of the hidden columns in which something stands. */
function filledHidden(rows: readonly SheetRow[], hidden: readonly [number, number][]): string[] {
  if (hidden.length === 0) return [];
  const filled = new Set<number>();
  for (const { cells } of rows) cells.forEach((cell, column) => cell !== null && filled.add(column));
  const found = [...filled].filter((column) => hidden.some(([from, to]) => column >= from && column <= to));
  return found.toSorted((a, b) => a - b).map(columnLetters);
}

/** Reads one worksheet; `stale` where the workbook asks for its formulas to be worked out anew. */
export function readWorksheet(
  archive: Archive,
  { name, hidden, part }: WorksheetPart,
  context: CellContext & { stale: boolean },
  room: Room,
): Sheet {
  const heard = new SheetListener(context, room);
  readXmlPart(archive, part, heard);
  if (heard.root !== 'worksheet') throw damaged(`${part} is not a worksheet`);
  const rows = inOrder(heard.rows);
  const { odd } = heard;
  for (const { reference } of emptyMerged(rows, heard.merges)) add(odd.merged, () => reference);
  for (const row of rows) row.cells.length = lastFilled(row.cells) + 1;
  odd.hiddenColumns = filledHidden(rows, heard.hiddenColumns);
  return {
    name,
    hidden,
    rows: rows.filter((row) => row.cells.length > 0),
    notes: notesOf(odd, context.stale),
    ...(rows.length > 0 && context.formats.some(isShown) && { withPoint: true }),
  };
}
