import type { ShelfAnswer, ShelfRow } from '@core/shelf/query';
import { ref } from 'vue';

/**
 * The materials suggested for what stands in a box, and the one that is marked. A row is taken or marked by keys only
 * while the rows answer that very text: whoever types faster than the search waits for it.
 */
export function useSuggestions(find: (text: string, signal: AbortSignal) => Promise<ShelfAnswer>) {
  const text = ref('');
  const rows = ref<ShelfRow[]>([]);
  const total = ref(0);
  const open = ref(false);
  const active = ref(0);
  const failure = ref<unknown>(null);
  /** The text that the rows belong to. */
  let answered: string | null = null;
  let stop = new AbortController();
  let underWay: Promise<void> | null = null;

  async function search(wanted: string, signal: AbortSignal): Promise<void> {
    try {
      const found = await find(wanted, signal);
      if (signal.aborted) return;
      rows.value = found.rows;
      total.value = found.total;
      answered = wanted;
      active.value = 0;
      failure.value = null;
      open.value = true;
    } catch (error) {
      if (!signal.aborted) failure.value = error;
    }
    if (!signal.aborted) underWay = null;
  }

  /** Searches for what stands in the box now; an older search is given up. */
  function look(): Promise<void> {
    stop.abort();
    stop = new AbortController();
    return (underWay = search(text.value, stop.signal));
  }

  function close(): void {
    stop.abort();
    underWay = null;
    open.value = false;
  }

  function typed(): void {
    if (text.value.trim() === '') close();
    else void look();
  }

  /** Waits for the rows of the text in the box. False when it was changed or left meanwhile, or the search failed. */
  async function current(): Promise<boolean> {
    const wanted = text.value;
    if (answered !== wanted) await (underWay ?? look());
    return open.value && answered === wanted && text.value === wanted;
  }

  /** Marks the next or previous row, round the ends; opens the list when it is closed. */
  async function step(by: -1 | 1): Promise<void> {
    if (!open.value && !underWay) return look();
    if (!(await current()) || rows.value.length === 0) return;
    active.value = (active.value + by + rows.value.length) % rows.value.length;
  }

  /** The marked row of what was typed; undefined when there is none, or the list was closed and is opened now. */
  async function marked(): Promise<ShelfRow | undefined> {
    if (!open.value && !underWay) {
      await look();
      return undefined;
    }
    return (await current()) ? rows.value[active.value] : undefined;
  }

  return { text, rows, total, open, active, failure, typed, close, step, marked };
}
