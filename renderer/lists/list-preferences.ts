import { defineStore } from 'pinia';
import { ref, watch } from 'vue';
import { z } from 'zod';

const stored = z.array(z.string()).min(1);

function remembered(key: string, known: readonly string[], first: readonly string[]): string[] {
  try {
    const chosen = stored.parse(JSON.parse(localStorage.getItem(key) ?? ''));
    const left = known.filter((column) => chosen.includes(column));
    return left.length > 0 ? left : [...first];
  } catch {
    // Nothing chosen yet, or a list from an older version.
    return [...first];
  }
}

/**
 * Which columns a noun's list shows on this machine, and which of its records are picked.
 * @param many the noun, in the plural
 */
export function useListPreferences(many: string, known: readonly string[], first: readonly string[]) {
  const key = `stillroom.${many}.columns`;
  return defineStore(`list of ${many}`, () => {
    const columns = ref<string[]>(remembered(key, known, first));
    watch(columns, (chosen) => localStorage.setItem(key, JSON.stringify(chosen)));

    /** The picked records' names, in the order they were picked; kept while searching on. */
    const picked = ref(new Map<string, string>());
    function pick(id: string, name: string, on = !picked.value.has(id)): void {
      if (on) picked.value.set(id, name);
      else picked.value.delete(id);
    }
    return { columns, picked, pick };
  })();
}
export type ListPreferences = ReturnType<typeof useListPreferences>;
