import { MATERIALS_LIST, MATERIALS_LISTED, type MaterialRow } from '@core/materials/list';
import type { Currency } from '@core/quantities/money';
import type { Column, ListView, Show } from '../lists/list-view';

const figure = (value: number | null, digits: number, show: Show): string =>
  value === null ? '' : show.number(value, digits);

/** The columns of the fields that are described as listed; a list of words is told in one cell. */
const FROM_FIELDS: Column<MaterialRow>[] = MATERIALS_LISTED.flatMap(({ key, field }) => {
  const { list } = field.places;
  if (!list) return [];
  const text = (row: MaterialRow, show: Show): string => {
    const value = (row as Record<string, unknown>)[key];
    return Array.isArray(value) ? value.join(', ') : typeof value === 'string' ? show.day(value) : '';
  };
  return [{ key, title: list.title ?? field.label, rem: list.rem, grow: list.grow, text }];
});

/** The columns of what is worked out of composition, figures and offers. */
const WORKED_OUT: Column<MaterialRow>[] = [
  { key: 'inci', title: 'INCI', rem: 11, grow: 2, text: (row) => row.inci },
  { key: 'hlb', title: 'HLB', rem: 4.2, number: true, text: (row, show) => figure(row.hlb, 1, show) },
  { key: 'supplier', title: 'Supplier', rem: 7, grow: 0.8, text: (row) => row.supplier },
  {
    key: 'requiredHlbOw',
    title: 'Req. HLB o/w',
    rem: 6.6,
    number: true,
    text: (row, show) => figure(row.requiredHlbOw, 1, show),
  },
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
  { key: 'updatedAt', title: 'Changed', rem: 7, text: (row, show) => show.date(row.updatedAt) },
];

const AT_FIRST = ['tradeName', 'inci', 'charge', 'hlb', 'form', 'functions'];
const ALL = [...FROM_FIELDS, ...WORKED_OUT];
/** Those of the start first, in their order; then every other. */
const COLUMNS = [
  ...AT_FIRST.flatMap((key) => ALL.filter((column) => column.key === key)),
  ...ALL.filter(({ key }) => !AT_FIRST.includes(key)),
];

/** The materials list on screen. */
export const MATERIALS_VIEW: ListView<MaterialRow> = {
  description: MATERIALS_LIST,
  noun: 'materials',
  path: '/api/materials',
  kinds: ['material'],
  title: 'Raw materials',
  placeholder: 'Name, INCI name, code, function, form, supplier or note',
  columns: COLUMNS,
  columnsAtFirst: AT_FIRST,
  unfolded: ['charge', 'form', 'functions'],
  rowHeight: 30,
  picks: true,
};
