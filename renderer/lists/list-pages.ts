import type { ListEntry } from '@core/lists/description';
import type { Correction, Counts, Instead, QuickPage } from '@core/lists/query';
import { onBeforeUnmount, ref, shallowRef, triggerRef } from 'vue';
import { problemOf, type ProblemDetails } from '../service/client';

/** A screenful and what a page key reaches; small answers come and are read faster. */
const PAGE = 50;

/** Where a page of a list begins, and how many rows it has at most. */
export interface Stretch {
  offset: number;
  limit: number;
}

/** The place of a record among the rows that are there; −1 when it is not among them. */
function placeOf(id: string, pages: ReadonlyMap<number, readonly ListEntry[]>): number {
  for (const [page, rows] of pages) {
    const at = rows.findIndex((row) => row.id === id);
    if (at >= 0) return page * PAGE + at;
  }
  return -1;
}

/** What a list says beside its rows; null until it is known. */
const nothingTold = () => ({
  total: ref<number | null>(null),
  counts: shallowRef<Counts | null>(null),
  corrections: shallowRef<Correction[]>([]),
  instead: shallowRef<Instead[]>([]),
  held: ref<number | null>(null),
  problem: ref<ProblemDetails | null>(null),
});

/**
 * The rows of a list that were fetched so far, a page at a time, and what came with the newest answer.
 * @param fetchRows fetches a stretch of what is looked for now
 * @param fetchCounts fetches what came without them
 * @param later shows the counts of the filters, once the rows are drawn
 */
export function useListPages<Row extends ListEntry>(
  fetchRows: (stretch: Stretch, signal: AbortSignal) => Promise<QuickPage<Row>>,
  fetchCounts: (signal: AbortSignal) => Promise<Counts>,
  later: (show: () => void) => void,
) {
  const pages = shallowRef(new Map<number, Row[]>());
  const told = nothingTold();
  let stale = new AbortController();
  let underWay: Promise<unknown> = Promise.resolve();
  const asked = new Set<number>();

  async function take(page: number, fresh: boolean): Promise<void> {
    const { signal } = stale;
    const failed = (error: unknown): void => {
      if (!signal.aborted) told.problem.value = problemOf(error);
    };
    asked.add(page);
    try {
      const found = await fetchRows({ offset: page * PAGE, limit: PAGE }, signal);
      if (fresh) pages.value = new Map();
      pages.value.set(page, found.rows);
      triggerRef(pages);
      told.total.value = found.total;
      told.corrections.value = found.corrections;
      told.instead.value = found.instead;
      told.held.value = found.held;
      told.problem.value = null;
      later(() => {
        if (!signal.aborted && found.counts) told.counts.value = found.counts;
        else if (!signal.aborted)
          void fetchCounts(signal).then((counted) => (told.counts.value = counted), failed);
      });
    } catch (error) {
      asked.delete(page);
      failed(error);
    }
  }

  /** Gives up what is under way, and fetches these pages instead. */
  function anew(wanted: readonly number[], fresh: boolean): Promise<unknown> {
    stale.abort();
    stale = new AbortController();
    asked.clear();
    underWay = Promise.all(wanted.map((page) => take(page, fresh)));
    return underWay;
  }

  /** Sees that the rows from `first` to `last` are there or on their way. */
  function ensure(first: number, last: number): void {
    for (let page = Math.floor(first / PAGE); page <= Math.floor(last / PAGE); page += 1)
      if (!asked.has(page)) void take(page, false);
  }

  onBeforeUnmount(() => stale.abort());
  return {
    told,
    ensure,
    indexOf: (id: string) => placeOf(id, pages.value),
    rowAt: (index: number): Row | undefined => pages.value.get(Math.floor(index / PAGE))?.[index % PAGE],
    /** Fetches anew, keeping what is shown until the answer is there. */
    refresh: () => anew([0], true),
    /** Fetches anew what was fetched so far, in its place: something of it was changed. */
    refreshShown: () => anew(asked.size > 0 ? [...asked] : [0], false),
    answered: () => underWay,
  };
}
