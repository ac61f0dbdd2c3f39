import type { ShelfRow, SortKey } from '@core/shelf/query';
import type { Currency } from '@core/quantities/money';
import type { useNumbers } from '../settings/numbers';

/** A column of the materials list. */
export interface Column {
  key: SortKey;
  title: string;
  /** The narrowest the column gets, in rem. */
  rem: number;
  /** How much of the room to spare it takes; none keeps it at its narrowest. */
  grow?: number;
  number?: boolean;
  text(row: ShelfRow, show: ReturnType<typeof useNumbers>): string;
}

const figure = (value: number | null, digits: number, show: ReturnType<typeof useNumbers>) =>
  value === null ? '' : show.number(value, digits);

export const COLUMNS: Column[] = [
  { key: 'tradeName', title: 'Trade name', rem: 10, grow: 1.4, text: (row) => row.tradeName },
  { key: 'inci', title: 'INCI', rem: 11, grow: 2, text: (row) => row.inci },
  { key: 'charge', title: 'Charge', rem: 7.2, text: (row) => row.charge ?? '' },
  { key: 'hlb', title: 'HLB', rem: 4.2, number: true, text: (row, show) => figure(row.hlb, 1, show) },
  { key: 'form', title: 'Form', rem: 7, text: (row) => row.form ?? '' },
  {
    key: 'functions',
    title: 'Functions',
    rem: 8,
    grow: 1,
    text: (row) => row.functions.join(', '),
  },
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

export const COLUMNS_AT_FIRST: SortKey[] = ['tradeName', 'inci', 'charge', 'hlb', 'form', 'functions'];

/** The grid tracks of chosen columns, behind one for the tick. */
export function gridTracks(columns: readonly Column[]): string {
  const track = ({ rem, grow }: Column): string => (grow ? `minmax(${rem}rem, ${grow}fr)` : `${rem}rem`);
  return ['2.1rem', ...columns.map(track)].join(' ');
}

/** The width below which the list scrolls sideways. */
export function gridMinWidth(columns: readonly Column[]): string {
  return `${columns.reduce((sum, column) => sum + column.rem, 2.1)}rem`;
}
