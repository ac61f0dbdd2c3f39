import { merge } from '@core/record/merge';
import type { Shape } from '@core/record/place';
import { computed, shallowRef } from 'vue';

const MOST_STEPS_BACK = 300;

interface Step<T> {
  before: T;
  after: T;
}

/**
 * Undo and redo by field. A step takes back what it changed and nothing else, so that what another window changed
 * meanwhile stays.
 */
export function undoSteps<T extends object>(shape: Shape) {
  const past = shallowRef<Step<T>[]>([]);
  const future = shallowRef<Step<T>[]>([]);
  let lastField: string | null = null;

  /** Remembers a change. Changes of the same `field` in a row, such as key strokes, are one step. */
  function remember(before: T, after: T, field: string | null): void {
    const last = past.value.at(-1);
    const goesOn = field !== null && field === lastField && last;
    const step = goesOn ? { before: last.before, after } : { before, after };
    past.value = [...past.value.slice(goesOn ? 0 : -MOST_STEPS_BACK, goesOn ? -1 : undefined), step];
    future.value = [];
    lastField = field;
  }

  /** The next change is a step of its own. */
  function pause(): void {
    lastField = null;
  }

  function walk(from: typeof past, to: typeof past, content: T, back: boolean): T {
    pause();
    for (;;) {
      const step = from.value.at(-1);
      if (!step) return content;
      from.value = from.value.slice(0, -1);
      to.value = [...to.value, step];
      const [start, end] = back ? [step.after, step.before] : [step.before, step.after];
      const { state } = merge(start, end, content, shape, () => 'theirs');
      // A step of which nothing is left to take back is no step.
      if (state !== content) return state;
    }
  }

  return {
    remember,
    pause,
    /** The content with the last step taken back, or taken again. */
    undone: (content: T) => walk(past, future, content, true),
    redone: (content: T) => walk(future, past, content, false),
    canUndo: computed(() => past.value.length > 0),
    canRedo: computed(() => future.value.length > 0),
  };
}
