import { isTotal } from '../formulas/pasting/total-row';
import type { Fault, TableRow, Values } from './row';

/** A line of a formula as a row says it. */
export interface FormulaRow {
  line: number;
  /** What its material may be known by, the surest first. */
  names: string[];
  /** Per cent of the formula; null where none is said. */
  percent: number | null;
  toHundred: boolean;
  phase: string;
  note: string;
}

export type Amount = { percent: number | null; toHundred: boolean };

const textAt = (values: Values, key: string): string => {
  const value = values[key];
  return typeof value === 'string' ? value : '';
};

function lineOf({ line, values }: TableRow): FormulaRow | null {
  const names = ['line.code', 'line.material', 'line.inci'].map((key) => textAt(values, key)).filter(Boolean);
  if (names.length === 0 || isTotal(names[0]!)) return null;
  const { percent = null, toHundred = false } = (values['line.amount'] ?? {}) as Partial<Amount>;
  return {
    line,
    names,
    percent,
    toHundred,
    phase: textAt(values, 'line.phase'),
    note: textAt(values, 'line.note'),
  };
}

const ofFormula = (values: Values): Record<string, unknown> =>
  Object.fromEntries(Object.entries(values).filter(([key]) => key.startsWith('formula.')));

/**
 * The formulas of a table that holds a line a row. A row that does not name its formula belongs to the one above, and one
 * that names no phase to the phase above.
 */
export function gatherFormulas(rows: readonly TableRow[]): TableRow[] {
  const formulas: { line: number; head: Record<string, unknown>; lines: FormulaRow[]; faults: Fault[] }[] =
    [];
  const keyOf = (head: Record<string, unknown>): string =>
    String(head['formula.code'] ?? head['formula.name'] ?? '');
  for (const row of rows) {
    const head = ofFormula(row.values);
    const last = formulas[formulas.length - 1];
    const own = keyOf(head);
    let formula = own === '' ? last : formulas.find((one) => keyOf(one.head) === own);
    if (!formula) {
      formula = { line: row.line, head, lines: [], faults: [] };
      formulas.push(formula);
    }
    formula.faults.push(
      ...row.faults.map((fault) => ({ ...fault, message: `Line ${row.line}: ${fault.message}` })),
    );
    const line = lineOf(row);
    if (line) formula.lines.push({ ...line, phase: line.phase || (formula.lines.at(-1)?.phase ?? '') });
  }
  return formulas.map(({ line, head, lines, faults }) => ({ line, values: { ...head, lines }, faults }));
}
