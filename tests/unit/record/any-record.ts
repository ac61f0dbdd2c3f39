import type { Field, Fields, Shape } from '@core/record/field';
import { FIGURE_NAMES } from '@core/materials/figure';
import { PROVENANCES } from '@core/materials/vocabulary';
import fc from 'fast-check';

/* Records as odd as a library may hold them, made from the description of their fields. */

const nullable = (shape: Shape): boolean => 'nullable' in shape && shape.nullable;

/** Signs of every sort: quotes, per cent, marks that combine, signs beyond the first plane, several that make one. */
const sign = fc.oneof(
  fc.constantFrom('a', 'Z', '’', '"', "'", '%', '_', '\\', 'é', 'e\u0301', 'ß', '三', '😀', '👩🏽‍🔬', ' '),
  fc.string({ unit: 'grapheme', minLength: 1, maxLength: 1 }),
);
const written = (max: number): fc.Arbitrary<string> =>
  fc.oneof(
    { weight: 3, arbitrary: fc.string({ unit: sign, maxLength: Math.min(max, 12) }) },
    fc.constant('x'.repeat(max)),
    fc.constant(''),
  );

function numbers(shape: Extract<Shape, { min: number }>): fc.Arbitrary<number | null> {
  const { min, max, kind } = shape;
  if (kind === 'share') return fc.option(fc.integer({ min: 0, max: 1_000_000 }));
  const top = Math.min(max, Number.MAX_SAFE_INTEGER);
  if (kind === 'whole') return fc.option(fc.oneof(fc.integer({ min, max: top }), fc.constantFrom(min, top)));
  return fc.option(fc.double({ min, max, noNaN: true }));
}

const spread = fc.array(fc.double({ min: 0, max: 100, noNaN: true }), { minLength: 3, maxLength: 3 });
const figure = fc.record({
  ends: spread.map((all) => all.sort((a, b) => a - b)),
  known: fc.subarray(['low', 'value', 'high'], { minLength: 1 }),
  provenance: fc.constantFrom(...PROVENANCES),
  source: written(40),
});
const figures = fc.dictionary(
  fc.constantFrom(...FIGURE_NAMES),
  figure.map(({ ends, known, ...facts }) => {
    const [low, value, high] = ['low', 'value', 'high'].map((end, at) =>
      known.includes(end) ? ends[at] : null,
    );
    return { low, value, high, ...facts };
  }),
  { maxKeys: 3 },
);

const day = fc.constantFrom('', '2026-02-28', '2024-02-29', '1999-12-31');
/** What a list must hold at least. */
const LEAST: Readonly<Record<string, unknown>> = {
  composition: [{ inci: 'Aqua', lowPpm: 1_000_000, highPpm: 1_000_000 }],
};
/** What is of a form of its own. */
const OF_FORM: Readonly<Record<string, fc.Arbitrary<unknown>>> = {
  sha256: fc.constantFrom('a'.repeat(64), '0'.repeat(64)),
  mediaType: fc.constantFrom('application/pdf', 'image/png'),
  currency: fc.constantFrom('EUR', 'CHF', 'USD'),
  ...{ date: day, dated: day, validUntil: day },
};

function anything(field: Field): fc.Arbitrary<unknown> {
  const { shape } = field;
  switch (shape.kind) {
    case 'line':
      return written(shape.max);
    case 'text':
      return written(40);
    case 'attachment':
      return fc.option(fc.constantFrom('a'.repeat(64), '0'.repeat(64)));
    case 'word':
      return shape.empty === null
        ? fc.constantFrom(...shape.words)
        : fc.option(fc.constantFrom(...shape.words));
    case 'words':
      return shape.words.length === 0
        ? fc.array(fc.uuid(), { maxLength: 3 })
        : fc.shuffledSubarray([...shape.words]);
    case 'flag':
      return fc.boolean();
    case 'known':
      return fc.option(fc.boolean());
    case 'number':
    case 'whole':
    case 'share':
      return numbers(shape);
    case 'figures':
      return figures;
    case 'group':
      return nullable(shape) ? fc.option(anyContent(shape.fields)) : anyContent(shape.fields);
    case 'rows':
      return fc
        .array(anyContent(shape.row), { maxLength: 5 })
        .map((rows) => rows.filter((row) => field.stored.safeParse([row]).success));
  }
}

/** What a field may hold, read as the library reads it; what it is when blank among it. */
function anyValue(key: string, field: Field): fc.Arbitrary<unknown> {
  // What must be given is never empty in a table.
  const isName = field.shape.kind === 'line' && !field.entered.safeParse('').success && !OF_FORM[key];
  const named = (value: unknown): unknown => (isName ? `n${String(value)}`.slice(0, 100) : value);
  const held = (OF_FORM[key] ?? anything(field)).map((value) => field.stored.safeParse(named(value)));
  const blank = isName ? 'n' : (LEAST[key] ?? field.blank);
  return fc.oneof(
    { weight: 5, arbitrary: held.map(({ success, data }) => (success ? data : blank)) },
    fc.constant(blank),
  );
}

/** Any content of a noun with these fields. */
export function anyContent(fields: Fields): fc.Arbitrary<Record<string, unknown>> {
  return fc.record(
    Object.fromEntries(Object.entries(fields).map(([key, field]) => [key, anyValue(key, field)])),
  );
}
