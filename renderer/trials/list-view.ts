import { SERIES_LIST, type SeriesRow } from '@core/trials/list';
import type { Column, ListView } from '../lists/list-view';

const COLUMNS: Column<SeriesRow>[] = [
  {
    key: 'title',
    title: 'Series',
    rem: 9,
    grow: 1,
    text: (row) => row.title,
    to: (row) => ({ name: 'bench', query: { tool: 'trials', series: row.id } }),
  },
  { key: 'trials', title: 'Trials', rem: 4.2, number: true, text: (row, show) => show.number(row.trials) },
  { key: 'createdAt', title: 'Planned', rem: 6.8, text: (row, show) => show.date(row.createdAt) },
];

/** The list of trial series on screen. */
export const SERIES_VIEW: ListView<SeriesRow> = {
  description: SERIES_LIST,
  noun: 'trials',
  path: '/api/trials',
  kinds: ['trial series'],
  title: 'Saved series',
  placeholder: 'Title or notes',
  columns: COLUMNS,
  columnsAtFirst: COLUMNS.map(({ key }) => key),
  unfolded: [],
  rowHeight: 32,
  picks: false,
};
