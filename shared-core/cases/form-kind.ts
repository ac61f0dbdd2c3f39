import type { FormKey } from '../calculators/all-forms';
import type { FormRow } from '../calculators/form';
import { calculateForm } from '../calculators/form-calculation';
import type { Value } from './kind';

/** A form of the screens, filled in as a user would. */
export interface Filled {
  form: FormKey;
  values?: FormRow;
  rows?: FormRow[];
}

/** A figure that a form of the screens gives, by its key. */
export function figureOf(filled: Filled, key: string): number {
  const { form, values = {}, rows = [] } = filled;
  const found = calculateForm({ of: 'form', form, values, rows }).results.find((one) => one.key === key);
  return found?.worked.value ?? Number.NaN;
}

/** Several figures of a form, each under the case's own name. */
export function figuresOf(filled: Filled, keys: Readonly<Record<string, string>>): Record<string, Value> {
  const { form, values = {}, rows = [] } = filled;
  const { results } = calculateForm({ of: 'form', form, values, rows });
  const found = Object.entries(keys).flatMap(([name, key]) => {
    const one = results.find((result) => result.key === key);
    return one ? [[name, one.worked.value] as const] : [];
  });
  return Object.fromEntries(found);
}

/** What a form says in words. */
export function verdictOf(filled: Filled): string {
  const { form, values = {}, rows = [] } = filled;
  return calculateForm({ of: 'form', form, values, rows }).verdicts?.[0]?.verdict ?? '';
}
