import type { OptimiseResult } from '@core/emulsions/optimise/result';
import { defineStore } from 'pinia';
import { ref, shallowRef } from 'vue';
import { answer, problemOf, service, type ProblemDetails } from '../service/client';
import { useDemand } from './optimise-demand';

/** What is asked of the optimiser, and what it answered; kept while the reader moves between the bench's tools. */
export const useOptimise = defineStore('bench optimise', () => {
  const { asked, request } = useDemand();
  const result = shallowRef<OptimiseResult | null>(null);
  const problem = ref<ProblemDetails | null>(null);
  const busy = ref(false);
  let running = new AbortController();

  async function run(): Promise<void> {
    running.abort();
    const mine = new AbortController();
    running = mine;
    busy.value = true;
    problem.value = null;
    result.value = null;
    try {
      const found = await answer<OptimiseResult>(
        service.emulsions.optimise.$post({ json: request() }, { init: { signal: mine.signal } }),
      );
      if (!mine.signal.aborted) result.value = found;
    } catch (error) {
      if (!mine.signal.aborted) problem.value = problemOf(error);
    }
    if (running === mine) busy.value = false;
  }

  /** Ends the computing; the service stops too. */
  function stop(): void {
    running.abort();
    busy.value = false;
  }

  return { ...asked, result, problem, busy, run, stop };
});
