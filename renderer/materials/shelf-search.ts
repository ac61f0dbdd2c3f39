import { fromParams, toParams } from '@core/shelf/query-params';
import { shelfQuery, type ShelfAnswer, type ShelfQuery, type ShelfRow } from '@core/shelf/query';
import { computed, onBeforeUnmount, ref, shallowRef, triggerRef, watch } from 'vue';
import {
  onBeforeRouteLeave,
  useRoute,
  useRouter,
  type LocationQuery,
  type LocationQueryRaw,
  type RouteLocationNamedRaw,
} from 'vue-router';
import { answer, problemOf, type ProblemDetails } from '../service/client';
import { onChangesOf } from '../record/refetch';
import { afterPaint } from '../shell/after-paint';

/** A screenful and what a page key reaches; small answers come and are read faster. */
const PAGE = 50;
const WHOLE_LIST = shelfQuery.parse({});
/** What takes longer than searching waits for the typing to pause: the filters' counts, then the address. */
const COUNTS_AFTER_MS = 120;
const ADDRESS_AFTER_MS = 250;

/** A query as in addresses and saved searches: of no page in particular. */
function paramsOf(query: ShelfQuery): URLSearchParams {
  return toParams({ ...query, offset: WHOLE_LIST.offset, limit: WHOLE_LIST.limit });
}

/** The address's query of a shelf query; what is default is left out. */
function addressOf(query: ShelfQuery): LocationQueryRaw {
  const raw: Record<string, string[]> = {};
  for (const [name, value] of paramsOf(query)) (raw[name] ??= []).push(value);
  return raw;
}

function queryOf(address: LocationQuery): ShelfQuery {
  const params = new URLSearchParams();
  for (const [name, value] of Object.entries(address))
    for (const one of [value].flat()) if (one !== null && one !== undefined) params.append(name, one);
  return fromParams(params);
}

/**
 * The materials list: what is looked for, fetched a page at a time as the list is scrolled. The address follows it, and
 * leads when it is changed by Back, a bookmark or a saved search.
 */
export function useShelfSearch() {
  const route = useRoute();
  const router = useRouter();
  const query = shallowRef(queryOf(route.query));
  const key = computed(() => paramsOf(query.value).toString());
  const pages = shallowRef(new Map<number, ShelfRow[]>());
  const total = ref<number | null>(null);
  const counts = shallowRef<ShelfAnswer['counts'] | null>(null);
  const problem = ref<ProblemDetails | null>(null);
  let stale = new AbortController();
  let addressTimer: number | undefined;
  let underWay: Promise<void> = Promise.resolve();
  const asked = new Set<number>();

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
      problem.value = null;
      // The rows are what is waited for; what the filters would leave comes a frame later.
      const show = (): void => {
        if (!signal.aborted) counts.value = found.counts;
      };
      if (addressTimer === undefined) afterPaint(show);
      else window.setTimeout(show, COUNTS_AFTER_MS);
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
    underWay = fetchPage(0, true);
    return underWay;
  }

  /** Fetches anew what was fetched so far, in its place: something of it was changed. */
  function refreshShown(): void {
    const shown = asked.size > 0 ? [...asked] : [0];
    stale.abort();
    stale = new AbortController();
    asked.clear();
    underWay = Promise.all(shown.map((page) => fetchPage(page, false))).then(() => undefined);
  }

  /** Sees that the rows from `first` to `last` are there or on their way. */
  function ensure(first: number, last: number): void {
    for (let page = Math.floor(first / PAGE); page <= Math.floor(last / PAGE); page += 1)
      if (!asked.has(page)) void fetchPage(page, false);
  }

  function rowAt(index: number): ShelfRow | undefined {
    return pages.value.get(Math.floor(index / PAGE))?.[index % PAGE];
  }

  /** A place of this screen, the list or a material beside it, with what is looked for now. */
  function place(id: string | null): RouteLocationNamedRaw {
    const target = id === null ? { name: 'materials' } : { name: 'material', params: { id } };
    return { ...target, query: addressOf(query.value) };
  }
  const openNow = (): string | null => (typeof route.params.id === 'string' ? route.params.id : null);

  /** Before the address changes for another reason: Back must find what was typed until then. */
  function keepTyped(): void {
    if (addressTimer === undefined) return;
    window.clearTimeout(addressTimer);
    addressTimer = undefined;
    router.options.history.replace(router.resolve(place(openNow())).fullPath);
  }

  /** Changes what is looked for. Typing replaces the address; a filter or a sort is a step that Back takes back. */
  function change(part: Partial<ShelfQuery>, step: 'replace' | 'push' = 'push'): void {
    if (step === 'push') keepTyped();
    query.value = { ...query.value, ...part };
    if (step === 'push') return void router.push(place(openNow()));
    window.clearTimeout(addressTimer);
    addressTimer = window.setTimeout(() => {
      addressTimer = undefined;
      void router.replace(place(openNow()));
    }, ADDRESS_AFTER_MS);
  }

  /** Opens a material beside the list; null closes it. */
  function open(id: string | null): void {
    keepTyped();
    void router.push(place(id));
  }

  watch(key, refresh, { immediate: true });
  watch(
    () => route.query,
    (address) => {
      const here = route.name === 'materials' || route.name === 'material';
      const led = queryOf(address);
      if (!here || paramsOf(led).toString() === key.value) return;
      window.clearTimeout(addressTimer);
      addressTimer = undefined;
      query.value = led;
    },
  );
  onChangesOf(['material'], () => void refreshShown());
  onBeforeRouteLeave(keepTyped);
  onBeforeUnmount(() => window.clearTimeout(addressTimer));
  return {
    query,
    total,
    counts,
    problem,
    rowAt,
    ensure,
    change,
    open,
    refresh,
    answered: () => underWay,
    key,
  };
}
