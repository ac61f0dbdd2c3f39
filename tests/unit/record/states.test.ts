import fc from 'fast-check';
import { FORMULA } from '@core/formulas/noun';
import { LIMIT } from '@core/limits/noun';
import { MATERIAL } from '@core/materials/noun';
import { Problem } from '@core/problems/problem';
import { canonicalText } from '@core/record/canonical';
import { fieldDifferences } from '@core/record/differences';
import { blankContent, flag, line, number, rows, text, words, type Fields } from '@core/record/field';
import { formatOf, keptText, liftState, type Noun } from '@core/record/noun';
import { weave } from '@core/record/order';
import { RECORD, placeKey, placeOfPath, valueAt, widened } from '@core/record/place';
import { same } from '@core/record/same';
import { fieldWords } from '@core/record/words';
import { SAVED_SEARCH } from '@core/searches/search';
import { SETTINGS } from '@core/settings/noun';
import { SUBSTANCE } from '@core/substances/noun';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { sampleValue } from './sample-values';

/** A value with the keys of its objects in another order. */
function turned(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(turned);
  if (value === null || typeof value !== 'object') return value;
  return Object.fromEntries(
    Object.entries(value)
      .reverse()
      .map(([key, held]) => [key, turned(held)]),
  );
}

describe('the one text of a value', () => {
  it('is the same in whatever order its keys were written, and says all of it', () => {
    fc.assert(
      fc.property(fc.jsonValue(), (value) => {
        const told = canonicalText(value);
        expect(canonicalText(turned(value))).toBe(told);
        expect(same(JSON.parse(told), value)).toBe(true);
        expect(canonicalText(JSON.parse(told))).toBe(told);
      }),
    );
  });

  it('is what JSON writes of it with its keys in order, whatever letters it holds: every state kept so far is named so', () => {
    const sorted = (value: unknown): unknown => {
      if (Array.isArray(value)) return value.map(sorted);
      if (value === null || typeof value !== 'object') return value;
      const entries = Object.entries(value).sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0));
      return Object.fromEntries(entries.map(([key, held]) => [key, sorted(held)]));
    };
    const letters = fc.string({ unit: 'binary' });
    const whole = fc.oneof(fc.nat(), fc.constantFrom(4_294_967_294, 4_294_967_295)).map(String);
    const key = fc.oneof(letters, fc.string(), whole, fc.constantFrom('-1', '01', '1.5', 'a9', '', ' 2'));
    const { held } = fc.letrec<{ held: unknown }>((tie) => ({
      held: fc.oneof(
        { maxDepth: 4 },
        ...[letters, fc.string(), fc.double(), fc.boolean(), fc.constant(null)],
        ...[fc.array(tie('held'), { maxLength: 4 }), fc.dictionary(key, tie('held'), { maxKeys: 6 })],
      ),
    }));
    fc.assert(
      fc.property(held, (value) => {
        expect(canonicalText(value)).toBe(JSON.stringify(sorted(value)));
      }),
      { numRuns: 500 },
    );
    expect(canonicalText(['\ud800', '\u2028', '\u007f', '"\\\n'])).toBe(
      '["\\ud800","\u2028","\u007f","\\"\\\\\\n"]',
    );
  });

  it('tells lists in another order apart, and a key that is left out from one that is null', () => {
    expect(same([1, 2], [2, 1])).toBe(false);
    expect(same({ a: undefined }, {})).toBe(true);
    expect(same({ a: null }, {})).toBe(false);
    expect(same({}, [])).toBe(false);
    expect(same('1', 1)).toBe(false);
  });

  it('orders keys and writes figures as RFC 8785 has them in its example of 3.2.2 and 3.2.3', () => {
    const value: unknown = JSON.parse(
      '{"numbers":[333333333.33333329,1E30,4.50,2e-3,0.000000000000000000000000001],"literals":[null,true,false]}',
    );
    expect(canonicalText(value)).toBe(
      '{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27]}',
    );
  });
});

const NOUNS: readonly (Noun<never> & { fields: Fields })[] = [
  ...[MATERIAL, SUBSTANCE, LIMIT, SAVED_SEARCH, SETTINGS, FORMULA],
] as unknown as (Noun<never> & { fields: Fields })[];

/** What a sample cannot make up: figures that hang together, and what only the noun itself knows. */
const BY_HAND = new Set([
  'phases',
  'steps',
  'accepted',
  'claims',
  'reports',
  'statements',
  'storage',
  'usage',
]);

