import { DOCUMENT_FORMAT, readDocumentText, type LibraryDocument } from '@core/exchange/document';
import { librarySchema } from '@core/exchange/schema';
import { Problem } from '@core/problems/problem';
import { blankMaterial } from '@core/materials/material';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { nextId } from '../checks/build';

const HASH = 'a'.repeat(64);
const AT = '2026-03-01T10:00:00.000Z';

/** A library of one material, as another machine would send it. */
function document(parts: Partial<LibraryDocument> = {}): LibraryDocument {
  const id = nextId();
  return {
    stillroom: 'library',
    format: DOCUMENT_FORMAT,
    writtenAt: AT,
    library: { id: nextId(), name: 'Weir Lane' },
    withheld: {},
    settings: null,
    records: [
      {
        ...{
          kind: 'material',
          id,
          revision: 1,
          createdAt: AT,
          updatedAt: AT,
          format: 1,
          state: HASH,
          past: [],
        },
        content: { ...blankMaterial('Rose Water “5 %”', 'Rosa Damascena Flower Water') },
      },
    ],
    history: [],
    states: [],
    versions: [],
    batches: [],
    issues: [],
    numbers: [{ name: 'formula', last: 12 }],
    attachments: [{ sha256: HASH, of: id }],
    ...parts,
  };
}
const text = (of: unknown): string => JSON.stringify(of);

function refused(written: string): Problem {
  try {
    readDocumentText(written);
  } catch (problem) {
    expect(problem).toBeInstanceOf(Problem);
    return problem as Problem;
  }
  throw new Error('It was read.');
}

describe('a library as a document', () => {
  it('is read as it was written, indented or not', () => {
    const one = document();
    expect(readDocumentText(text(one))).toEqual(one);
    expect(readDocumentText(JSON.stringify(one, null, 2))).toEqual(one);
  });

  it('holds any text that a maker may write', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', maxLength: 40 }), (name) => {
        const one = document({ library: { id: 'x', name } });
        expect(readDocumentText(text(one)).library.name).toBe(name);
      }),
      { numRuns: 50 },
    );
  });

  it('may be empty of everything but itself', () => {
    const none = document({ records: [], numbers: [], attachments: [] });
    expect(readDocumentText(text(none))).toEqual(none);
  });
});

describe('what is no such document is refused, and nothing is changed', () => {
  it.each<[string, string, RegExp]>([
    ['nothing', '', /It is not JSON, or was cut short/],
    ['a text', 'Rohstoff;Anteil', /It is not JSON/],
    ['one that was cut short', text(document()).slice(0, -10), /cut short/],
    ['other JSON', '{"name":"x"}', /does not say that it is a Stillroom library/],
    ['a list', '[]', /does not say/],
    ['a number', '5', /does not say/],
    ['null', 'null', /does not say/],
    ['a broken format', text({ ...document(), format: 'one' }), /does not say/],
  ])('%s', (_, written, why) => {
    const { code, message, advice } = refused(written);
    expect(code).toBe('invalid-input');
    expect(message).toBe('This file cannot be read as a Stillroom library or pack.');
    expect(advice).toMatch(why);
    expect(advice).toContain('Nothing was changed.');
  });

  it('a format from the future says which version can open it, before anything else is looked at', () => {
    const newer = refused(text({ stillroom: 'library', format: DOCUMENT_FORMAT + 1, anything: 'else' }));
    expect(newer.code).toBe('library-newer');
    expect(newer.facts).toEqual({ format: DOCUMENT_FORMAT + 1, known: DOCUMENT_FORMAT });
    expect(newer.advice).toContain('Open it with that version or a later one.');
  });

  // What came after the first documents may be left out: they are read as holding none.
  const later = ['stillroom', 'format', 'issues'];
  it.each(Object.keys(document()).filter((key) => !later.includes(key)))(
    'without its “%s” it is refused by that name',
    (key) => {
      const one: Record<string, unknown> = { ...document() };
      delete one[key];
      expect(refused(text(one)).advice).toMatch(new RegExp(`^${key}: `));
    },
  );

  it.each<[string, Record<string, unknown>, RegExp]>([
    ['a hash that is none', { state: 'abc' }, /^records\.0\.state: /],
    ['a revision of nothing', { revision: 0 }, /^records\.0\.revision: /],
    ['a moment that is none', { createdAt: 'yesterday' }, /^records\.0\.createdAt: /],
    ['an id that is none', { id: '1' }, /^records\.0\.id: /],
    ['content that is a list', { content: [] }, /^records\.0\.content: /],
    ['a past that is no list', { past: HASH }, /^records\.0\.past: /],
  ])('a record with %s is named by its place', (_, parts, why) => {
    const one = document();
    expect(refused(text({ ...one, records: [{ ...one.records[0]!, ...parts }] })).advice).toMatch(why);
  });
});

describe('the schema that is published beside it', () => {
  interface Node {
    title?: string;
    description?: string;
    const?: unknown;
    properties?: Record<string, Node>;
    items?: { oneOf: Node[] };
  }
  const schema = librarySchema() as unknown as Node & { $schema: string; $id: string };
  const kinds = schema.properties!.records!.items!.oneOf;

  it('says its dialect, its format, and what its numbers are in', () => {
    expect(schema.$schema).toBe('https://json-schema.org/draft/2020-12/schema');
    expect(schema.$id).toBe(`urn:stillroom:library:${DOCUMENT_FORMAT}`);
    expect(schema.description).toContain('parts per million');
    expect(schema.properties!.format!.const).toBe(DOCUMENT_FORMAT);
  });

  it('tells every kind of record by its own name, once', () => {
    const names = kinds.map((one) => one.properties!.kind!.const);
    expect([...names].sort()).toEqual(
      ['formula', 'limit', 'material', 'saved search', 'substance', 'trial series'].sort(),
    );
    expect(new Set(names).size).toBe(names.length);
  });

  it('names each field as the screen does, with its unit', () => {
    const material = kinds.find((one) => one.properties!.kind!.const === 'material')!;
    const fields = material.properties!.content!.properties!;
    expect(fields.tradeName?.title).toBe('Trade name');
    for (const [key, field] of Object.entries(fields)) expect(field.title, key).not.toBe('');
    const limit = kinds.find((one) => one.properties!.kind!.const === 'limit')!.properties!.content!
      .properties!;
    expect(limit.percent?.description).toContain('In % of the product.');
  });

  it('knows every part that a document has, and no other', () => {
    expect(Object.keys(schema.properties!).sort()).toEqual(Object.keys(document()).sort());
  });
});
