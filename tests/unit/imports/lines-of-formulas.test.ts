import { gatherFormulas, type FormulaRow } from '@core/imports/formula-rows';
import { formulaSheets } from '@core/imports/formula-sheets';
import type { Fault, Values } from '@core/imports/row';
import type { Cell, Sheet } from '@core/tables/table';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

const row = (line: number, values: Values, faults: Fault[] = []) => ({ line, values, faults });
const amount = (percent: number | null, toHundred = false) => ({ 'line.amount': { percent, toHundred } });
const linesOf = ({ values }: { values: Values }): FormulaRow[] => values.lines as FormulaRow[];

describe('a table that holds a line a row', () => {
  it('a row without a formula belongs to the one above, and one without a phase to the phase above', () => {
    const [balm, gel] = gatherFormulas([
      row(2, { 'formula.name': 'Balm', 'line.phase': 'A', 'line.material': 'Wax', ...amount(20) }),
      row(3, { 'line.material': 'Oil', ...amount(80) }),
      row(4, { 'formula.name': 'Gel', 'line.material': 'Water', ...amount(null, true) }),
    ]);
    expect(linesOf(balm!).map(({ line, phase, percent }) => [line, phase, percent])).toEqual([
      [2, 'A', 20],
      [3, 'A', 80],
    ]);
    expect(linesOf(gel!)).toMatchObject([{ phase: '', percent: null, toHundred: true }]);
  });

  it('rows of one formula are gathered though another stands between', () => {
    const found = gatherFormulas(
      ['Balm', 'Gel', 'Balm'].map((name, at) =>
        row(at + 2, { 'formula.name': name, 'line.material': `M${at}` }),
      ),
    );
    expect(found.map((one) => [one.values['formula.name'], linesOf(one).length])).toEqual([
      ['Balm', 2],
      ['Gel', 1],
    ]);
  });

  it('a material is known by its code first, then its name, then its INCI name', () => {
    const [one] = gatherFormulas([
      row(2, {
        'formula.name': 'Balm',
        'line.inci': 'Cera Alba',
        'line.material': 'Wax',
        'line.code': 'W-1',
      }),
    ]);
    expect(linesOf(one!)[0]?.names).toEqual(['W-1', 'Wax', 'Cera Alba']);
  });

  it('a row that only says what the others come to is no line', () => {
    const rows = ['Total', 'Summe', 'Sum:', 'Total Repair Oil'].map((name, at) =>
      row(at + 2, { 'formula.name': 'Balm', 'line.material': name, ...amount(100) }),
    );
    expect(linesOf(gatherFormulas(rows)[0]!).map(({ names }) => names[0])).toEqual(['Total Repair Oil']);
  });

  it('what is wrong with a cell is told with its line, and stays with its formula', () => {
    const [balm, gel] = gatherFormulas([
      row(2, { 'formula.name': 'Balm' }),
      row(3, { 'formula.name': 'Gel' }, [{ heading: 'Share', message: 'Not a share.' }]),
    ]);
    expect([balm!.faults, gel!.faults]).toEqual([
      [],
      [{ heading: 'Share', message: 'Line 3: Not a share.' }],
    ]);
  });

  it('loses no line and makes none up, however rows are mixed', () => {
    const some = fc.array(fc.constantFrom('Balm', 'Gel', ''), { maxLength: 12 });
    fc.assert(
      fc.property(some, (names) => {
        const rows = names.map((name, at) =>
          row(at + 2, { ...(name && { 'formula.name': name }), 'line.material': `M${at}`, ...amount(1) }),
        );
        const lines = gatherFormulas(rows).flatMap(linesOf);
        expect(lines.map(({ line }) => line).sort((a, b) => a - b)).toEqual(rows.map(({ line }) => line));
      }),
      { numRuns: 40 },
    );
  });
});

describe('a workbook with a formula on each sheet', () => {
  const sheet = (name: string, cells: Cell[][], hidden = false): Sheet => ({
    ...{ name, hidden, notes: [] },
    rows: cells.map((one, at) => ({ line: at + 1, hidden: false, cells: one })),
  });
  const HEAD = ['Raw material', '% w/w'];
  const body = (...sheets: Sheet[]) =>
    formulaSheets(sheets, 'f.xlsx', { mark: null, order: null, words: {} })
      .rows.slice(1)
      .map(({ cells }) => cells);

  it('has no line of a hidden sheet, nor of one that holds a head alone', () => {
    const found = body(
      sheet('Balm', [HEAD, ['Wax', 20]]),
      sheet('Old', [HEAD, ['Tallow', 20]], true),
      sheet('Empty', [HEAD]),
    );
    expect(found.map(([name, , , material]) => [name, material])).toEqual([['Balm', 'Wax']]);
  });

  it('counts in its note those that it takes, not those that it leaves out', () => {
    const sheets = [
      sheet('Balm', [HEAD, ['Wax', 20]]),
      sheet('Old', [HEAD, ['Tallow', 20]], true),
      sheet('Empty', [HEAD]),
    ];
    expect(formulaSheets(sheets, 'f.xlsx', { mark: null, order: null, words: {} }).notes).toEqual([
      'Each sheet is taken for a formula, by its name: 1 in all.',
    ]);
  });

  it('takes the phase from the line above its materials, and starts each sheet without one', () => {
    const found = body(
      sheet('Balm', [HEAD, ['Phase A'], ['Wax', 20], ['Phase B: cool-down'], ['Scent', 1]]),
      sheet('Gel', [HEAD, ['Water', 99]]),
    );
    expect(found.map(([name, phase, , material]) => [name, phase, material])).toEqual([
      ['Balm', 'A', 'Wax'],
      ['Balm', 'B', 'Scent'],
      ['Gel', null, 'Water'],
    ]);
  });
});
