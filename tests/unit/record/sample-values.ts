import type { Field, Fields } from '@core/record/field';
import { figure } from '@core/materials/figure';

/** A value of a field that is not blank, and that can be found again where it is shown. */
export function sampleValue(key: string, field: Field): unknown {
  const { shape } = field;
  switch (shape.kind) {
    case 'line':
      // A day says by its example that it is one.
      if (field.entered.safeParse('2026-07-31').success && !field.entered.safeParse('no day').success)
        return '2026-07-31';
      return `${key} says this`.slice(0, shape.max);
    case 'text':
      return `${key} says this`;
    case 'attachment':
      return 'a'.repeat(64);
    case 'word':
      return shape.words.at(-1);
    case 'words':
      return [shape.words[0], shape.words.at(-1)];
    case 'flag':
    case 'known':
      return true;
    case 'share':
      return 123_400;
    case 'whole':
      return Math.max(7, shape.min);
    case 'number':
      return 7.5;
    case 'figures':
      return {
        hlb: figure.parse({ low: null, value: 11.3, high: null, provenance: 'measured', source: 'own' }),
      };
    case 'group':
      return sampleContent(shape.fields);
    case 'rows':
      return [sampleContent(shape.row)];
  }
}

/** A record of which every field is filled. */
export function sampleContent(fields: Fields): Record<string, unknown> {
  return Object.fromEntries(Object.entries(fields).map(([key, field]) => [key, sampleValue(key, field)]));
}