describe.each(NOUNS.map((noun) => [noun.name, noun] as const))('a kept state of a %s', (_, noun) => {
  const fields = Object.entries(noun.fields).filter(([key]) => !BY_HAND.has(key));
  const filled = fc.subarray(fields).map((some): Record<string, unknown> => ({
    ...blankContent(noun.fields),
    ...Object.fromEntries(
      some.flatMap(([key, field]) => {
        // As a library takes it in: texts without the spaces around them.
        const taken = field.stored.safeParse(sampleValue(key, field));
        return taken.success ? [[key, taken.data]] : [];
      }),
    ),
  }));
  // What must be given has no blank that reads.
  const readable = (content: Record<string, unknown>): boolean => {
    try {
      noun.read(content);
      return true;
    } catch {
      return false;
    }
  };

  it('is read as it was written, whichever fields were filled', () => {
    let read = 0;
    fc.assert(
      fc.property(filled, (content) => {
        if (!readable(content)) return;
        read += 1;
        const told = keptText(noun.fields, content);
        expect(liftState(noun, formatOf(noun), told)).toEqual(content);
        expect(keptText(noun.fields, liftState(noun, formatOf(noun), told))).toBe(told);
      }),
      { numRuns: 40 },
    );
    expect(read).toBeGreaterThan(0);
  });

  it('of a format to come, or cut off, is refused in words, with the facts', () => {
    const refused = (format: number, told: string): Problem => {
      try {
        liftState(noun, format, told);
      } catch (problem) {
        if (problem instanceof Problem) return problem;
      }
      throw new Error('It was read.');
    };
    const later = refused(formatOf(noun) + 1, '{}');
    expect([later.code, later.message]).toEqual([
      'library-newer',
      `This ${noun.name} was kept by a newer version of Stillroom.`,
    ]);
    const cut = refused(formatOf(noun), '{"name":');
    expect([cut.code, cut.message]).toEqual([
      'library-damaged',
      `An earlier state of this ${noun.name} cannot be read.`,
    ]);
    expect(cut.facts).toMatchObject({ kind: noun.kind });
  });
});

const PLAIN: Fields = {
  title: line({ label: 'Title', section: 's' }),
  grams: number(z.number().nullable(), {
    label: 'Weight',
    section: 's',
    unit: 'g',
    digits: 2,
    min: 0,
    max: 1e6,
  }),
  notes: text({ label: 'Notes', section: 's' }),
  closed: flag({ label: 'Closed', section: 's' }),
  tags: words(['red', 'green', 'blue'], { label: 'Tags', section: 's' }),
  parts: rows({ name: line({ label: 'Name', section: '' }) }, z.array(z.object({ name: z.string() })), {
    label: 'Parts',
    section: 's',
  }),
};
type Plain = Record<keyof typeof PLAIN, unknown>;
const PLAIN_NOUN: Noun<Plain> = {
  ...{ kind: 'jar', name: 'jar', fields: PLAIN, titleOf: ({ title }) => String(title) },
  read: (content) =>
    z
      .object(Object.fromEntries(Object.entries(PLAIN).map(([key, { stored }]) => [key, stored])))
      .parse(content),
  // Format 1 had a weight in kilograms, format 2 a single tag.
  upgraders: [
    ({ kilograms, ...rest }) => ({ ...rest, grams: typeof kilograms === 'number' ? 1000 * kilograms : null }),
    ({ tag, ...rest }) => ({ ...rest, tags: typeof tag === 'string' ? [tag] : [] }),
  ],
};

describe('a state of an earlier format', () => {
  it('is lifted step by step, and a field that came later stands as blank', () => {
    expect(liftState(PLAIN_NOUN, 1, '{"kilograms":1.5,"tag":"red","title":"A"}')).toEqual({
      ...{ title: 'A', grams: 1500, notes: '', closed: false, tags: ['red'], parts: [] },
    });
    expect(liftState(PLAIN_NOUN, 2, '{"grams":3,"tag":"blue"}')).toMatchObject({ grams: 3, tags: ['blue'] });
    expect(liftState(PLAIN_NOUN, 3, '{"grams":3,"tags":["green"]}')).toMatchObject({ tags: ['green'] });
  });

  it('that no upgrader can read is refused as damaged, not as a bug', () => {
    const broken = { ...PLAIN_NOUN, upgraders: [() => null as never as Record<string, unknown>] };
    expect(() => liftState(broken, 1, '{}')).toThrow('An earlier state of this jar cannot be read.');
    expect(() => liftState(PLAIN_NOUN, 3, '{"grams":"heavy"}')).toThrow(Problem);
    expect(() => liftState(PLAIN_NOUN, 3, 'null')).toThrow(Problem);
  });
});

