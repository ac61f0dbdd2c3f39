import { finiteResult } from './inputs';
import type { Source, Worked, WorkingStep } from './working';

/** A quantity reached in one step: the step's result is the value. */
export function oneStep(
  step: WorkingStep,
  sources: readonly Source[],
  cautions: readonly string[] = [],
): Worked {
  return worked([step], sources, cautions);
}

/** A quantity reached in several steps; the last step's result is the value. */
export function worked(
  steps: readonly WorkingStep[],
  sources: readonly Source[],
  cautions: readonly string[] = [],
): Worked {
  const last = steps.at(-1);
  if (!last) throw new Error('A working needs a step.');
  finiteResult(last.result, 'The result');
  return {
    value: last.result,
    unit: last.unit,
    steps: [...steps],
    sources: [...sources],
    cautions: [...cautions],
  };
}
