import { computed, ref, shallowRef } from 'vue';

/**
 * Files that were chosen together and are looked at one after another: the first at once, each next one when its maker
 * goes on. What is chosen meanwhile comes first; those that wait stay.
 * @param take begins with a file
 */
export function useFileQueue(take: (file: File) => void) {
  const waiting = shallowRef<readonly File[]>([]);
  /** Which one is looked at, from 1; 0 before the first. */
  const at = ref(0);
  function next(): void {
    const [file, ...others] = waiting.value;
    if (!file) return;
    waiting.value = others;
    at.value += 1;
    take(file);
  }
  return {
    at,
    of: computed(() => at.value + waiting.value.length),
    /** The name of the one that comes next; null where none waits. */
    following: computed(() => waiting.value[0]?.name ?? null),
    begin(file: File, others: readonly File[]): void {
      if (waiting.value.length === 0) at.value = 0;
      waiting.value = [file, ...others, ...waiting.value];
      next();
    },
    next,
    /** Gives up those that wait; the one that is looked at stays. */
    leaveOthers(): void {
      waiting.value = [];
      at.value = 0;
    },
  };
}
export type FileQueue = ReturnType<typeof useFileQueue>;
