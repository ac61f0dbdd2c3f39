import { useVirtualizer } from '@tanstack/vue-virtual';
import { computed, watch, type Ref } from 'vue';

interface Parts {
  scroller: Ref<HTMLElement | null>;
  total: Ref<number>;
  rowHeight: number;
  searchKey: Ref<string>;
  inSight(first: number, last: number): void;
}

/** Which rows are in sight, and so drawn. What is looked for anew starts at its top. */
export function useListRows({ scroller, total, rowHeight, searchKey, inSight }: Parts) {
  const virtual = useVirtualizer(
    computed(() => ({
      count: total.value,
      getScrollElement: () => scroller.value,
      estimateSize: () => rowHeight,
      // The head lies over the first rows of the scrolling part.
      scrollPaddingStart: rowHeight,
      overscan: 3,
    })),
  );
  const items = computed(() => virtual.value.getVirtualItems());
  watch(items, (seen) => {
    const first = seen[0];
    const last = seen.at(-1);
    if (first && last) inSight(first.index, last.index);
  });
  watch(searchKey, () => {
    // Asking the element would lay the page out once more at every keystroke.
    if (virtual.value.scrollOffset) scroller.value?.scrollTo({ top: 0 });
  });
  return { virtual, items };
}
export type Virtual = ReturnType<typeof useListRows>['virtual'];
