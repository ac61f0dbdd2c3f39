import { LIMITS_LIST, type LimitRow } from '@core/limits/list';
import type { Column, ListView, Show } from '../lists/list-view';

/** The limit itself, in a few characters: "≤ 0.5 %", "not allowed", "0.5 to 2 %". */
export function limitText({ rule, percent, minPercent }: LimitRow, show: Show): string {
  const number = (value: number): string => show.number(value, { min: 0, max: 7 });
  switch (rule) {
    case 'prohibited':
      return 'not allowed';
    case 'notice':
      return 'notice only';
    case 'range of the active':
      return `${number(minPercent ?? 0)} to ${number(percent ?? 100)} %`;
    case 'less than':
      return percent === null ? '' : `< ${number(percent)} %`;
    default:
      return percent === null ? '' : `≤ ${number(percent)} %`;
  }
}

const COLUMNS: Column<LimitRow>[] = [
  { key: 'subject', title: 'Substance or group', rem: 12, grow: 2, text: (row) => row.subject },
  { key: 'percent', title: 'Limit', rem: 6.5, number: true, text: limitText },
  { key: 'expressedAs', title: 'Counted as', rem: 7.5, text: (row) => row.expressedAs },
  { key: 'regions', title: 'Region', rem: 7.5, text: (row) => row.regions.join(', ') },
  { key: 'use', title: 'Use', rem: 5, text: (row) => row.use ?? 'any' },
  { key: 'kinds', title: 'Only for', rem: 8, grow: 1, text: (row) => row.kinds.join(', ') },
  { key: 'purpose', title: 'As', rem: 6, text: (row) => row.purpose ?? '' },
  {
    key: 'source',
    title: 'Text',
    rem: 9,
    grow: 1.4,
    text: (row) => row.source.replace('Regulation (EC) No 1223/2009, ', ''),
  },
  { key: 'from', title: 'From', rem: 5.5, text: (row, show) => show.day(row.from) },
  { key: 'until', title: 'Until', rem: 5.5, text: (row, show) => show.day(row.until) },
  {
    key: 'checked',
    title: 'Checked',
    rem: 6.5,
    text: (row, show) => (row.checked.startsWith('example') ? 'example' : show.said(row.checked)),
  },
  { key: 'standing', title: 'Standing', rem: 6, text: (row) => row.standing },
  { key: 'updatedAt', title: 'Changed', rem: 7, text: (row, show) => show.date(row.updatedAt) },
];

/** The list of limits on screen. */
export const LIMITS_VIEW: ListView<LimitRow> = {
  description: LIMITS_LIST,
  noun: 'limits',
  path: '/api/limits',
  kinds: ['limit'],
  title: 'Limits of law',
  placeholder: 'Substance, group, text or words of the label',
  columns: COLUMNS,
  columnsAtFirst: ['subject', 'percent', 'expressedAs', 'regions', 'use', 'kinds', 'source', 'checked'],
  unfolded: ['regions', 'use', 'rule'],
  rowHeight: 30,
  picks: false,
};
