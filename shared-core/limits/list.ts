import type { KeyOf, ListDescription } from '../lists/description';
import { facetsOf, listedFields, searchedKeys, sortsOf } from '../record/listed';
import { LIMIT_FIELDS } from './fields';

/** A limit as its list knows it. */
export interface LimitEntry {
  id: string;
  subject: string;
  of: string;
  purpose: string | null;
  rule: string;
  percent: number | null;
  minPercent: number | null;
  expressedAs: string;
  condition: string;
  regions: string[];
  use: string | null;
  kinds: string[];
  notForUsers: string[];
  labelPhrase: string;
  standing: string;
  source: string;
  from: string;
  until: string;
  checked: string;
  notes: string;
  updatedAt: string;
}

/** A row of the limits list as it is sent. */
export type LimitRow = Omit<LimitEntry, 'notes' | 'condition' | 'labelPhrase' | 'notForUsers'>;

/** The fields of a limit that its list shows, filters or searches as they stand. */
export const LIMITS_LISTED = listedFields<KeyOf<LimitEntry>>(LIMIT_FIELDS);

const facets = facetsOf(LIMITS_LISTED);

/** The list of limits, from the description of their fields. */
export const LIMITS_LIST: ListDescription<KeyOf<LimitEntry>> = {
  one: 'limit',
  many: 'limits',
  name: 'subject',
  code: null,
  texts: {
    names: ['subject'],
    shown: searchedKeys(LIMITS_LISTED, true).filter((key) => key !== 'subject'),
    unshown: searchedKeys(LIMITS_LISTED, false),
  },
  facets: ['regions', 'use', 'rule', 'kinds', 'checked', 'purpose', 'standing', 'of', 'notForUsers'].flatMap(
    (key) => facets.filter((one) => one.key === key),
  ),
  ranges: [],
  sorts: [
    ...sortsOf(LIMITS_LISTED),
    { key: 'percent', by: 'number' },
    { key: 'from', by: 'text' },
    { key: 'until', by: 'text' },
    { key: 'updatedAt', by: 'date' },
  ],
  firstSort: { key: 'subject', descending: false },
  unsent: ['notes', 'condition', 'labelPhrase', 'notForUsers'],
};
