import type { Ranking } from '@core/emulsions/systems/rank-systems';
import { onScopeDispose, ref, shallowRef, watch } from 'vue';
import { answer, problemOf, service, type ProblemDetails } from '../service/client';
import { useBench } from './bench-store';
import { useWish } from './wish-store';

const WAIT_MS = 350;

/** The systems that the library offers for the bench's oil phase and the wish: asked anew after each change. */
export function useProposals() {
  const bench = useBench();
  const wish = useWish();
  const ranking = shallowRef<Ranking | null>(null);
  const problem = ref<ProblemDetails | null>(null);
  const busy = ref(false);
  let stale = new AbortController();
  let timer = 0;

  async function ask(): Promise<void> {
    stale.abort();
    const mine = new AbortController();
    stale = mine;
    const { emulsionType, oils, rest } = bench.state;
    const json = {
      wish: { ...wish.wished, emulsionType },
      oils,
      rest,
      weights: wish.weights,
      targetHlb: bench.state.targetHlb,
    };
    try {
      const found = await answer<Ranking>(
        service.emulsions.systems.$post({ json }, { init: { signal: mine.signal } }),
      );
      if (mine.signal.aborted) return;
      ranking.value = found;
      problem.value = null;
    } catch (error) {
      if (mine.signal.aborted) return;
      ranking.value = null;
      problem.value = problemOf(error);
    }
    busy.value = false;
  }

  watch(
    () => [
      bench.state.emulsionType,
      bench.state.targetHlb,
      JSON.stringify([bench.state.oils, bench.state.rest]),
      wish.wished,
      wish.weights,
    ],
    () => {
      clearTimeout(timer);
      stale.abort();
      busy.value = bench.state.oils.length > 0;
      ranking.value = busy.value ? ranking.value : null;
      problem.value = null;
      if (busy.value) timer = window.setTimeout(() => void ask(), WAIT_MS);
    },
    { immediate: true },
  );
  onScopeDispose(() => {
    clearTimeout(timer);
    stale.abort();
  });
  return { ranking, problem, busy };
}
