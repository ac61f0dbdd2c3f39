import { canonicalList, canonicalObject, canonicalText } from './canonical';
import type { Field, Fields } from './field';
import { same } from './same';

type Content = Record<string, unknown>;

function isObject(value: unknown): value is Content {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** A value of a state as its text; undefined for one that is left out. */
function valueText(field: Field | undefined, value: unknown): string | undefined {
  const shape = field?.shape;
  if (shape?.kind === 'group' && isObject(value)) return textWithoutBlanks(shape.fields, value);
  if (shape?.kind === 'rows' && Array.isArray(value))
    return canonicalList(value, (row) =>
      isObject(row) ? textWithoutBlanks(shape.row, row) : canonicalText(row),
    );
  return canonicalText(value);
}

/**
 * The one text of what a noun holds, without what is blank, in groups and in the rows of lists too. Written in one pass:
 * a library of thousands is named so, record by record.
 */
export function textWithoutBlanks(fields: Fields, content: Content): string {
  return canonicalObject(content, (key) => {
    const [value, field] = [content[key], fields[key]];
    return field && same(value, field.blank) ? undefined : valueText(field, value);
  });
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
