import { defineStore } from 'pinia';
import { computed, ref } from 'vue';
import { problemOf, type ProblemDetails } from '../service/client';

/** Whether what was entered is safe on disk. "Saved" is shown only when the service has acknowledged every change. */
export const useSaving = defineStore('saving', () => {
  const underWay = ref(0);
  const failed = ref<ProblemDetails | null>(null);
  const savedAt = ref<Date | null>(null);

  const state = computed(() => (failed.value ? 'not saved' : underWay.value > 0 ? 'saving' : 'saved'));

  /** Follows one change until the service acknowledges or refuses it. A refusal stays shown, and is thrown on. */
  async function track<T>(change: Promise<T>): Promise<T> {
    underWay.value += 1;
    try {
      const result = await change;
      failed.value = null;
      savedAt.value = new Date();
      return result;
    } catch (error) {
      failed.value = problemOf(error);
      throw error;
    } finally {
      underWay.value -= 1;
    }
  }

  function dismiss(): void {
    failed.value = null;
  }

  return { state, failed, savedAt, track, dismiss };
});
