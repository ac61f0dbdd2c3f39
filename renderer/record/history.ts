import type { InferResponseType } from 'hono/client';
import { shallowReactive, shallowRef, ref } from 'vue';
import { answer, problemOf, service, type ProblemDetails } from '../service/client';

export type HistoryStep = InferResponseType<
  (typeof service.records)[':kind'][':id']['history']['$get'],
  200
>[number];

/** What changed in a part of a record that can be restored by itself. */
export interface PartDifference {
  /** The parts of the record's content that are restored together. */
  keys: string[];
  label: string;
  rows: { what: string; before: string; after: string }[];
}

/**
 * The states of a record: their list, and each as it is asked for.
 * @param prepare is waited for before a state is shown
 */
export function useHistory(kind: string, id: string, prepare: (state: object) => Promise<void> | undefined) {
  const steps = shallowRef<HistoryStep[] | null>(null);
  const states = shallowReactive(new Map<number, object>());
  const problem = ref<ProblemDetails | null>(null);

  async function load(): Promise<void> {
    problem.value = null;
    try {
      steps.value = await answer(service.records[':kind'][':id'].history.$get({ param: { kind, id } }));
    } catch (error) {
      problem.value = problemOf(error);
    }
  }

  /** Sees that a state is there. Null stands for what the record is now, which the screen holds. */
  async function need(n: number | null): Promise<void> {
    if (n === null || states.has(n)) return;
    try {
      const param = { kind, id, n: String(n) };
      const state = await answer(service.records[':kind'][':id'].history[':n'].$get({ param }));
      await prepare(state);
      states.set(n, state);
    } catch (error) {
      problem.value = problemOf(error);
    }
  }

  return { steps, states, problem, load, need };
}

/** The step at whose end a record stood as it was on a day (its end, local time): the newest not younger than that. */
export function stepOn(steps: readonly HistoryStep[], day: string): HistoryStep | null {
  const end = new Date(`${day}T23:59:59.999`).getTime();
  // Steps stand newest first; their order counts, not their clocks, where one was set back between two.
  return steps.find(({ at }) => Date.parse(at) <= end) ?? null;
}
