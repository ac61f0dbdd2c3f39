import type { ShelfRow, SortKey } from '@core/shelf/query';
import type { Currency } from '@core/quantities/money';
import type { useNumbers } from '../settings/numbers';

/** A column of the materials list. */
export interface Column {
  key: SortKey;
  title: string;
  /** A CSS grid track. */
  width: string;
  number?: boolean;
  text(row: ShelfRow, show: ReturnType<typeof useNumbers>): string;
}

const figure = (value: number | null, digits: number, show: ReturnType<typeof useNumbers>) =>
  value === null ? '' : show.number(value, digits);

export const COLUMNS: Column[] = [
  { key: 'tradeName', title: 'Trade name', width: 'minmax(10rem, 1.4fr)', text: (row) => row.tradeName },
  { key: 'inci', title: 'INCI', width: 'minmax(11rem, 2fr)', text: (row) => row.inci },
  { key: 'charge', title: 'Charge', width: '7.2rem', text: (row) => row.charge ?? '' },
  { key: 'hlb', title: 'HLB', width: '4.2rem', number: true, text: (row, show) => figure(row.hlb, 1, show) },
  { key: 'form', title: 'Form', width: '7rem', text: (row) => row.form ?? '' },
  {
    key: 'functions',
    title: 'Functions',
    width: 'minmax(8rem, 1fr)',
    text: (row) => row.functions.join(', '),
  },
  { key: 'code', title: 'Code', width: '6rem', text: (row) => row.code },
  { key: 'supplier', title: 'Supplier', width: 'minmax(7rem, 0.8fr)', text: (row) => row.supplier },
  { key: 'architecture', title: 'Architecture', width: '7rem', text: (row) => row.architecture ?? '' },
  { key: 'emulsionType', title: 'Serves', width: '5rem', text: (row) => row.emulsionType ?? '' },
  {
    key: 'requiredHlbOw',
    title: 'Req. HLB o/w',
    width: '6.6rem',
    number: true,
    text: (row, show) => figure(row.requiredHlbOw, 1, show),
  },
  { key: 'phaseOfUse', title: 'Phase', width: '6rem', text: (row) => row.phaseOfUse ?? '' },
  { key: 'consistency', title: 'Consistency', width: '7rem', text: (row) => row.consistency ?? '' },
  { key: 'origin', title: 'Origin', width: '8rem', text: (row) => row.origin ?? '' },
  {
    key: 'meltingPoint',
    title: 'Melts °C',
    width: '5.2rem',
    number: true,
    text: (row, show) => figure(row.meltingPoint, 0, show),
  },
  {
    key: 'pricePerKg',
    title: 'Price per kg',
    width: '7rem',
    number: true,
    text: (row, show) =>
      row.pricePerKg === null || row.currency === null
        ? ''
        : show.money(Math.round(row.pricePerKg), row.currency as Currency),
  },
  { key: 'status', title: 'Status', width: '6rem', text: (row) => row.status },
  { key: 'updatedAt', title: 'Changed', width: '7rem', text: (row, show) => show.date(row.updatedAt) },
];

export const COLUMNS_AT_FIRST: SortKey[] = ['tradeName', 'inci', 'charge', 'hlb', 'form', 'functions'];
