import { cellText, type Cell, type Sheet, type SheetRow } from '../tables/table';
import { guessColumns, headingRow } from './guess-columns';
import type { ReadingWays } from './read-cell';

const KEYS = ['line.phase', 'line.code', 'line.material', 'line.inci', 'line.amount', 'line.note'];
const HEADINGS = [
  'Formula',
  'Phase',
  'Code of the material',
  'Material',
  'INCI name',
  'Share',
  'Note on the line',
];
const PHASE = /^(?:phase|fase)\s+([a-z0-9]+)\b/i;

function linesOf({ name, rows }: Sheet, ways: ReadingWays): Cell[][] {
  const head = headingRow(rows, 'formulas');
  const body = rows.slice(head + 1);
  const columns = guessColumns(rows[head]?.cells ?? [], body, ways, 'formulas');
  const at = KEYS.map((key) => columns.find(({ target }) => target === key)?.at ?? null);
  let phase: Cell = null;
  return body.flatMap(({ cells }) => {
    const [first, ...others] = cells.filter((cell) => cell !== null && cellText(cell).trim() !== '');
    const headed = first === undefined ? null : PHASE.exec(cellText(first).trim());
    if (headed?.[1] && others.length === 0) {
      phase = headed[1];
      return [];
    }
    const found = at.map((column) => (column === null ? null : (cells[column] ?? null)));
    if (found.every((cell) => cell === null)) return [];
    return [[name, found[0] ?? phase, ...found.slice(1)]];
  });
}

/** A workbook that holds a formula on each sheet, as one table that holds a line a row: the sheet's name is the formula's. */
export function formulaSheets(sheets: readonly Sheet[], file: string, ways: ReadingWays): Sheet {
  const taken = sheets.filter(({ hidden, rows }) => !hidden && rows.length > 1);
  const lines = taken.flatMap((sheet) => linesOf(sheet, ways));
  const rows = [HEADINGS as Cell[], ...lines].map((cells, at): SheetRow => ({
    line: at + 1,
    cells,
    hidden: false,
  }));
  const notes = [`Each sheet is taken for a formula, by its name: ${taken.length} in all.`];
  return { name: file, hidden: false, rows, notes };
}
