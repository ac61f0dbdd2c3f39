import { toParams } from '@core/lists/address';
import type { ListEntry } from '@core/lists/description';
import {
  listQuery,
  type Correction,
  type Counts,
  type Instead,
  type ListPage,
  type ListQuery,
} from '@core/lists/query';
import { computed, onBeforeUnmount, ref, shallowRef, triggerRef, watch } from 'vue';
import { answer, problemOf, type ProblemDetails } from '../service/client';
import { onChangesOf } from '../record/refetch';
import { afterPaint } from '../shell/after-paint';
import { useListAddress } from './list-address';
import type { ListView } from './list-view';

/** A screenful and what a page key reaches; small answers come and are read faster. */
const PAGE = 50;
/** What takes longer than searching waits for the typing to pause: the filters' counts. */
const COUNTS_AFTER_MS = 120;

/** One page of a noun's list. */
export function fetchPage<Row extends ListEntry>(
  { description, path }: ListView<Row>,
  query: ListQuery,
  signal?: AbortSignal,
): Promise<ListPage<Row>> {
  return answer<ListPage<Row>>(fetch(`${path}?${toParams(description, query)}`, { signal }));
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
  const pages = shallowRef(new Map<number, Row[]>());
  const total = ref<number | null>(null);
  const counts = shallowRef<Counts | null>(null);
  const corrections = shallowRef<Correction[]>([]);
  const instead = shallowRef<Instead[]>([]);
  const problem = ref<ProblemDetails | null>(null);
  let stale = new AbortController();
  let underWay: Promise<void> = Promise.resolve();
  const asked = new Set<number>();

  async function take(page: number, fresh: boolean): Promise<void> {
    const { signal } = stale;
    asked.add(page);
    try {
      const wanted = { ...query.value, offset: page * PAGE, limit: PAGE };
      const found = await fetchPage(view, wanted, signal);
      if (fresh) pages.value = new Map();
      pages.value.set(page, found.rows);
      triggerRef(pages);
      total.value = found.total;
      corrections.value = found.corrections;
      instead.value = found.instead;
      problem.value = null;
      // The rows are what is waited for; what the filters would leave comes a frame later.
      const show = (): void => {
        if (!signal.aborted) counts.value = found.counts;
      };
      if (address.waits()) window.setTimeout(show, COUNTS_AFTER_MS);
      else afterPaint(show);
    } catch (error) {
      asked.delete(page);
      if (!signal.aborted) problem.value = problemOf(error);
    }
  }

  /** Fetches anew, keeping what is shown until the answer is there. */
  function refresh(): Promise<void> {
    stale.abort();
    stale = new AbortController();
    asked.clear();
    underWay = take(0, true);
    return underWay;
  }

  /** Fetches anew what was fetched so far, in its place: something of it was changed. */
  function refreshShown(): void {
    const shown = asked.size > 0 ? [...asked] : [0];
    stale.abort();
    stale = new AbortController();
    asked.clear();
    underWay = Promise.all(shown.map((page) => take(page, false))).then(() => undefined);
  }

  /** Sees that the rows from `first` to `last` are there or on their way. */
  function ensure(first: number, last: number): void {
    for (let page = Math.floor(first / PAGE); page <= Math.floor(last / PAGE); page += 1)
      if (!asked.has(page)) void take(page, false);
  }

  function rowAt(index: number): Row | undefined {
    return pages.value.get(Math.floor(index / PAGE))?.[index % PAGE];
  }

  /** The place of a record among the rows that are there; −1 when it is not among them. */
  function indexOf(id: string): number {
    for (const [page, rows] of pages.value) {
      const at = rows.findIndex((row) => row.id === id);
      if (at >= 0) return page * PAGE + at;
    }
    return -1;
  }

  /** Changes what is looked for. Typing replaces the address; a filter or a sort is a step that Back takes back. */
  function change(next: ListQuery, step: 'replace' | 'push' = 'push'): void {
    if (step === 'push') address.keepTyped();
    query.value = next;
    address.follow(step);
  }

  watch(key, refresh, { immediate: true });
  address.onLed((led) => {
    if (paramsOf(led) !== key.value) query.value = led;
  });
  onChangesOf(view.kinds, refreshShown);
  onBeforeUnmount(() => stale.abort());
  return {
    query,
    key,
    total,
    counts,
    corrections,
    instead,
    problem,
    rowAt,
    indexOf,
    ensure,
    change,
    refresh,
    open: address.open,
    keepTyped: address.keepTyped,
    answered: () => underWay,
  };
}
