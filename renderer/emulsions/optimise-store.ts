import type { CandidateFilter } from '@core/emulsions/bench/candidate-filter';
import type { Objective } from '@core/emulsions/optimise/demand';
import type { OptimiseResult } from '@core/emulsions/optimise/result';
import { rulesFor } from '@core/emulsions/optimise/demand';
import { demandType } from '@core/emulsions/bench/bench-state';
import { defineStore } from 'pinia';
import { computed, ref, shallowRef } from 'vue';
import { answer, problemOf, service, type ProblemDetails } from '../service/client';
import { useBench } from './bench-store';
import { useWish } from './wish-store';

export interface Named {
  id: string;
  name: string;
}

/** What is asked of the optimiser, and what it answered; kept while the reader moves between the bench's tools. */
export const useOptimise = defineStore('bench optimise', () => {
  const bench = useBench();
  const wish = useWish();
  const filter = ref<CandidateFilter>({ charges: [], forms: [], origins: [], hlbFrom: null, hlbTo: null });
  const pinned = ref<Named[]>([]);
  const excluded = ref<Named[]>([]);
  const byHlb = ref(true);
  const tolerance = ref(0.3);
  const totalMin = ref(3);
  const totalMax = ref(6);
  const atMost = ref(3);
  const objective = ref<Objective>('least cost');
  const result = shallowRef<OptimiseResult | null>(null);
  const problem = ref<ProblemDetails | null>(null);
  const busy = ref(false);
  let running = new AbortController();

  const target = computed(() => bench.reading.target?.value ?? null);
  const rules = computed(() => rulesFor(bench.state.emulsionType, wish.wished.climate === 'both'));

  function demand() {
    return {
      emulsionType: demandType(bench.state.emulsionType),
      targetHlb: byHlb.value ? target.value : null,
      tolerance: tolerance.value,
      totalMinPercent: totalMin.value,
      totalMaxPercent: totalMax.value,
      atMost: atMost.value,
      pinned: pinned.value.map((one) => one.id),
      excluded: excluded.value.map((one) => one.id),
      objective: objective.value,
      rules: rules.value,
      alternatives: 6,
    };
  }

  async function run(): Promise<void> {
    running.abort();
    const mine = new AbortController();
    running = mine;
    busy.value = true;
    problem.value = null;
    result.value = null;
    try {
      const json = { filter: filter.value, demand: demand() };
      const found = await answer<OptimiseResult>(
        service.emulsions.optimise.$post({ json }, { init: { signal: mine.signal } }),
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

  return {
    filter,
    pinned,
    excluded,
    byHlb,
    tolerance,
    totalMin,
    totalMax,
    atMost,
    objective,
    rules,
    target,
    result,
    problem,
    busy,
    run,
    stop,
  };
});
