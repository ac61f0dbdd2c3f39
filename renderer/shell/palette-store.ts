import { defineStore } from 'pinia';
import { ref } from 'vue';

/** Whether the palette, which finds anything by typing, is open. */
export const usePalette = defineStore('palette', () => {
  const open = ref(false);
  /** What stands in it when it opens. */
  const begun = ref('');
  function show(text = ''): void {
    begun.value = text;
    open.value = true;
  }
  return { open, begun, show };
});
