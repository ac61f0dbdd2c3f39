import type { ListEntry } from '@core/lists/description';
import { computed, onBeforeUnmount, onMounted, ref, watch } from 'vue';
import { besidesColumns, columnsWithRoom, gridTracks, type ListView } from './list-view';

/** What a row's own buttons take. */
const ACTS_REM = 7.2;

interface Parts<Row extends ListEntry> {
  view: ListView<Row>;
  chosen(): readonly string[];
  hasActs: boolean;
  /** Told which of the chosen columns have no room. */
  tell(crowdedOut: string[]): void;
}

/** The columns that there is room for, so that nothing scrolls sideways, and how they share it. */
export function useGridRoom<Row extends ListEntry>({ view, chosen, hasActs, tell }: Parts<Row>) {
  const scroller = ref<HTMLElement | null>(null);
  const widthRem = ref(Infinity);
  const actsRem = hasActs ? ACTS_REM : 0;
  const wanted = computed(() => view.columns.filter((column) => chosen().includes(column.key)));
  const columns = computed(() =>
    columnsWithRoom(wanted.value, widthRem.value, besidesColumns(view.picks, actsRem)),
  );
  /** For all rows at once: Vue writes each property of a row's own style anew whenever the row is drawn. */
  const layout = computed(
    () => `--tracks: ${gridTracks(columns.value, view.picks, actsRem)}; --row: ${view.rowHeight}px`,
  );
  watch(
    () => wanted.value.filter((column) => !columns.value.includes(column)).map(({ key }) => key),
    (keys, before) => keys.join() !== before?.join() && tell(keys),
    { immediate: true },
  );

  const watcher = new ResizeObserver(() => {
    // In whole rem: a scroll bar that comes and goes must not make columns come and go.
    const rem = parseFloat(getComputedStyle(document.documentElement).fontSize);
    widthRem.value = Math.floor(((scroller.value?.clientWidth ?? Infinity) / rem) * 2) / 2;
  });
  onMounted(() => scroller.value && watcher.observe(scroller.value));
  onBeforeUnmount(() => watcher.disconnect());
  return { scroller, columns, layout };
}
