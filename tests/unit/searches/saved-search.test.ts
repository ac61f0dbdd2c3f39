import { SAVED_SEARCH, savedSearch } from '@core/searches/search';
import { describe, expect, it } from 'vitest';

describe('a search that is kept', () => {
  it('keeps its address letter by letter: what was looked for must come back', () => {
    const query = 'charge=non-ionic&q=%C3%B6l%20%26%20wachs&hlb=4..6';
    expect(SAVED_SEARCH.read({ name: 'Mild', query })).toEqual({ name: 'Mild', query });
  });

  it('may be of everything, but is not without a name or an address at all', () => {
    expect(savedSearch.safeParse({ name: 'All', query: '' }).success).toBe(true);
    expect(savedSearch.safeParse({ query: 'a=b' }).success).toBe(false);
    expect(savedSearch.safeParse({ name: 'All' }).success).toBe(false);
  });

  it('holds nothing beside: a list that grew a field cannot smuggle it in', () => {
    expect(SAVED_SEARCH.read({ name: 'All', query: '', owner: 'someone' })).toEqual({
      name: 'All',
      query: '',
    });
  });

  it('is called in its history by what its maker called it', () => {
    expect(SAVED_SEARCH.titleOf(SAVED_SEARCH.read({ name: ' Spring ', query: '' }))).toBe('Spring');
    expect(Object.keys(SAVED_SEARCH.fields).sort()).toEqual(Object.keys(savedSearch.shape).sort());
  });
});
