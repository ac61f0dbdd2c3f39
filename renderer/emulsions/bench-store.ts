import { benchState, type BenchLine, type BenchState } from '@core/emulsions/bench/bench-state';
import type { MaterialLine } from '@core/emulsions/bench/lines';
import { readBench } from '@core/emulsions/bench/reading';
import { defineStore } from 'pinia';
import { computed, shallowRef, watch } from 'vue';
import { useLibrary } from '../library/store';
import { EMPTY_BENCH } from './bench-edits';
import { useBenchMaterials } from './bench-materials';
import { useSteps } from './bench-steps';

const keyOf = (libraryId: string | undefined): string => `stillroom.bench.${libraryId ?? ''}`;

function remembered(libraryId: string | undefined): BenchState {
  try {
    return benchState.parse(JSON.parse(localStorage.getItem(keyOf(libraryId)) ?? ''));
  } catch {
    // Nothing left there yet, or a bench of an older version.
    return EMPTY_BENCH;
  }
}

/** What stands on the bench, and what it comes to. Kept on this machine between visits, library by library. */
export const useBench = defineStore('bench', () => {
  const library = useLibrary();
  const state = shallowRef<BenchState>(remembered(library.open?.id));
  const known = useBenchMaterials(() =>
    [...state.value.oils, ...state.value.emulsifiers, ...state.value.rest].map((line) => line.materialId),
  );
  const { forgetSteps, ...steps } = useSteps(state, (next) => {
    state.value = next;
    // At once: a page that is left or loaded again waits for no timer.
    localStorage.setItem(keyOf(library.open?.id), JSON.stringify(next));
    void known.need();
  });

  const linesOf = (lines: readonly BenchLine[]): MaterialLine[] =>
    lines.flatMap(({ materialId, percent }) => {
      const material = known.materials.get(materialId);
      return material ? [{ material, percent }] : [];
    });
  const oils = computed(() => linesOf(state.value.oils));
  const emulsifiers = computed(() => linesOf(state.value.emulsifiers));
  const rest = computed(() => linesOf(state.value.rest));
  const reading = computed(() =>
    readBench({
      emulsionType: state.value.emulsionType,
      oils: oils.value,
      emulsifiers: emulsifiers.value,
      rest: rest.value,
      targetHlb: state.value.targetHlb,
    }),
  );

  watch(
    () => library.open?.id,
    (id) => {
      known.forget();
      forgetSteps();
      state.value = remembered(id);
      void known.need();
    },
  );

  const { materials, gone, problem, know, refresh } = known;
  return { state, materials, gone, problem, oils, emulsifiers, rest, reading, know, refresh, ...steps };
});
