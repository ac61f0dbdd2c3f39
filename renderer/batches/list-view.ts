import { BATCHES_LIST, type BatchRow } from '@core/batches/list';
import type { Column, ListView } from '../lists/list-view';

const COLUMNS: Column<BatchRow>[] = [
  {
    key: 'number',
    title: 'Batch',
    rem: 6.5,
    code: true,
    text: (row) => row.number,
    to: (row) => ({ name: 'batch', params: { id: row.id } }),
  },
  { key: 'formulaName', title: 'Formula', rem: 9, grow: 1, text: (row) => row.formulaName },
  {
    key: 'versionNumber',
    title: 'Version',
    rem: 5.2,
    number: true,
    text: (row) => String(row.versionNumber),
    to: (row) => ({ name: 'versions', params: { id: row.formulaId }, query: { view: row.versionId } }),
    label: (row) => `Version ${row.versionNumber} of ${row.formulaName}`,
  },
  { key: 'totalMg', title: 'Mass', rem: 7, number: true, text: (row, show) => show.mass(row.totalMg) },
  { key: 'createdAt', title: 'Planned', rem: 10.5, text: (row, show) => show.moment(row.createdAt) },
  {
    key: 'finishedOn',
    title: 'Finished',
    rem: 7,
    text: (row, show) => (row.finishedOn === null ? '' : show.date(row.finishedOn)),
  },
];

/** The batches list on screen. */
export const BATCHES_VIEW: ListView<BatchRow> = {
  description: BATCHES_LIST,
  noun: 'batches',
  path: '/api/batches',
  kinds: ['batch', 'formula'],
  title: 'Batches',
  placeholder: 'Batch number, formula, code or note',
  columns: COLUMNS,
  columnsAtFirst: COLUMNS.map(({ key }) => key),
  unfolded: ['state', 'formulaName', 'year'],
  rowHeight: 32,
  picks: false,
};
