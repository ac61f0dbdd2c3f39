import { toParams } from '@core/lists/address';
import type { ListEntry } from '@core/lists/description';
import { listQuery, type Counts, type ListPage, type ListQuery, type QuickPage } from '@core/lists/query';
import { computed, shallowRef, watch } from 'vue';
import { onChangesOf } from '../record/refetch';
import { answer } from '../service/client';
import { afterPaint } from '../shell/after-paint';
import { useListAddress } from './list-address';
import { useListPages } from './list-pages';
import type { ListView } from './list-view';

/** What takes longer than searching waits for the typing to pause: the filters' counts. */
const COUNTS_AFTER_MS = 120;

/** One page of a noun's list, as soon as it can be had: the counts may still be missing. */
export function fetchPage<Row extends ListEntry>(
  { description, path }: ListView<Row>,
  query: ListQuery,
  signal?: AbortSignal,
): Promise<QuickPage<Row>> {
  const params = toParams(description, query);
  params.set('counts', 'later');
  return answer<QuickPage<Row>>(fetch(`${path}?${params}`, { signal }));
}

/** What every word of every filter would leave; waits until that can be told. */
async function fetchCounts<Row extends ListEntry>(
  { description, path }: ListView<Row>,
  query: ListQuery,
  signal: AbortSignal,
): Promise<Counts> {
  const params = toParams(description, { ...query, offset: 0, limit: 0 });
  return (await answer<ListPage<Row>>(fetch(`${path}?${params}`, { signal }))).counts;
}

/**
 * A noun's list: what is looked for, fetched a page at a time as the list is scrolled. The address follows it, and leads
 * when it is changed by Back, a bookmark or a saved search.
 * @param routes the list's route, and that of a record shown beside it; none keeps the list out of the address
 */
export function useListSearch<Row extends ListEntry>(view: ListView<Row>, routes: readonly string[]) {
  const { description } = view;
  const address = useListAddress(description, routes, () => query.value);
  const query = shallowRef(address.read());
  const paramsOf = (asked: ListQuery): string => {
    const { offset, limit } = listQuery(description);
    return toParams(description, { ...asked, offset, limit }).toString();
  };
  const key = computed(() => paramsOf(query.value));
  const { told, refreshShown, ...pages } = useListPages<Row>(
    (stretch, signal) => fetchPage(view, { ...query.value, ...stretch }, signal),
    (signal) => fetchCounts(view, query.value, signal),
    // The rows are what is waited for; what the filters would leave comes a frame later.
    (show) => {
      if (address.waits()) window.setTimeout(show, COUNTS_AFTER_MS);
      else afterPaint(show);
    },
  );

  /** Changes what is looked for. Typing replaces the address; a filter or a sort is a step that Back takes back. */
  function change(next: ListQuery, step: 'replace' | 'push' = 'push'): void {
    if (step === 'push') address.keepTyped();
    query.value = next;
    address.follow(step);
  }

  watch(key, pages.refresh, { immediate: true });
  address.onLed((led) => {
    if (paramsOf(led) !== key.value) query.value = led;
  });
  onChangesOf(view.kinds, refreshShown);
  return { query, key, ...told, ...pages, change, open: address.open, keepTyped: address.keepTyped };
}
