import { guessColumns } from '@core/imports/guess-columns';
import { readRows, rowReader } from '@core/imports/read-rows';
import type { ReadingWays } from '@core/imports/read-cell';
import type { Cell, SheetRow } from '@core/tables/table';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

const HEADINGS = ['Trade name', 'INCI name', 'Share of the INCI name', 'HLB', 'Usage, typical (%)', 'Charge'];
/** Cells as makers write them: some are understood, some refused, some say nothing; many stand in several rows. */
const cell = fc.constantFrom<Cell>(
  ...[
    null,
    '',
    '-',
    'n/a',
    'Larkspur Wax',
    'Cera Alba',
    'Aqua (70 %), Glycerin (30 %)',
    'cationic',
    'purple',
  ],
  ...['12', '12.0', '12,5', '1.200', '3 – 5', '< 0.5 %', '5 %', 12, 12.5, 0.05, true],
  ...[{ date: '2026-03-01' }, { error: '#N/A' }],
);
const ways = fc.record<ReadingWays>({
  mark: fc.constantFrom(null, '.', ','),
  order: fc.constant(null),
  words: fc.constantFrom<ReadingWays['words']>({}, { charge: { purple: 'anionic' } }),
});
const rowOf = (cells: Cell[], at: number): SheetRow => ({ line: at + 2, hidden: false, cells });

describe('a table that is read piece by piece', () => {
  it('says of every row what it says when it is read alone, however its cells repeat', () => {
    const table = fc.array(fc.array(cell, { minLength: 4, maxLength: HEADINGS.length }), { maxLength: 30 });
    fc.assert(
      fc.property(table, ways, fc.integer({ min: 1, max: 7 }), (cells, reading, together) => {
        const rows = cells.map(rowOf);
        const columns = guessColumns(HEADINGS, [], reading);
        expect(columns.filter(({ target }) => target !== null)).toHaveLength(HEADINGS.length);
        const alone = rows.flatMap((row) => readRows([row], columns, reading));
        const read = rowReader(columns, reading);
        const pieces = [];
        for (let at = 0; at < rows.length; at += together)
          pieces.push(...read(rows.slice(at, at + together)));
        expect(pieces).toEqual(alone);
      }),
    );
  });
});
