import { computed, shallowRef, type ShallowRef } from 'vue';

const MOST_STEPS_BACK = 100;

/**
 * Undo and Redo of a state that is replaced, never changed in place.
 * @param show makes a state the present one
 */
export function useSteps<State>(state: Readonly<ShallowRef<State>>, show: (next: State) => void) {
  const past = shallowRef<State[]>([]);
  const future = shallowRef<State[]>([]);
  let lastField: string | null = null;

  /** Changes the state. Changes of the same `field` in a row, such as a drag, are one step of undo. */
  function edit(change: (before: State) => State, field: string | null = null): void {
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
    if (next === undefined) return;
    to.value = [...to.value, state.value];
    from.value = from.value.slice(0, -1);
    lastField = null;
    show(next);
  }

  return {
    edit,
    canUndo: computed(() => past.value.length > 0),
    canRedo: computed(() => future.value.length > 0),
    undo: () => step(past, future),
    redo: () => step(future, past),
    /** The next edit is a step of its own. */
    leaveField: () => void (lastField = null),
    forgetSteps(): void {
      past.value = [];
      future.value = [];
    },
  };
}
