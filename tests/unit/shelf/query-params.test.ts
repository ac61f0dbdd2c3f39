import { describe, expect, it } from 'vitest';
import { shelfQuery } from '@core/shelf/query';
import { fromParams, toParams } from '@core/shelf/query-params';

describe('the address of a list', () => {
  it('is plain when nothing is chosen', () => {
    expect(toParams(shelfQuery.parse({})).toString()).toBe('');
  });

  it('carries what is chosen', () => {
    const query = shelfQuery.parse({ text: 'olive & co', charge: ['cationic', 'non-ionic'], hlbFrom: 0 });
    expect(toParams(query).toString()).toBe('text=olive+%26+co&charge=cationic&charge=non-ionic&hlbFrom=0');
  });

  it('drops what it does not understand and keeps the rest', () => {
    const read = fromParams(
      new URLSearchParams(
        'charge=cationic&charge=magnetic&hlbFrom=ten&hlbTo=41&sortBy=luck&limit=1e9&form=flakes',
      ),
    );
    expect(read).toEqual(shelfQuery.parse({ charge: ['cationic'], form: ['flakes'] }));
  });

  it('searches for the first 500 characters of a longer text, instead of finding everything', () => {
    const read = fromParams(new URLSearchParams({ text: 'olive '.repeat(100) }));
    expect(read.text).toBe('olive '.repeat(100).slice(0, 500));
  });
});
