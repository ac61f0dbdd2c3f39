import type { Currency } from '@core/quantities/money';
import { WHOLE_PPM } from '@core/quantities/share';
import { FORMULAS_LIST, type FormulaRow } from '@core/formulas/list';
import type { Column, ListView, Show } from '../lists/list-view';

/** What a kg costs; marked where some of it has no price. */
function costText(row: FormulaRow, show: Show): string {
  if (row.costPerKg === null || row.currency === null) return '';
  const cost = show.money(row.costPerKg, row.currency as Currency);
  return row.pricedPpm < WHOLE_PPM ? `over ${cost}` : cost;
}

const COLUMNS: Column<FormulaRow>[] = [
  {
    key: 'name',
    title: 'Name',
    rem: 11,
    grow: 2,
    text: (row) => row.name,
    to: (row) => ({ name: 'formula', params: { id: row.id } }),
  },
  { key: 'code', title: 'Code', rem: 5.5, code: true, text: (row) => row.code },
  { key: 'productType', title: 'Product type', rem: 10, text: (row) => row.productType },
  {
    key: 'latestVersion',
    title: 'Version',
    rem: 5.2,
    number: true,
    text: (row) => (row.latestVersion === null ? 'draft' : String(row.latestVersion)),
    to: (row) => (row.latestVersion === null ? null : { name: 'versions', params: { id: row.id } }),
    label: (row) => `Versions of ${row.name}`,
  },
  { key: 'standing', title: 'Newest version', rem: 7, text: (row) => row.standing },
  {
    key: 'costPerKg',
    title: 'Cost per kg',
    rem: 6.4,
    number: true,
    text: costText,
  },
  { key: 'purpose', title: 'Purpose', rem: 9, grow: 1.6, text: (row) => row.purpose },
  { key: 'updatedAt', title: 'Changed', rem: 7, text: (row, show) => show.date(row.updatedAt) },
  { key: 'use', title: 'Use', rem: 5.5, text: (row) => row.use },
  { key: 'lines', title: 'Lines', rem: 4.2, number: true, text: (row) => String(row.lines) },
  { key: 'status', title: 'Status', rem: 6, text: (row) => row.status },
];

/** The formulas list on screen. */
export const FORMULAS_VIEW: ListView<FormulaRow> = {
  description: FORMULAS_LIST,
  noun: 'formulas',
  path: '/api/formulas',
  kinds: ['formula', 'version'],
  title: 'Formulas',
  placeholder: 'Name, code, purpose, type or ingredient',
  columns: COLUMNS,
  columnsAtFirst: [
    'name',
    'code',
    'productType',
    'latestVersion',
    'standing',
    'costPerKg',
    'purpose',
    'updatedAt',
  ],
  unfolded: ['productType', 'use', 'standing', 'status'],
  rowHeight: 34,
  picks: true,
};
