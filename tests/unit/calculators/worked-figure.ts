import type { FormKey } from '@core/calculators/all-forms';
import type { FormRow } from '@core/calculators/form';
import { calculateForm } from '@core/calculators/form-calculation';
import { expect, it } from 'vitest';

/** A figure that was worked out apart from our code, by hand or from the text named. */
export interface Figure {
  form: FormKey;
  values?: FormRow;
  rows?: FormRow[];
  key: string;
  is: number;
  /** By how much it may differ, relative to it. */
  to?: number;
  source: string;
}

export const calculated = ({ form, values = {}, rows = [] }: Pick<Figure, 'form' | 'values' | 'rows'>) =>
  calculateForm({ of: 'form', form, values, rows });

/** A test for each: the form gives it. */
export function expectFigures(figures: readonly Figure[]): void {
  it.each(figures.map((one) => [one.form, one.source, one] as const))('%s: %s', (_form, _source, one) => {
    const found = calculated(one).results.find(({ key }) => key === one.key)?.worked.value ?? NaN;
    expect(Math.abs(found - one.is)).toBeLessThanOrEqual((one.to ?? 2e-5) * Math.max(1, Math.abs(one.is)));
  });
}
