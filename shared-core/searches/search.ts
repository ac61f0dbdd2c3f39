import { z } from 'zod';
import { nameText } from '../quantities/text';
import { line, name } from '../record/field';
import type { Noun } from '../record/noun';

/** A search that a maker saved under a name; `query` is the list's address after the question mark. */
export const savedSearch = z.object({ name: nameText('the search’s name', 80), query: z.string().max(2000) });
export type SavedSearchContent = z.infer<typeof savedSearch>;

const BY_HAND = { form: 'by hand', sheet: 'no', compare: 'no' } as const;

export const SAVED_SEARCH: Noun<SavedSearchContent> = {
  kind: 'saved search',
  name: 'saved search',
  fields: {
    name: name('the search’s name', { label: 'Name', section: 'search', max: 80, places: BY_HAND }),
    query: line({ label: 'What it looks for', section: 'search', max: 2000, places: BY_HAND }),
  },
  read: (content) => savedSearch.parse(content),
  titleOf: ({ name: called }) => called,
  upgraders: [],
};
