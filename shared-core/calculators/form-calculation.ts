import { z } from 'zod';
import { FORM_KEYS, FORMS, type FormKey } from './all-forms';
import type { Calculated, Given } from './calculated';
import { unitWords } from '../locale/words';
import { entry, Entries, entryOf, formRow, withUnit, type Form, type FormField, type FormRow } from './form';

/** What a form was given; whoever shows or prints its answer computes it anew from this. */
export const formRequest = z.object({
  of: z.literal('form'),
  form: z.enum(FORM_KEYS),
  values: z.record(z.string().max(40), entry),
  rows: z.array(formRow).max(200, 'Two hundred lines at most.').default([]),
});
export type FormRequest = z.infer<typeof formRequest>;

/** The definition of a form, whichever it is. */
export function formOf(key: FormKey): Form {
  return FORMS[key];
}

/** One of the small calculations. @throws Problem `invalid-input` */
export function calculateForm({ form, values, rows }: FormRequest): Calculated {
  const { name, fields, lines, compute } = formOf(form);
  const answer = compute(new Entries(fields, values, lines, rows));
  const columns = lines?.columns ?? [];
  const united = (field: FormField): FormField => withUnit(field, fields, values);
  // A unit that was chosen stands beside the figures that it is of, not by itself.
  const shown = fields.filter(({ key }) => ![...fields, ...columns].some(({ unitFrom }) => unitFrom === key));
  return {
    title: name,
    given: [
      ...shown.flatMap((field) => givenOf(united(field), values)),
      ...(lines ? rows.map((row, index) => lineOf(lines.one, columns.map(united), row, index)) : []),
    ],
    withheld: [],
    notes: [],
    ...answer,
  };
}

function wordsOf(field: FormField, values: FormRow): string | number | null {
  const held = entryOf(field, values);
  return field.choices && typeof held === 'string' ? (field.choices[held] ?? held) : held;
}

function givenOf(field: FormField, values: FormRow): Given[] {
  const value = wordsOf(field, values);
  return value === null || value === ''
    ? []
    : [{ label: field.label, value, unit: unitWords(value, field.unit) }];
}

/** One line of what goes in: "oil 2: Squalane, 40 parts, 35 mPa·s". */
function lineOf(one: string, columns: readonly FormField[], row: FormRow, index: number): Given {
  const parts = columns.flatMap((column) => {
    const value = wordsOf(column, row);
    if (value === null || value === '') return [];
    const named = column.words || column.choices ? '' : `${column.label.toLowerCase()} `;
    return [`${named}${String(value)} ${unitWords(value, column.unit)}`.trim()];
  });
  return { label: `${one} ${index + 1}`, value: parts.join(', '), unit: '' };
}
