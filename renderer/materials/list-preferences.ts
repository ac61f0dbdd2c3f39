import { SORT_KEYS, type SortKey } from '@core/shelf/query';
import { defineStore } from 'pinia';
import { ref, watch } from 'vue';
import { z } from 'zod';
import { COLUMNS_AT_FIRST } from './columns';

const KEY = 'stillroom.materials.columns';
const stored = z.array(z.enum(SORT_KEYS)).min(1);

function remembered(): SortKey[] {
  try {
    return stored.parse(JSON.parse(localStorage.getItem(KEY) ?? ''));
  } catch {
    // Nothing chosen yet, or a list from an older version.
    return COLUMNS_AT_FIRST;
  }
}

/** Which columns the materials list shows on this machine, and which materials are picked. */
export const useListPreferences = defineStore('materials list', () => {
  const columns = ref<SortKey[]>(remembered());
  watch(columns, (chosen) => localStorage.setItem(KEY, JSON.stringify(chosen)));

  /** The picked materials, in the order they were picked; kept while searching on. */
  const picked = ref(new Map<string, string>());
  function pick(id: string, name: string, on = !picked.value.has(id)): void {
    if (on) picked.value.set(id, name);
    else picked.value.delete(id);
  }
  return { columns, picked, pick };
});
