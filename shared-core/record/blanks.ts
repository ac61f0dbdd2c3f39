import type { Field, Fields } from './field';
import { same } from './same';

type Content = Record<string, unknown>;

function isObject(value: unknown): value is Content {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function keptValue(field: Field | undefined, value: unknown): unknown {
  const shape = field?.shape;
  if (shape?.kind === 'group' && isObject(value)) return withoutBlanks(shape.fields, value);
  if (shape?.kind === 'rows' && Array.isArray(value))
    return value.map((row: unknown) => (isObject(row) ? withoutBlanks(shape.row, row) : row));
  return value;
}

/** Leaves out what is blank, in groups and in the rows of lists too. */
export function withoutBlanks(fields: Fields, content: Content): Content {
  const kept: [string, unknown][] = [];
  for (const key of Object.keys(content)) {
    const value = content[key];
    const field = fields[key];
    if (value === undefined || (field && same(value, field.blank))) continue;
    kept.push([key, keptValue(field, value)]);
  }
  return Object.fromEntries(kept);
}

function filled(field: Field, value: unknown): unknown {
  if (value === undefined) return field.blank;
  const { shape } = field;
  if (shape.kind === 'group' && isObject(value)) return fillBlanks(shape.fields, value);
  if (shape.kind === 'rows' && Array.isArray(value))
    return value.map((row: unknown) => (isObject(row) ? fillBlanks(shape.row, row) : row));
  return value;
}

/** Puts in what was left out as blank, and what a field that was added later is blank as. */
export function fillBlanks(fields: Fields, content: Content): Content {
  const known = Object.entries(fields).map(([key, field]) => [key, filled(field, content[key])]);
  return { ...content, ...Object.fromEntries(known) };
}