describe('what a field holds, in words', () => {
  const told = (key: keyof typeof PLAIN, value: unknown, region: 'en-GB' | 'de-DE' = 'en-GB'): string =>
    fieldWords(PLAIN[key]!, value, region);

  it('as the region writes it, and nothing where there is nothing to tell', () => {
    expect(told('grams', 1234.5)).toBe('1,234.5\u00a0g');
    expect(told('grams', 1234.5, 'de-DE')).toBe('1.234,5\u00a0g');
    expect(told('grams', 0)).toBe('0\u00a0g');
    expect(told('tags', ['red', 'blue'])).toMatch(/^Red(,| and) blue$/);
    expect(told('closed', true)).toBe('Yes');
    expect(told('parts', [{ name: 'Lid' }, { name: 'Jar' }])).toBe('Lid; Jar');
    for (const [key, field] of Object.entries(PLAIN)) expect(told(key, field.blank)).toBe('');
  });

  it('are told of each field in which two states differ, in the order of the form', () => {
    const before = { ...blankContent(PLAIN), title: 'A', grams: 1 };
    const after = { ...before, grams: 2.5, notes: 'Shaken.', tags: ['red'] };
    expect(fieldDifferences(PLAIN, before, after, 'en-GB')).toEqual([
      { key: 'grams', label: 'Weight', before: '1\u00a0g', after: '2.5\u00a0g' },
      { key: 'notes', label: 'Notes', before: '', after: 'Shaken.' },
      { key: 'tags', label: 'Tags', before: '', after: 'Red' },
    ]);
    expect(fieldDifferences(PLAIN, before, structuredClone(before), 'en-GB')).toEqual([]);
  });
});

describe('two orders woven into one', () => {
  const orders = fc
    .tuple(
      fc.uniqueArray(fc.constantFrom(...'abcdefgh'), { maxLength: 6 }),
      fc.uniqueArray(fc.constantFrom(...'abcdefgh'), { maxLength: 6 }),
    )
    .map(([mine, theirs]) => {
      const shared = mine.filter((one) => theirs.includes(one));
      // Both have the shared ones in one order, as merging sees to.
      let at = 0;
      return { shared, mine, theirs: theirs.map((one) => (shared.includes(one) ? shared[at++]! : one)) };
    });

  it('hold each item once, each side in its order, and do not hang on whose side is whose', () => {
    fc.assert(
      fc.property(orders, ({ shared, mine, theirs }) => {
        const woven = weave(shared, mine, theirs);
        expect([...woven].sort()).toEqual([...new Set([...mine, ...theirs])].sort());
        expect(woven.filter((one) => mine.includes(one))).toEqual(mine);
        expect(woven.filter((one) => theirs.includes(one))).toEqual(theirs);
        expect(weave(shared, theirs, mine)).toEqual(woven);
      }),
    );
  });
});

describe('a place in a record', () => {
  const state = {
    name: 'Cream',
    tags: ['a', 'b'],
    usage: { min: 1, max: 2 },
    phases: [
      { id: 'A', title: 'Water', lines: [{ id: '1', ppm: 10 }] },
      {
        id: 'B',
        title: 'Oil',
        lines: [
          { id: '2', ppm: 20 },
          { id: '3', ppm: 30 },
        ],
      },
    ],
  };

  it.each([
    [['name'], { thing: '', field: ['name'] }, 'Cream'],
    [['usage', 'max'], { thing: '', field: ['usage', 'max'] }, 2],
    [['phases', '1', 'title'], { thing: 'phases#B', field: ['title'] }, 'Oil'],
    [['phases', '1', 'lines', '1', 'ppm'], { thing: 'phases/lines#3', field: ['ppm'] }, 30],
    // Of a list of values an index says nothing that lasts.
    [['tags', '1'], { thing: '', field: ['tags'] }, ['a', 'b']],
    [[], RECORD, state],
  ])('%j is found by what it is, and its value with it', (path, place, value) => {
    expect(placeOfPath(state, path)).toEqual(place);
    expect(valueAt(state, place)).toEqual(value);
  });

  it('is the same after its line was moved to another phase', () => {
    const place = placeOfPath(state, ['phases', '1', 'lines', '0', 'ppm']);
    const moved = structuredClone(state);
    moved.phases[0]!.lines.push(moved.phases[1]!.lines.shift()!);
    expect(valueAt(moved, place)).toBe(20);
    expect(valueAt({ ...state, phases: [] }, place)).toBeUndefined();
  });

  it('widens step by step to the part of the record that it stands in, and then to nothing', () => {
    const keys: string[] = [];
    for (
      let place = widened(placeOfPath(state, ['phases', '1', 'lines', '1', 'ppm']));
      place;
      place = widened(place)
    )
      keys.push(placeKey(place));
    expect(keys).toEqual(['["phases/lines#3"]', '["","phases"]']);
  });
});
