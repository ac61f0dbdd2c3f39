import { beginReading } from '@core/imports/begin-reading';
import { gatherFormulas } from '@core/imports/formula-rows';
import { formulaSheets } from '@core/imports/formula-sheets';
import type { Outcome } from '@core/imports/plan-row';
import { readRows } from '@core/imports/read-rows';
import { formulaLines } from '@core/formulas/shares';
import type { Formula } from '@core/formulas/formula';
import { blankMaterial } from '@core/materials/material';
import { readCsv } from '@core/tables/csv';
import type { Sheet } from '@core/tables/table';
import { describe, expect, it } from 'vitest';
import { serviceWith, type Ask } from '../service/service-fixture';

const TABLE = [
  'Rezeptur;Phase;Rohstoff;Anteil %;Bemerkung',
  'Larkspur Cream;A;Harrow Water;q.s.;',
  ';A;Harrow Glycerin;5,0;humectant',
  ';B;Larkspur Wax;4,5;',
  'Larkspur Gel;;Harrow Water;95;',
  'Larkspur Gel;;Harrow Nothing;5;',
].join('\n');

function formulasOf(sheet: Sheet) {
  const { head, columns, ways } = beginReading(sheet, {}, undefined, 'formulas');
  return gatherFormulas(readRows(sheet.rows.slice(head + 1), columns, ways));
}

async function shelf(): Promise<Ask> {
  const { ask } = await serviceWith('empty');
  for (const [name, inci] of [
    ['Harrow Water', 'Aqua'],
    ['Harrow Glycerin', 'Glycerin'],
    ['Larkspur Wax', 'Cetearyl Glucoside'],
    ['Twin One', 'Xanthan Gum'],
    ['Twin Two', 'Xanthan Gum'],
  ] as const)
    await ask('POST', '/materials', blankMaterial(name, inci));
  return ask;
}

async function plan(ask: Ask, rows: ReturnType<typeof formulasOf>) {
  const { id } = (
    await ask<{ id: string }>('POST', '/imports', { about: 'formulas', key: 'code', file: 'f.csv' })
  ).body;
  return { id, outcomes: (await ask<Outcome[]>('POST', `/imports/${id}/rows`, { rows })).body };
}
const all = async (ask: Ask) =>
  (await ask<{ rows: { id: string; name: string; code: string }[] }>('GET', '/formulas?limit=100')).body.rows;

describe('a table of formulas, a line a row', () => {
  it('becomes formulas with their phases; a material that is not known refuses its formula, and says where', async () => {
    const ask = await shelf();
    const { id, outcomes } = await plan(ask, formulasOf(readCsv(TABLE, 'f.csv')));
    expect(outcomes.map(({ kind, name }) => [kind, name])).toEqual([
      ['new', 'Larkspur Cream'],
      ['refused', 'Larkspur Gel'],
    ]);
    expect(outcomes[1]!.faults[0]!.message).toContain(
      'Line 6: “Harrow Nothing” is not a material of the library.',
    );
    expect((await ask('POST', `/imports/${id}/take-in`)).body).toEqual({ added: 1, changed: 0 });
    const [made] = await all(ask);
    expect(made!.code).not.toBe('');
    const { formula } = (await ask<{ formula: Formula }>('GET', `/formulas/${made!.id}`)).body;
    expect(formula.phases.map(({ lines }) => lines.length)).toEqual([2, 1]);
    expect(formulaLines(formula).map(({ ppm, toHundred, note }) => [ppm, toHundred, note])).toEqual([
      [0, true, ''],
      [50_000, false, 'humectant'],
      [45_000, false, ''],
    ]);
    // Again: nothing is new. With another share: changed, and back.
    expect((await plan(ask, formulasOf(readCsv(TABLE, 'f.csv')))).outcomes[0]!.kind).toBe('same');
    const other = await plan(ask, formulasOf(readCsv(TABLE.replace('4,5', '6'), 'f.csv')));
    expect(other.outcomes[0]).toMatchObject({ kind: 'changed' });
    expect(other.outcomes[0]!.differences[0]!.after).toContain('B Larkspur Wax 6 %');
    await ask('POST', `/imports/${other.id}/take-in`);
    expect((await ask('POST', `/imports/${other.id}/take-back`)).status).toBe(200);
    const back = (await ask<{ formula: Formula }>('GET', `/formulas/${made!.id}`)).body.formula;
    expect(back.phases).toEqual(formula.phases);
    expect((await ask('POST', `/imports/${id}/take-back`)).status).toBe(409);
  });

  it('asks which of two is meant, refuses a share above all, and tells what its shares come to', async () => {
    const ask = await shelf();
    const text = 'Formula,Material,INCI,%\nGum,,Xanthan Gum,1\nWide,Harrow Water,,120\nHalf,Harrow Water,,50';
    const { outcomes } = await plan(ask, formulasOf(readCsv(text, 'f.csv')));
    expect(outcomes.map(({ kind }) => kind)).toEqual(['refused', 'refused', 'new']);
    expect(outcomes[0]!.faults[0]!.message).toContain('may be Twin One, Twin Two');
    expect(outcomes[2]!.notes).toEqual(['Its shares come to 50 %.']);
  });
});

describe('a workbook with a formula on each sheet', () => {
  it('takes each by the name of its sheet, with phases above their lines', async () => {
    const ask = await shelf();
    const sheet = (name: string, cells: (string | number)[][]): Sheet => ({
      name,
      hidden: false,
      notes: [],
      rows: cells.map((row, at) => ({ line: at + 1, hidden: false, cells: row })),
    });
    const sheets = [
      sheet('Day Milk', [
        ['Raw material', 'INCI', '% w/w'],
        ['Phase A'],
        ['Harrow Water', 'Aqua', 'ad 100'],
        ['Phase B'],
        ['Larkspur Wax', '', 3],
        ['Total', '', 100],
      ]),
      sheet('Night Milk', [
        ['Raw material', 'INCI', '% w/w'],
        ['Harrow Glycerin', '', 10],
        ['Harrow Water', '', 90],
      ]),
    ];
    const table = formulaSheets(sheets, 'milks.xlsx', { mark: null, order: null, words: {} });
    const { id, outcomes } = await plan(ask, formulasOf(table));
    expect(outcomes.map(({ kind, name }) => [kind, name])).toEqual([
      ['new', 'Day Milk'],
      ['new', 'Night Milk'],
    ]);
    await ask('POST', `/imports/${id}/take-in`);
    const made = await all(ask);
    expect(new Set(made.map(({ code }) => code)).size).toBe(2);
    const day = made.find(({ name }) => name === 'Day Milk')!;
    const { formula } = (await ask<{ formula: Formula }>('GET', `/formulas/${day.id}`)).body;
    expect(formula.phases.map(({ lines }) => lines.length)).toEqual([1, 1]);
  });
});
