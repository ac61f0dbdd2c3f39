import { demandType } from '@core/emulsions/bench/bench-state';
import type { CandidateFilter } from '@core/emulsions/bench/candidate-filter';
import { rulesFor, type Objective } from '@core/emulsions/optimise/demand';
import { computed, ref } from 'vue';
import { useBench } from './bench-store';
import { useWish } from './wish-store';

export interface Named {
  id: string;
  name: string;
}

/** What is asked of the optimiser: which materials it may take, and what its answer must hold. */
export function useDemand() {
  const bench = useBench();
  const wish = useWish();
  const asked = {
    filter: ref<CandidateFilter>({ charges: [], forms: [], origins: [], hlbFrom: null, hlbTo: null }),
    pinned: ref<Named[]>([]),
    excluded: ref<Named[]>([]),
    byHlb: ref(true),
    tolerance: ref(0.3),
    totalMin: ref(3),
    totalMax: ref(6),
    atMost: ref(3),
    objective: ref<Objective>('least cost'),
    target: computed(() => bench.reading.target?.value ?? null),
    rules: computed(() => rulesFor(bench.state.emulsionType, wish.wished.climate === 'both')),
  };
  const request = () => ({
    filter: asked.filter.value,
    demand: {
      emulsionType: demandType(bench.state.emulsionType),
      targetHlb: asked.byHlb.value ? asked.target.value : null,
      tolerance: asked.tolerance.value,
      totalMinPercent: asked.totalMin.value,
      totalMaxPercent: asked.totalMax.value,
      atMost: asked.atMost.value,
      pinned: asked.pinned.value.map((one) => one.id),
      excluded: asked.excluded.value.map((one) => one.id),
      objective: asked.objective.value,
      rules: asked.rules.value,
      alternatives: 6,
    },
  });
  return { asked, request };
}
