import { planFormula, type FormulaPlanParts } from '@core/imports/plan-formula';
import type { FormulaRow } from '@core/imports/formula-rows';
import type { Formula } from '@core/formulas/formula';
import type { Fault } from '@core/imports/row';
import { describe, expect, it } from 'vitest';
import { content, make, nextId, phase } from '../checks/build';

const water = make('Harrow Water', 'Aqua');
const wax = make('Larkspur Wax', 'Cera Alba');
const twins = [make('Twin One', 'Xanthan Gum'), make('Twin Two', 'Xanthan Gum')];
const SHELF = [water, wax, ...twins];

const row = (name: string, percent: number | null, part: Partial<FormulaRow> = {}): FormulaRow => ({
  ...{ line: 2, names: [name], percent, toHundred: false, phase: 'A', note: '', ...part },
});
function kept(part: Partial<Formula> = {}): Formula {
  const at = '2026-01-01T00:00:00.000Z';
  return {
    ...content([phase([[water, 80]]), phase([[wax, 20]])]),
    ...{ id: nextId(), revision: 1, createdAt: at, updatedAt: at, archived: false, ...part },
  } as Formula;
}
function plan(lines: FormulaRow[], values: object = {}, known: Formula[] = [], faults: Fault[] = []) {
  const parts: FormulaPlanParts = {
    find: (names) => {
      const rows = SHELF.filter(
        ({ tradeName, composition }) =>
          names.includes(tradeName) || names.includes(composition[0]?.inci ?? ''),
      );
      return rows.length > 0 ? { rows } : null;
    },
    nameOf: (id) => SHELF.find((one) => one.id === id)?.tradeName ?? '',
    known: (name) => known.filter(({ code, name: called }) => code === name || called === name),
    newId: nextId,
  };
  return planFormula({ line: 2, faults, values: { 'formula.name': 'Balm', lines, ...values } }, parts);
}
const messages = (...asked: Parameters<typeof plan>): string[] =>
  plan(...asked).outcome.faults.map(({ message }) => message);

describe('a formula in a table', () => {
  it('that is not there yet is new, of the kind that it says, with its phases in the order of its rows', () => {
    const { outcome, content: made } = plan(
      [
        row('Larkspur Wax', 20, { phase: 'Oil part' }),
        row('Harrow Water', null, { toHundred: true, phase: 'B' }),
      ],
      { 'formula.code': 'F-900', 'formula.use': 'rinse-off', 'formula.purpose': 'Hands' },
    );
    expect(outcome).toMatchObject({ kind: 'new', name: 'Balm', faults: [], notes: [], differences: [] });
    expect(made).toMatchObject({ code: 'F-900', name: 'Balm', use: 'rinse-off', purpose: 'Hands' });
    expect(
      made?.phases.map(({ title, lines }) => [title, lines.map(({ ppm, toHundred }) => [ppm, toHundred])]),
    ).toEqual([
      ['Oil part', [[200_000, false]]],
      ['', [[0, true]]],
    ]);
  });

  it('has one phase A, whether its rows write A, a or Phase A', () => {
    const { content: made } = plan([
      row('Harrow Water', 80, { phase: 'A' }),
      row('Larkspur Wax', 10, { phase: 'Phase B' }),
      row('Larkspur Wax', 5, { phase: 'a' }),
      row('Harrow Water', 5, { phase: 'phase b' }),
    ]);
    expect(made?.phases.map(({ title, lines }) => [title, lines.length])).toEqual([
      ['', 2],
      ['', 2],
    ]);
  });

  it('is told what its shares come to where that is not 100 %, and nothing lifts them', () => {
    const { outcome, content: made } = plan([row('Harrow Water', 70), row('Larkspur Wax', 20.5)]);
    expect(outcome.notes).toEqual(['Its shares come to 90.5 %.']);
    expect(made?.phases[0]?.lines.map(({ ppm }) => ppm)).toEqual([700_000, 205_000]);
    expect(plan([row('Harrow Water', 79.5), row('Larkspur Wax', 20.5)]).outcome.notes).toEqual([]);
  });

  it('is told which of its shares are finer than is kept', () => {
    const { outcome, content: made } = plan([
      row('Harrow Water', 79.50004, { line: 7 }),
      row('Larkspur Wax', 20.49996, { line: 8 }),
    ]);
    expect(outcome.notes).toEqual(['Rounded to the four decimals that are kept: the share in line 7, 8.']);
    expect(made?.phases[0]?.lines.map(({ ppm }) => ppm)).toEqual([795_000, 205_000]);
    expect(plan([row('Harrow Water', 99.9999), row('Larkspur Wax', 0.0001)]).outcome.notes).toEqual([]);
  });

  it('is refused whole, with every reason, each by its line', () => {
    expect(
      messages([
        row('Nothing Known', 5, { line: 3 }),
        row('Xanthan Gum', 1, { line: 4 }),
        row('Harrow Water', null, { line: 5 }),
      ]),
    ).toEqual([
      'Line 3: “Nothing Known” is not a material of the library. Take it in first, or write its name as it is there.',
      'Line 4: “Xanthan Gum” may be Twin One, Twin Two. Write the trade name or code of the one that is meant.',
      'Line 5: no share is given.',
    ]);
    expect(plan([row('Nothing Known', 5)]).content).toBeNull();
    expect(messages([row('Harrow Water', 100)], {}, [], [{ heading: 'Share', message: 'Odd.' }])).toEqual([
      'Odd.',
    ]);
  });

  it('needs a name and a line', () => {
    expect(messages([row('Harrow Water', 100)], { 'formula.name': '' })).toEqual([
      'No formula is named for these lines.',
    ]);
    expect(messages([])).toEqual(['There is no line with a material here.']);
    expect(
      plan([row('Harrow Water', 100)], { 'formula.name': '', 'formula.code': 'F-7' }).outcome,
    ).toMatchObject({
      kind: 'new',
      name: 'F-7',
    });
  });
});

