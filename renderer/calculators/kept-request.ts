import { computed, ref, shallowRef, watch, type Ref } from 'vue';
import type { z } from 'zod';
import { useLibrary } from '../library/store';

function remembered<T>(key: string, schema: z.ZodType<T>, blank: T): T {
  try {
    return schema.parse(JSON.parse(localStorage.getItem(key) ?? ''));
  } catch {
    // Nothing left there yet, or inputs of an older version.
    return structuredClone(blank);
  }
}

/** A calculator's inputs, kept on this machine between visits, library by library; clearing can be taken back. */
export function useKeptRequest<T>(name: string, schema: z.ZodType<T>, blank: T) {
  const key = `stillroom.calculator.${useLibrary().open?.id ?? ''}.${name}`;
  const request = ref(remembered(key, schema, blank)) as Ref<T>;
  const cleared = shallowRef<T | null>(null);
  // At once: a page that is left or loaded again waits for no timer.
  watch(request, (now) => localStorage.setItem(key, JSON.stringify(now)), { deep: true });

  function clear(): void {
    cleared.value = request.value;
    request.value = structuredClone(blank);
  }

  function bringBack(): void {
    if (cleared.value === null) return;
    request.value = cleared.value;
    cleared.value = null;
  }

  return { request, clear, bringBack, canBringBack: computed(() => cleared.value !== null) };
}
