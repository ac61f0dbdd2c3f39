import { ref, shallowRef } from 'vue';
import { problemOf, type ProblemDetails } from '../service/problem';
import { useSaving } from '../shell/saving';

/**
 * What a dialog's form sends once: one at a time, what is refused told at its field.
 * @param send sends it; what it tracks as saving is told beneath every screen too
 */
export function useSending(send: (track: ReturnType<typeof useSaving>['track']) => Promise<void>) {
  const saving = useSaving();
  const problem = shallowRef<ProblemDetails | null>(null);
  const busy = ref(false);
  return {
    problem,
    busy,
    fault: (path: string): string | null =>
      problem.value?.fields.find((field) => field.path === path)?.message ?? null,
    async run(): Promise<void> {
      if (busy.value) return;
      busy.value = true;
      problem.value = null;
      try {
        await send(saving.track);
      } catch (error) {
        problem.value = problemOf(error);
        saving.dismiss();
      } finally {
        busy.value = false;
      }
    },
  };
}