describe('a formula that the library holds', () => {
  it('is the same where its lines are, whatever its phases are called there', () => {
    const before = kept({ name: 'Balm' });
    const { outcome, content: made } = plan(
      [row('Harrow Water', 80), row('Larkspur Wax', 20, { phase: 'B' })],
      {},
      [before],
    );
    expect([outcome.kind, made]).toEqual(['same', null]);
  });

  it('keeps what a table does not say: titles, temperatures, notes on lines, and steps without a phase that is gone', () => {
    const before = kept({ name: 'Balm' });
    const [first, second] = before.phases;
    const full: Formula = {
      ...before,
      phases: [
        {
          ...{ ...first!, title: 'Water part', temperatureC: 70 },
          lines: first!.lines.map((line) => ({ ...line, note: 'boiled' })),
        },
        second!,
      ],
      steps: [
        {
          ...{ id: nextId(), instruction: 'Stir.', phaseIds: [first!.id, second!.id] },
          ...{ temperatureC: null, speedRpm: null, minutes: null, lookFor: '', caution: '' },
        },
      ],
    };
    const { outcome, content: made } = plan([row('Harrow Water', 100)], {}, [full]);
    expect(outcome.kind).toBe('changed');
    expect(made?.phases).toHaveLength(1);
    expect(made?.phases[0]).toMatchObject({ id: first!.id, title: 'Water part', temperatureC: 70 });
    expect(made?.phases[0]?.lines[0]).toMatchObject({ id: first!.lines[0]!.id, note: 'boiled' });
    expect(made?.steps.map(({ phaseIds }) => phaseIds)).toEqual([[first!.id]]);
    const lines = [row('Harrow Water', 80), row('Larkspur Wax', 20, { phase: 'B' })];
    expect(plan(lines, {}, [full]).outcome.kind).toBe('same');
    expect(
      plan([{ ...lines[0]!, note: 'cold' }, lines[1]!], {}, [full]).content?.phases[0]?.lines[0]?.note,
    ).toBe('cold');
    expect(outcome.differences).toEqual([
      {
        ...{ key: 'phases', label: 'Lines' },
        before: 'A Harrow Water 80 %; B Larkspur Wax 20 %',
        after: 'A Harrow Water 100 %',
      },
    ]);
  });

  it('that stands in it twice by one name is asked for by its code', () => {
    const both = [kept({ name: 'Balm', code: 'F-1' }), kept({ name: 'Balm', code: 'F-2' })];
    expect(messages([row('Harrow Water', 100)], {}, both)).toEqual([
      '2 formulas are called “Balm”. Give their codes.',
    ]);
    expect(plan([row('Harrow Water', 100)], { 'formula.code': 'F-2' }, both).before?.code).toBe('F-2');
  });
});
