import fc from 'fast-check';
import { columnFor, guessColumns, headingRow, type Column } from '@core/imports/guess-columns';
import { HEADINGS } from '@core/imports/headings';
import { currencyIn } from '@core/imports/money-and-dates';
import type { ReadingWays } from '@core/imports/read-cell';
import { gatherRows, likelyKey, readRows } from '@core/imports/read-rows';
import { MATERIAL_TARGETS } from '@core/imports/material-targets';
import { isTarget } from '@core/imports/targets';
import { wordsIn, yesOrNoOf } from '@core/imports/words-of';
import type { Cell, SheetRow } from '@core/tables/table';
import { describe, expect, it } from 'vitest';

const WAYS: ReadingWays = { mark: '.', order: null, words: {} };
const rowsOf = (...rows: Cell[][]): SheetRow[] =>
  rows.map((cells, at) => ({ line: at + 2, hidden: false, cells }));
const targetsOfAll = (headings: Cell[], rows: SheetRow[] = []): (string | null)[] =>
  guessColumns(headings, rows, WAYS).map(({ target }) => target);
const HEADED = Object.entries(HEADINGS).filter(([key]) => isTarget(key));

describe('what a column is taken for', () => {
  it('by every heading that is known, in any case, in brackets’ company, and never two ways', () => {
    const owners = new Map<string, Set<string>>();
    for (const [key, names] of HEADED)
      for (const name of names) owners.set(name, (owners.get(name) ?? new Set()).add(key));
    for (const [name, keys] of owners) {
      const [target] = targetsOfAll([name]);
      expect([...keys], name).toContain(target);
      expect(targetsOfAll([name.toUpperCase()]), name).toEqual([target]);
      expect(targetsOfAll([`  ${name}  `]), name).toEqual([target]);
    }
  });

  it('by its own label, as our forms have it', () => {
    for (const { key, label } of MATERIAL_TARGETS) {
      const [target] = targetsOfAll([label]);
      const same = MATERIAL_TARGETS.filter((one) => one.label === label).map((one) => one.key);
      expect(same, key).toContain(target);
    }
  });

  it('does not hang on where it stands: columns in another order are taken for the same', () => {
    const headings = ['Trade name', 'INCI', 'HLB', 'Charge', 'Supplier', 'Price per kg (EUR)', 'Code'];
    const whole = new Map(headings.map((one, at) => [one, targetsOfAll(headings)[at]]));
    expect(new Set(whole.values()).size).toBe(headings.length);
    fc.assert(
      fc.property(fc.shuffledSubarray(headings, { minLength: 1 }), (some) => {
        expect(targetsOfAll(some)).toEqual(some.map((one) => whole.get(one)));
      }),
      { numRuns: 40 },
    );
  });

  it('fills each thing once: of two columns for one the first is taken, and the other says so', () => {
    const [first, second] = guessColumns(['HLB', 'HLB value'], [], WAYS);
    expect([first!.target, second!.target]).toEqual(['figures.hlb', null]);
    expect(second!.reason).toContain('An earlier column fills HLB already.');
  });

  it('is not believed of its heading alone where its cells say otherwise', () => {
    const cells = rowsOf(['lot 12'], ['lot 13'], ['lot 14']);
    const [column] = guessColumns(['Charge'], cells, WAYS);
    expect(column!.target).toBeNull();
    expect(column!.reason).toContain('“lot 12”');
    expect(targetsOfAll(['Charge'], rowsOf(['anionic'], ['non-ionic'], [null]))).toEqual(['charge']);
  });

  it('without a heading by its words, if they are of one vocabulary and there are enough', () => {
    expect(targetsOfAll(['?'], rowsOf(['anionic'], ['cationic'], ['non-ionic']))).toEqual(['charge']);
    expect(targetsOfAll(['?'], rowsOf(['anionic'], ['cationic']))).toEqual([null]);
    expect(targetsOfAll(['?'], rowsOf(['anionic'], ['blue'], ['green']))).toEqual([null]);
  });

  it('reads in the unit that its heading names, and in ours where it names none', () => {
    const [column] = guessColumns(['Melting point (°F)'], [], WAYS);
    expect(column).toMatchObject({ target: 'figures.meltingPoint', unit: '°F' });
    const rows = readRows(rowsOf([212], ['32–50 °C']), [column!], WAYS);
    expect(rows.map(({ values }) => values['figures.meltingPoint'])).toEqual([
      { low: null, value: 100, high: null },
      { low: 32, value: null, high: 50 },
    ]);
    expect(columnFor(column!, null)).toMatchObject({ target: null, reason: 'Left out.' });
    expect(columnFor(column!, 'figures.hlb')).toMatchObject({ target: 'figures.hlb', unit: '' });
  });

  it('by the row that names most of them, wherever it stands; the first where none does', () => {
    const table = rowsOf(['Our shelf', null], [null], ['Trade name', 'INCI', 'HLB'], ['Name', 'x', 'y']);
    expect(headingRow(table)).toBe(2);
    expect(headingRow(rowsOf(['a', 'b'], ['c', 'd']))).toBe(0);
    expect(headingRow([])).toBe(0);
  });
});

