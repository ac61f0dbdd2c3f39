import { fromParams } from '@core/lists/address';
import type { QuickPage } from '@core/lists/query';
import type { ServiceContext } from '../context';
import { NOUN_LISTS, type Noun, type Nouns } from './nouns';

/** The page of a noun's list that an address asks for; `counts=later` has it before the list is filled. */
export function listPage<N extends Noun>(
  { session }: ServiceContext,
  noun: N,
  address: string,
): Promise<QuickPage<Nouns[N]['row']>> {
  const params = new URL(address).searchParams;
  const query = fromParams(NOUN_LISTS[noun].description, params);
  const { lists } = session.current();
  return params.get('counts') === 'later' ? lists.quickPage(noun, query) : lists.page(noun, query);
}
