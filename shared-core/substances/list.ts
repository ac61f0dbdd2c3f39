import type { KeyOf, ListDescription } from '../lists/description';
import { CMR_CLASSES } from './cmr-classes';
import { ALLERGEN_LISTS } from './fields';

/** A substance as its list knows it. */
export interface SubstanceEntry {
  id: string;
  name: string;
  usName: string;
  colourIndex: string;
  cas: string;
  allergenList: string | null;
  allergenLabel: string;
  cmrClass: string | null;
  /** Other names and groups, each a text of its own. */
  synonyms: string[];
  groups: string[];
  formula: string;
  notes: string;
  updatedAt: string;
}

/** A row of the substances list as it is sent. */
export type SubstanceRow = Omit<SubstanceEntry, 'notes' | 'synonyms' | 'allergenLabel'>;

/** The list of substances. */
export const SUBSTANCES_LIST: ListDescription<KeyOf<SubstanceEntry>> = {
  one: 'substance',
  many: 'substances',
  name: 'name',
  code: 'colourIndex',
  texts: {
    names: ['name', 'colourIndex', 'usName', 'synonyms'],
    shown: ['cas', 'groups', 'formula'],
    unshown: ['allergenLabel', 'notes'],
  },
  facets: [
    { key: 'groups', title: 'Group', words: null },
    { key: 'allergenList', title: 'Fragrance allergen', words: ALLERGEN_LISTS },
    { key: 'cmrClass', title: 'Classed as CMR', words: CMR_CLASSES },
  ],
  ranges: [],
  sorts: [
    { key: 'name', by: 'text' },
    { key: 'usName', by: 'text' },
    { key: 'colourIndex', by: 'text' },
    { key: 'cas', by: 'text' },
    { key: 'allergenList', by: 'word' },
    { key: 'cmrClass', by: 'word' },
    { key: 'formula', by: 'text' },
    { key: 'updatedAt', by: 'date' },
  ],
  firstSort: { key: 'name', descending: false },
  unsent: ['notes', 'synonyms', 'allergenLabel'],
};
