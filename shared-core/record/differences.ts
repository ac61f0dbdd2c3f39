import type { Region } from '../locale/numbers';
import type { Fields } from './field';
import { same } from './same';
import { fieldWords } from './words';

/** A field in which two states differ, in words; `before` or `after` is empty where there was or is nothing to tell. */
export interface FieldDifference {
  key: string;
  label: string;
  before: string;
  after: string;
}

/** What differs between two states of a noun, in the order of its fields. */
export function fieldDifferences(
  fields: Fields,
  before: object,
  after: object,
  region: Region,
): FieldDifference[] {
  const [was, is] = [before as Record<string, unknown>, after as Record<string, unknown>];
  return Object.entries(fields).flatMap(([key, field]) => {
    if (same(was[key], is[key])) return [];
    return [
      {
        key,
        label: field.label,
        before: fieldWords(field, was[key], region),
        after: fieldWords(field, is[key], region),
      },
    ];
  });
}