describe('the rows of a table', () => {
  const columns: Column[] = guessColumns(['Trade name', 'Code', 'INCI', 'Share', 'Charge'], [], WAYS);

  it('of one material are joined where a column has shares, and a name that comes twice is refused without one', () => {
    const rows = readRows(
      rowsOf(
        ['Duo', 'D-1', 'Glycerin', '60 %', null],
        ['duo', null, 'Aqua', '40 %', null],
        ['Solo', 'S-1', 'Urea', null, null],
      ),
      columns,
      WAYS,
    );
    const gathered = gatherRows(rows, 'tradeName', columns);
    expect(gathered).toHaveLength(2);
    expect(gathered[0]!.values.composition).toEqual([
      { inci: 'Glycerin', lowPpm: 600_000, highPpm: 600_000 },
      { inci: 'Aqua', lowPpm: 400_000, highPpm: 400_000 },
    ]);
    const without = columns.filter(({ target }) => target !== 'composition.share');
    const twice = gatherRows(
      readRows(rowsOf(['Duo', 'D-1'], ['DUO', 'D-2']), without, WAYS),
      'tradeName',
      without,
    );
    expect(twice.map(({ faults }) => faults.map(({ message }) => message))).toEqual([
      [],
      ['“DUO” is already in line 2.'],
    ]);
  });

  it('that say two things of one material are refused with what they disagree in', () => {
    const rows = readRows(
      rowsOf(['Duo', null, 'Glycerin', '60 %', 'anionic'], ['Duo', null, 'Aqua', '40 %', 'cationic']),
      columns,
      WAYS,
    );
    const [joined] = gatherRows(rows, 'tradeName', columns);
    expect(joined!.faults.map(({ message }) => message)).toEqual([
      expect.stringContaining('Line 3 gives another value for') as string,
    ]);
  });

  it('are known by their code where every one has it, and left out where they say nothing', () => {
    const coded = readRows(rowsOf(['A', '1'], ['B', '2'], [null, null]), columns, WAYS);
    expect(coded).toHaveLength(2);
    expect(likelyKey(coded)).toBe('code');
    expect(likelyKey(readRows(rowsOf(['A', '1'], ['B', null]), columns, WAYS))).toBe('tradeName');
    expect(likelyKey([])).toBe('tradeName');
  });

  it('with a cell that cannot be read keep the rest, and say which heading it stands under', () => {
    const [row] = readRows(rowsOf(['A', '1', 'Aqua', null, 'purple']), columns, WAYS);
    expect(row!.values).toMatchObject({ tradeName: 'A', code: '1' });
    expect(row!.faults).toMatchObject([
      { heading: 'Charge', words: { target: 'charge', written: ['purple'] } },
    ]);
  });
});

describe('small words of tables', () => {
  it.each([
    [['yes', 'Ja', 'OUI', 'sì', 'x', '✓', '1', 'wahr'], true],
    [['no', 'Nein', 'NON', '0', '-', 'falsch'], false],
    [['maybe', '2', 'yes and no'], null],
  ] as const)('%j says %s', (texts, said) => {
    for (const text of texts) expect(yesOrNoOf(text), text).toBe(said);
  });

  it('several words of a cell stand apart, whatever parts them', () => {
    expect(wordsIn('Emulsifier, thickener / active')).toEqual(['Emulsifier', 'thickener', 'active']);
    expect(wordsIn('emollient und humectant\nsolvent')).toEqual(['emollient', 'humectant', 'solvent']);
    expect(wordsIn(' – ; ? ')).toEqual([]);
  });

  it('a heading names a currency where it names one alone', () => {
    expect(['Preis (EUR/kg)', 'Price, £', 'Price USD or EUR', 'Price'].map(currencyIn)).toEqual([
      ...['EUR', 'GBP', null, null],
    ]);
  });
});
