import { fromParams, toParams } from '@core/shelf/query-params';
import { shelfQuery, type ShelfAnswer, type ShelfQuery, type ShelfRow } from '@core/shelf/query';
import { computed, ref, shallowRef, triggerRef, watch } from 'vue';
import { useRoute, useRouter, type LocationQueryRaw } from 'vue-router';
import { answer, problemOf, type ProblemDetails } from '../service/client';

const PAGE = 100;

/** The address's query of a shelf query; what is default is left out. */
export function queryOfSearch(query: ShelfQuery): LocationQueryRaw {
  const raw: Record<string, string[]> = {};
  for (const [name, value] of toParams({ ...query, offset: 0, limit: shelfQuery.parse({}).limit }))
    (raw[name] ??= []).push(value);
  return raw;
}

/**
 * The materials list: what the address asks for, fetched a page at a time as the list is scrolled. The filter state
 * lives in the address, so that Back, bookmarks and saved searches all work.
 */
export function useShelfSearch() {
  const route = useRoute();
  const router = useRouter();
  const pages = shallowRef(new Map<number, ShelfRow[]>());
  const total = ref<number | null>(null);
  const counts = shallowRef<ShelfAnswer['counts'] | null>(null);
  const problem = ref<ProblemDetails | null>(null);
  let stale = new AbortController();
  const asked = new Set<number>();

  const query = computed<ShelfQuery>(() => {
    const params = new URLSearchParams();
    for (const [name, value] of Object.entries(route.query))
      for (const one of [value].flat()) if (one !== null && one !== undefined) params.append(name, one);
    return fromParams(params);
  });
  const key = computed(() => toParams({ ...query.value, offset: 0, limit: PAGE }).toString());

  async function fetchPage(page: number, fresh: boolean): Promise<void> {
    const { signal } = stale;
    asked.add(page);
    const params = toParams({ ...query.value, offset: page * PAGE, limit: PAGE });
    try {
      const found = await answer<ShelfAnswer>(fetch(`/api/materials?${params}`, { signal }));
      if (fresh) pages.value = new Map();
      pages.value.set(page, found.rows);
      triggerRef(pages);
      total.value = found.total;
      counts.value = found.counts;
      problem.value = null;
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
    return fetchPage(0, true);
  }

  /** Sees that the rows from `first` to `last` are there or on their way. */
  function ensure(first: number, last: number): void {
    for (let page = Math.floor(first / PAGE); page <= Math.floor(last / PAGE); page += 1)
      if (!asked.has(page)) void fetchPage(page, false);
  }

  function rowAt(index: number): ShelfRow | undefined {
    return pages.value.get(Math.floor(index / PAGE))?.[index % PAGE];
  }

  /** Changes what is looked for. Typing replaces the address; a filter or a sort is a step that Back takes back. */
  function change(part: Partial<ShelfQuery>, step: 'replace' | 'push' = 'push'): void {
    void router[step]({ ...route, query: queryOfSearch({ ...query.value, ...part }) });
  }

  watch(key, refresh, { immediate: true });
  return { query, total, counts, problem, rowAt, ensure, change, refresh, key };
}
