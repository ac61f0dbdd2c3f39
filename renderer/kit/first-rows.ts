import { computed, ref, watch, type ComputedRef, type Ref } from 'vue';

/** How many rows come at a time: more than a screen holds, and soon drawn. */
const STEP = 80;

export interface FirstRows<T> {
  rows: ComputedRef<readonly T[]>;
  /** How many rows are not drawn yet. */
  left: ComputedRef<number>;
  more: () => void;
}

/**
 * Draws a long list a part at a time: its first rows at once, more as `MoreRows` comes into sight.
 * @param lookedFor what the list is narrowed by; a change starts it at its top again
 */
export function useFirstRows<T>(all: Ref<readonly T[]>, lookedFor: () => unknown): FirstRows<T> {
  const drawn = ref(STEP);
  watch(lookedFor, () => (drawn.value = STEP));
  return {
    rows: computed(() => all.value.slice(0, drawn.value)),
    left: computed(() => Math.max(0, all.value.length - drawn.value)),
    more: () => (drawn.value += STEP),
  };
}
