import { describe, expect, it } from 'vitest';
import { BATCHES_LIST } from '@core/batches/list';
import { fromParams, toParams } from '@core/lists/address';
import { listQuery } from '@core/lists/query';
import { MATERIALS_LIST } from '@core/materials/list';

const ask = (part: Parameters<typeof listQuery>[1]) => listQuery(MATERIALS_LIST, part);

describe('the address of a list', () => {
  it('is plain when nothing is chosen', () => {
    expect(toParams(MATERIALS_LIST, ask({})).toString()).toBe('');
    expect(toParams(BATCHES_LIST, listQuery(BATCHES_LIST)).toString()).toBe('');
  });

  it('carries what is chosen', () => {
    const query = ask({
      text: 'olive & co',
      chosen: { charge: ['cationic', 'non-ionic'] },
      spans: { hlb: { from: 0, to: null } },
    });
    expect(toParams(MATERIALS_LIST, query).toString()).toBe(
      'text=olive+%26+co&charge=cationic&charge=non-ionic&hlbFrom=0',
    );
  });

  it('drops what it does not understand and keeps the rest', () => {
    const read = fromParams(
      MATERIALS_LIST,
      new URLSearchParams(
        'charge=cationic&charge=magnetic&hlbFrom=ten&hlbTo=41&sortBy=luck&limit=1e9&form=flakes',
      ),
    );
    expect(read).toEqual(ask({ chosen: { charge: ['cationic'], form: ['flakes'] } }));
  });

  it('takes any words where a filter’s are those found in the library', () => {
    const read = fromParams(MATERIALS_LIST, new URLSearchParams('suppliers=Marsh+%26+Vale&suppliers='));
    expect(read.chosen).toEqual({ suppliers: ['Marsh & Vale'] });
  });

  it('turns an order round that comes newest first by itself', () => {
    const query = listQuery(BATCHES_LIST, { descending: false });
    expect(toParams(BATCHES_LIST, query).toString()).toBe('descending=false');
    expect(fromParams(BATCHES_LIST, new URLSearchParams('descending=false'))).toEqual(query);
  });

  it('searches for the first 500 characters of a longer text, instead of finding everything', () => {
    const read = fromParams(MATERIALS_LIST, new URLSearchParams({ text: 'olive '.repeat(100) }));
    expect(read.text).toBe('olive '.repeat(100).slice(0, 500));
  });
});
