import { fromParams } from '@core/lists/address';
import type { ListPage } from '@core/lists/query';
import type { ServiceContext } from '../context';
import { NOUN_LISTS, type Noun, type Nouns } from './nouns';

/** The page of a noun's list that an address asks for. */
export function listPage<N extends Noun>(
  { session }: ServiceContext,
  noun: N,
  address: string,
): ListPage<Nouns[N]['row']> {
  const query = fromParams(NOUN_LISTS[noun].description, new URL(address).searchParams);
  return session.current().lists.page(noun, query);
}
