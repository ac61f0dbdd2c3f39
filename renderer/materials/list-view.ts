import { MATERIALS_LIST, type MaterialRow } from '@core/materials/list';
import type { Currency } from '@core/quantities/money';
import type { Column, ListView, Show } from '../lists/list-view';

const figure = (value: number | null, digits: number, show: Show): string =>
  value === null ? '' : show.number(value, digits);

const COLUMNS: Column<MaterialRow>[] = [
  { key: 'tradeName', title: 'Trade name', rem: 10, grow: 1.4, text: (row) => row.tradeName },
  { key: 'inci', title: 'INCI', rem: 11, grow: 2, text: (row) => row.inci },
  { key: 'charge', title: 'Charge', rem: 7.2, text: (row) => row.charge ?? '' },
  { key: 'hlb', title: 'HLB', rem: 4.2, number: true, text: (row, show) => figure(row.hlb, 1, show) },
  { key: 'form', title: 'Form', rem: 7, text: (row) => row.form ?? '' },
  { key: 'functions', title: 'Functions', rem: 8, grow: 1, text: (row) => row.functions.join(', ') },
  { key: 'code', title: 'Code', rem: 6, text: (row) => row.code },
  { key: 'supplier', title: 'Supplier', rem: 7, grow: 0.8, text: (row) => row.supplier },
  { key: 'architecture', title: 'Architecture', rem: 7, text: (row) => row.architecture ?? '' },
  { key: 'emulsionType', title: 'Serves', rem: 5, text: (row) => row.emulsionType ?? '' },
  {
    key: 'requiredHlbOw',
    title: 'Req. HLB o/w',
    rem: 6.6,
    number: true,
    text: (row, show) => figure(row.requiredHlbOw, 1, show),
  },
  { key: 'phaseOfUse', title: 'Phase', rem: 6, text: (row) => row.phaseOfUse ?? '' },
  { key: 'consistency', title: 'Consistency', rem: 7, text: (row) => row.consistency ?? '' },
  { key: 'origin', title: 'Origin', rem: 8, text: (row) => row.origin ?? '' },
  { key: 'countryOfOrigin', title: 'Country of origin', rem: 8, text: (row) => row.countryOfOrigin },
  {
    key: 'meltingPoint',
    title: 'Melts °C',
    rem: 5.2,
    number: true,
    text: (row, show) => figure(row.meltingPoint, 0, show),
  },
  {
    key: 'pricePerKg',
    title: 'Price per kg',
    rem: 7,
    number: true,
    text: (row, show) =>
      row.pricePerKg === null || row.currency === null
        ? ''
        : show.money(Math.round(row.pricePerKg), row.currency as Currency),
  },
  { key: 'status', title: 'Status', rem: 6, text: (row) => row.status },
  { key: 'updatedAt', title: 'Changed', rem: 7, text: (row, show) => show.date(row.updatedAt) },
];

/** The materials list on screen. */
export const MATERIALS_VIEW: ListView<MaterialRow> = {
  description: MATERIALS_LIST,
  path: '/api/materials',
  kinds: ['material'],
  title: 'Raw materials',
  placeholder: 'Name, INCI name, code, function, form, supplier or note',
  columns: COLUMNS,
  columnsAtFirst: ['tradeName', 'inci', 'charge', 'hlb', 'form', 'functions'],
  unfolded: ['charge', 'form', 'functions'],
  rowHeight: 30,
  picks: true,
};
