import type { FormulaRow, FormulaStatus } from '@core/formulas/list';
import { ref, watch, type Ref } from 'vue';
import { findFormulas } from './find-formulas';

/** Formulas that are worked on, and those of them that a batch can be made of. */
export const CURRENT_FORMULAS: readonly FormulaStatus[] = ['draft', 'recorded'];
export const RECORDED_FORMULAS: readonly FormulaStatus[] = ['recorded'];

/** A formula as it is named where one is chosen. */
export type ChosenFormula = Pick<FormulaRow, 'id' | 'code' | 'name'>;

/**
 * The formula worked on last, looked for whenever what needs it opens.
 * @param found told each time; null where there is none
 * @returns `first`: undefined until it is known, null where there is none
 */
export function useLatestFormula(
  open: Ref<boolean>,
  status: readonly FormulaStatus[],
  found: (latest: FormulaRow | null) => void = () => undefined,
) {
  const first = ref<FormulaRow | null | undefined>(undefined);
  const error = ref<unknown>(null);
  watch(
    open,
    async (now) => {
      if (!now) return;
      try {
        const { rows } = await findFormulas('', status);
        first.value = rows[0] ?? null;
        error.value = null;
        found(first.value);
      } catch (failure) {
        error.value = failure;
      }
    },
    { immediate: true },
  );
  return { first, error };
}
