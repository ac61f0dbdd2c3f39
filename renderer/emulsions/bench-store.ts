import { benchState, type BenchLine, type BenchState } from '@core/emulsions/bench/bench-state';
import type { MaterialLine } from '@core/emulsions/bench/lines';
import { readBench } from '@core/emulsions/bench/reading';
import type { Material } from '@core/materials/material';
import { defineStore } from 'pinia';
import { computed, ref, shallowReactive, shallowRef, watch } from 'vue';
import { useLibrary } from '../library/store';
import { isOfAll, onChange } from '../record/changes';
import { answer, problemOf, service, type ProblemDetails } from '../service/client';
import { EMPTY_BENCH, type BenchEdit } from './bench-edits';

const MOST_STEPS_BACK = 100;
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
  const past = shallowRef<BenchState[]>([]);
  const future = shallowRef<BenchState[]>([]);
  const materials = shallowReactive(new Map<string, Material>());
  const gone = shallowReactive(new Set<string>());
  const problem = ref<ProblemDetails | null>(null);
  let lastField: string | null = null;

  function keep(): void {
    // At once: a page that is left or loaded again waits for no timer.
    localStorage.setItem(keyOf(library.open?.id), JSON.stringify(state.value));
  }

  async function fetchOne(id: string): Promise<void> {
    try {
      materials.set(id, await answer(service.materials[':id'].$get({ param: { id } })));
      gone.delete(id);
    } catch (error) {
      const details = problemOf(error);
      if (details.code === 'not-found') gone.add(id);
      else problem.value = details;
    }
  }

  const idsOn = (on: BenchState): string[] =>
    [...on.oils, ...on.emulsifiers, ...on.rest].map((line) => line.materialId);

  /** Fetches the materials that are not known yet. */
  async function need(): Promise<void> {
    const missing = new Set(idsOn(state.value).filter((id) => !materials.has(id) && !gone.has(id)));
    await Promise.all([...missing].map(fetchOne));
  }

  /** Takes materials that another answer brought along. */
  function know(known: Iterable<Material>): void {
    for (const material of known) materials.set(material.id, material);
  }

  /** Fetches every material anew: they may have been edited elsewhere. */
  async function refresh(): Promise<void> {
    problem.value = null;
    gone.clear();
    await Promise.all([...new Set(idsOn(state.value))].map(fetchOne));
  }

  function show(next: BenchState): void {
    state.value = next;
    keep();
    void need();
  }

  /** Changes the bench. Changes of the same `field` in a row, such as a drag, are one step of undo. */
  function edit(change: BenchEdit, field: string | null = null): void {
    const before = state.value;
    const after = change(before);
    if (after === before) return;
    if (field === null || field !== lastField) past.value = [...past.value.slice(-MOST_STEPS_BACK), before];
    lastField = field;
    future.value = [];
    show(after);
  }

  function step(from: typeof past, to: typeof past): void {
    const next = from.value.at(-1);
    if (!next) return;
    to.value = [...to.value, state.value];
    from.value = from.value.slice(0, -1);
    lastField = null;
    show(next);
  }

  const linesOf = (lines: readonly BenchLine[]): MaterialLine[] =>
    lines.flatMap(({ materialId, percent }) => {
      const material = materials.get(materialId);
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

  onChange((change) => {
    if (isOfAll(change)) void refresh();
    else if (change.kind === 'material' && idsOn(state.value).includes(change.id)) void fetchOne(change.id);
  });
  watch(
    () => library.open?.id,
    (id) => {
      materials.clear();
      gone.clear();
      past.value = [];
      future.value = [];
      state.value = remembered(id);
      void need();
    },
  );

  return {
    state,
    materials,
    gone,
    problem,
    oils,
    emulsifiers,
    rest,
    reading,
    edit,
    know,
    refresh,
    canUndo: computed(() => past.value.length > 0),
    canRedo: computed(() => future.value.length > 0),
    undo: () => step(past, future),
    redo: () => step(future, past),
    /** The next edit is a step of its own. */
    leaveField: () => void (lastField = null),
  };
});
