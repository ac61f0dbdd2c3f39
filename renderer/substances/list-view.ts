import { SUBSTANCES_LIST, type SubstanceRow } from '@core/substances/list';
import type { Column, ListView } from '../lists/list-view';

const COLUMNS: Column<SubstanceRow>[] = [
  { key: 'name', title: 'Substance', rem: 12, grow: 2, text: (row) => row.name },
  { key: 'colourIndex', title: 'CI', rem: 5.5, text: (row) => row.colourIndex },
  { key: 'usName', title: 'US name', rem: 8, grow: 1, text: (row) => row.usName },
  { key: 'groups', title: 'Groups', rem: 9, grow: 1.4, text: (row) => row.groups.join('; ') },
  { key: 'formula', title: 'Formula', rem: 7, text: (row) => row.formula },
  { key: 'allergenList', title: 'Allergen', rem: 6, text: (row) => row.allergenList ?? '' },
  { key: 'cmrClass', title: 'CMR', rem: 5, text: (row) => row.cmrClass ?? '' },
  { key: 'cas', title: 'CAS', rem: 7, text: (row) => row.cas },
  { key: 'updatedAt', title: 'Changed', rem: 7, text: (row, show) => show.date(row.updatedAt) },
];

/** The list of substances on screen. */
export const SUBSTANCES_VIEW: ListView<SubstanceRow> = {
  description: SUBSTANCES_LIST,
  noun: 'substances',
  path: '/api/substances',
  kinds: ['substance'],
  title: 'Substances',
  placeholder: 'Name, other name, CI or CAS number, group',
  columns: COLUMNS,
  columnsAtFirst: ['name', 'colourIndex', 'usName', 'groups', 'formula'],
  unfolded: ['allergenList'],
  rowHeight: 30,
  picks: false,
};
