import { describe, expect, it } from 'vitest';
import { FORM_KEYS, FORMS, TOPICS, type FormKey } from '@core/calculators/all-forms';
import { calculate } from '@core/calculators/calculation';
import { calculationRequest } from '@core/calculators/calculation-request';
import { entryOf, type FormField, type FormRow } from '@core/calculators/form';
import { calculateForm, formOf, type FormRequest } from '@core/calculators/form-calculation';
import { Problem } from '@core/problems/problem';
import { settings } from '@core/settings/settings';
import { calculationSheet } from '@core/sheets/calculation-sheet';
import { FORM_EXAMPLES } from './form-examples';

function requestOf(form: FormKey, part: Partial<FormRequest> = {}): FormRequest {
  const { values = {}, rows = [] } = FORM_EXAMPLES[form];
  return { of: 'form', form, values, rows, ...part };
}

describe.each(FORM_KEYS)('the calculation “%s”', (form) => {
  const { fields, lines } = formOf(form);
  const { gives, source, values = {}, rows = [] } = FORM_EXAMPLES[form];

  it(`gives what ${source} gives`, () => {
    const { results, verdicts = [] } = calculateForm(requestOf(form));
    for (const [key, value] of Object.entries(gives)) {
      const got =
        typeof value === 'string'
          ? verdicts.find((one) => one.key === key)?.verdict
          : results.find((one) => one.key === key)?.worked.value;
      if (typeof value === 'string') expect(got).toBe(value);
      else expect(Math.abs((got as number) / value - 1), `${key} ${got}`).toBeLessThan(2e-4);
    }
  });

  const asked = (field: FormField, row: FormRow): boolean =>
    !field.optional && !field.words && entryOf(field, row) !== null;

  it.each(fields.filter((field) => asked(field, values)).map((field) => [field.key, field.label]))(
    'asks for %s when it is emptied, and never takes another in silence',
    (key, label) => {
      const attempt = () => calculateForm(requestOf(form, { values: { ...values, [key]: null } }));
      expect(attempt).toThrow(Problem);
      expect(attempt).toThrow(label);
    },
  );

  it.each((lines?.columns ?? []).filter((column) => asked(column, rows[0] ?? {})).map((one) => [one.key]))(
    'asks for %s of a line',
    (key) => {
      const without = rows.map((row, index) => (index === 0 ? { ...row, [key]: null } : row));
      expect(() => calculateForm(requestOf(form, { rows: without }))).toThrow(Problem);
      expect(() => calculateForm(requestOf(form, { rows: [] }))).toThrow(Problem);
    },
  );

  it('names all that went in, what stands in a field at first included', () => {
    const { given } = calculateForm(requestOf(form));
    // A unit that is chosen stands beside the figures that it is of.
    const units = new Set([...fields, ...(lines?.columns ?? [])].map(({ unitFrom }) => unitFrom));
    for (const field of fields.filter((one) => entryOf(one, values) !== null && !units.has(one.key)))
      expect(given.map((one) => one.label)).toContain(field.label);
    for (const field of fields.filter(({ unitFrom }) => unitFrom !== undefined))
      expect(given.find((one) => one.label === field.label)?.unit).toMatch(/^(g|mL)$/);
    expect(given.filter((one) => lines && one.label.startsWith(`${lines.one} `))).toHaveLength(rows.length);
  });

  it('refuses infinity, and comes through the edge of the service onto a sheet', () => {
    const [key] = Object.entries(values).find(([, value]) => typeof value === 'number') ?? [];
    if (key)
      expect(() => calculateForm(requestOf(form, { values: { ...values, [key]: Infinity } }))).toThrow(
        Problem,
      );
    const request = calculationRequest.parse(JSON.parse(JSON.stringify(requestOf(form))));
    const sheet = calculationSheet(calculate(request, new Map()), settings.parse({}), '2026-03-01T10:00:00Z');
    expect(JSON.stringify(sheet.content)).not.toMatch(/NaN|undefined|Infinity|null/);
  });
});

it('every form stands in one topic', () => {
  expect(TOPICS.flatMap((topic) => Object.keys(topic.forms)).sort()).toEqual(Object.keys(FORMS).sort());
});
