import { defineStore } from 'pinia';
import { ref } from 'vue';

/** Whether the palette, which finds anything by typing, is open. */
export const usePalette = defineStore('palette', () => {
  const open = ref(false);
  function show(): void {
    open.value = true;
  }
  return { open, show };
});
