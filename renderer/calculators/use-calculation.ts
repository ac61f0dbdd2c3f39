import type { Calculated } from '@core/calculators/calculated';
import { Problem } from '@core/problems/problem';
import { computed, type ComputedRef } from 'vue';

interface Refused {
  title: string;
  advice: string;
  /** The fields at fault. */
  paths: string[];
  /** True while a figure is only not entered yet: nothing is wrong. */
  missing: boolean;
}

const AT_A_FIELD = { title: 'No result yet.', advice: 'Correct the marked field first.' };

/**
 * A calculation that follows its inputs: its answer, or what is in the way and at which field.
 *
 * @param atFields names of what the screen marks at its field by `faultAt`, so that it is told once
 */
export function useCalculation<T extends Calculated>(
  compute: () => T | null,
  atFields: readonly string[] = [],
) {
  const outcome: ComputedRef<{ answer: T | null; refused: Refused | null }> = computed(() => {
    try {
      return { answer: compute(), refused: null };
    } catch (error) {
      if (!(error instanceof Problem)) throw error;
      const { message: title, advice } = error;
      const paths = error.fields.map((field) => field.path);
      return { answer: null, refused: { title, advice, paths, missing: error.facts.missing === true } };
    }
  });

  return {
    answer: computed(() => outcome.value.answer),
    /** What to say where the answer would stand. */
    refused: computed(() => {
      const { refused } = outcome.value;
      const marked = refused && !refused.missing && refused.paths.some((path) => atFields.includes(path));
      return marked ? AT_A_FIELD : refused;
    }),
    /** What is wrong with a field, by any of the names it goes by in the computing; null for nothing. */
    faultAt(...names: string[]): string | null {
      const { refused } = outcome.value;
      if (!refused || refused.missing || !refused.paths.some((path) => names.includes(path))) return null;
      return `${refused.title} ${refused.advice}`;
    },
  };
}
