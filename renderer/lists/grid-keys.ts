import { nextTick, ref, watch, type Ref } from 'vue';
import type { Virtual } from './list-rows';

interface Parts {
  scroller: Ref<HTMLElement | null>;
  virtual: Virtual;
  rows: Ref<readonly unknown[]>;
  total: Ref<number>;
  rowHeight: number;
  searchKey: Ref<string>;
  open(index: number): void;
  pick(index: number): void;
}

/** The keys of a list: one row can be tabbed to, arrows move from there, and Right goes into what the row holds. */
export function useGridKeys(parts: Parts) {
  const { scroller, virtual, rows, total, rowHeight } = parts;
  const active = ref(0);
  watch(parts.searchKey, () => (active.value = 0));

  // A row far off is drawn only after the list has moved there: it gets the focus then.
  let awaited: number | null = null;
  const rowElement = (index: number): HTMLElement | null =>
    scroller.value?.querySelector<HTMLElement>(`[data-index="${index}"]`) ?? null;
  function focusAwaited(): void {
    const row = awaited === null ? null : rowElement(awaited);
    if (!row) return;
    awaited = null;
    row.focus({ preventScroll: true });
  }
  watch(rows, focusAwaited, { flush: 'post' });

  function moveTo(index: number): void {
    active.value = Math.max(0, Math.min(total.value - 1, index));
    awaited = active.value;
    virtual.value.scrollToIndex(active.value);
    void nextTick(focusAwaited);
  }

  /** Goes to the next or previous thing within the row that can be used, the row itself being the first. */
  function moveWithin(by: 1 | -1): void {
    const row = rowElement(active.value);
    if (!row) return;
    const stops = [row, ...row.querySelectorAll<HTMLElement>('a, button, input')];
    const next = stops[stops.indexOf(document.activeElement as HTMLElement) + by];
    next?.focus({ preventScroll: true });
  }

  function pressed(event: KeyboardEvent): void {
    if (event.altKey || event.ctrlKey || event.metaKey) return;
    const page = Math.max(1, Math.floor((scroller.value?.clientHeight ?? 300) / rowHeight) - 2);
    const steps: Record<string, number> = {
      ArrowDown: active.value + 1,
      ArrowUp: active.value - 1,
      PageDown: active.value + page,
      PageUp: active.value - page,
      Home: 0,
      End: total.value - 1,
    };
    const target = steps[event.key];
    const onRow = event.target instanceof HTMLElement && event.target.role === 'row';
    if (target !== undefined) moveTo(target);
    else if (event.key === 'ArrowRight') moveWithin(1);
    else if (event.key === 'ArrowLeft') moveWithin(-1);
    else if (event.key === 'Enter' && onRow) parts.open(active.value);
    else if (event.key === ' ' && onRow) parts.pick(active.value);
    else return;
    event.preventDefault();
  }

  return { active, pressed, moveTo };
}
