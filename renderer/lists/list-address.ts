import { fromParams, toParams } from '@core/lists/address';
import type { ListDescription } from '@core/lists/description';
import { listQuery, type ListQuery } from '@core/lists/query';
import { onBeforeUnmount, watch } from 'vue';
import {
  onBeforeRouteLeave,
  useRoute,
  useRouter,
  type LocationQuery,
  type LocationQueryRaw,
  type RouteLocationNamedRaw,
} from 'vue-router';

/** The address waits for the typing to pause. */
const ADDRESS_AFTER_MS = 250;

/**
 * Keeps what a list looks for in the address: typing replaces it, a filter or a sort is a step of its own.
 * @param routes the list's route, and that of a record shown beside it; none keeps the list out of the address
 */
export function useListAddress(
  description: ListDescription,
  routes: readonly string[],
  query: () => ListQuery,
) {
  const route = useRoute();
  const router = useRouter();
  const [list, record] = routes;
  const here = (): boolean => routes.includes(String(route.name));
  let timer: number | undefined;

  function read(): ListQuery {
    return list === undefined ? listQuery(description) : queryOf(description, route.query);
  }

  /** A place of this screen, the list or a record beside it, with what is looked for now. */
  function place(id: string | null): RouteLocationNamedRaw {
    const target = id !== null && record !== undefined ? { name: record, params: { id } } : { name: list };
    return { ...target, query: addressOf(description, query()) };
  }
  const openNow = (): string | null => (typeof route.params.id === 'string' ? route.params.id : null);

  /** Before the address changes for another reason: Back must find what was typed until then. */
  function keepTyped(): void {
    if (timer === undefined) return;
    window.clearTimeout(timer);
    timer = undefined;
    router.options.history.replace(router.resolve(place(openNow())).fullPath);
  }

  /** Takes what is looked for now into the address. */
  function follow(step: 'replace' | 'push'): void {
    if (list === undefined) return;
    if (step === 'push') return void router.push(place(openNow()));
    window.clearTimeout(timer);
    timer = window.setTimeout(() => {
      timer = undefined;
      void router.replace(place(openNow()));
    }, ADDRESS_AFTER_MS);
  }

  /** Opens a record beside the list; null closes it. */
  function open(id: string | null): void {
    keepTyped();
    void router.push(place(id));
  }

  /** Tells when the address changes of itself: by Back, a bookmark or a saved search. */
  function onLed(tell: (led: ListQuery) => void): void {
    watch(
      () => route.query,
      (address) => {
        if (!here()) return;
        const led = queryOf(description, address);
        if (addressText(description, led) === addressText(description, query())) return;
        window.clearTimeout(timer);
        timer = undefined;
        tell(led);
      },
    );
  }

  if (list !== undefined) onBeforeRouteLeave(keepTyped);
  onBeforeUnmount(() => window.clearTimeout(timer));
  return { read, keepTyped, follow, open, onLed, waits: () => timer !== undefined };
}

/** A query as in addresses and saved searches: of no page in particular. */
function paramsOf(description: ListDescription, query: ListQuery): URLSearchParams {
  const { offset, limit } = listQuery(description);
  return toParams(description, { ...query, offset, limit });
}

const addressText = (description: ListDescription, query: ListQuery): string =>
  paramsOf(description, query).toString();

function addressOf(description: ListDescription, query: ListQuery): LocationQueryRaw {
  const raw: Record<string, string[]> = {};
  for (const [name, value] of paramsOf(description, query)) (raw[name] ??= []).push(value);
  return raw;
}

function queryOf(description: ListDescription, address: LocationQuery): ListQuery {
  const params = new URLSearchParams();
  for (const [name, value] of Object.entries(address))
    for (const one of [value].flat()) if (one !== null && one !== undefined) params.append(name, one);
  return fromParams(description, params);
}
