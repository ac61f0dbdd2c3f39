import type { Found } from '@core/lists/found';
import type { MaterialRow } from '@core/materials/list';
import { ref, type Ref } from 'vue';

/** A material that was found by what was typed. */
export type FoundMaterial = Extract<Found, { kind: 'materials' }>;

export const MOST_SUGGESTED = 30;

/** The row behind the others that offers to make what was typed. */
export const CREATE_ROW = 'create';

type Find = (text: string, signal: AbortSignal) => Promise<FoundMaterial[]>;

/** Searches for what stands in a box, the newest text only, and tells whether the rows answer it. */
function useSearch(text: Readonly<Ref<string>>, find: Find, found: (rows: FoundMaterial[]) => void) {
  const failure = ref<unknown>(null);
  /** The text that was answered last. */
  let answered: string | null = null;
  let stop = new AbortController();
  let underWay: Promise<void> | null = null;

  async function search(wanted: string, signal: AbortSignal): Promise<void> {
    try {
      const rows = await find(wanted, signal);
      if (signal.aborted) return;
      answered = wanted;
      failure.value = null;
      found(rows);
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

  return {
    failure,
    look,
    isUnderWay: () => underWay !== null,
    giveUp(): void {
      stop.abort();
      underWay = null;
      // Closed rows answer nothing any more: the same text, typed again, waits for its own.
      answered = null;
    },
    /** Waits for the answer to the text in the box. False when it was changed or left meanwhile, or the search failed. */
    async isAnswered(): Promise<boolean> {
      const wanted = text.value;
      if (answered !== wanted) await (underWay ?? look());
      return answered === wanted && text.value === wanted;
    },
  };
}

/**
 * The materials suggested for what stands in a box, and the one that is marked. A row is taken or marked by keys only
 * while the rows answer that very text: whoever types faster than the search waits for it. The nearest row is marked
 * from the start, but never one that only mentions what was typed in its notes: it would be taken for its name.
 * @param creates whether a last row offers to make what was typed; it is marked from the start where nothing is found
 */
export function useSuggestions(find: Find, creates: () => boolean = () => false) {
  const text = ref('');
  const rows = ref<MaterialRow[]>([]);
  /** Whether more match than are shown. */
  const more = ref(false);
  const open = ref(false);
  /** The marked row; −1 while none is. */
  const active = ref(-1);
  const { failure, look, isUnderWay, giveUp, isAnswered } = useSearch(text, find, (found) => {
    rows.value = found.slice(0, MOST_SUGGESTED).map(({ row }) => row);
    more.value = found.length > MOST_SUGGESTED;
    const nothing = found.length === 0 && creates();
    active.value = nothing || (found[0] && found[0].near !== 'unshown') ? 0 : -1;
    open.value = true;
  });

  function close(): void {
    giveUp();
    open.value = false;
  }

  function typed(): void {
    if (text.value.trim() === '') close();
    else void look();
  }

  const current = async (): Promise<boolean> => (await isAnswered()) && open.value;

  /** Marks the next or previous row, round the ends; opens the list when it is closed. */
  async function step(by: -1 | 1): Promise<void> {
    if (!open.value && !isUnderWay()) return look();
    if (!(await current())) return;
    const last = rows.value.length - (creates() ? 0 : 1);
    const next = active.value + by;
    active.value = next < 0 ? last : next > last ? Math.min(0, last) : next;
  }

  /** The marked row of what was typed; undefined when there is none, or the list was closed and is opened now. */
  async function marked(): Promise<MaterialRow | typeof CREATE_ROW | undefined> {
    if (!open.value && !isUnderWay()) {
      await look();
      return undefined;
    }
    if (!(await current())) return undefined;
    return creates() && active.value === rows.value.length ? CREATE_ROW : rows.value[active.value];
  }

  return { text, rows, more, open, active, failure, typed, close, step, marked };
}
