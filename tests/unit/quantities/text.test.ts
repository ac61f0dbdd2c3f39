import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fold } from '@core/quantities/fold';
import { beginningText, lineText, longText, nameText } from '@core/quantities/text';

const KINDS = {
  name: nameText('a name', 40),
  line: lineText(40),
  beginning: beginningText(40),
  long: longText(40),
};
const kinds = Object.entries(KINDS);
const said = (kind: keyof typeof KINDS, text: unknown): string =>
  KINDS[kind].safeParse(text).error?.issues[0]?.message ?? '';
const text = fc.oneof(
  fc.string({ maxLength: 45 }),
  fc.string({ unit: 'binary', maxLength: 45 }),
  fc.string({
    unit: fc.constantFrom(
      'a',
      ' ',
      '\n',
      '\t',
      '\u2028',
      '\u200b',
      'e\u0301',
      '\u0958',
      '\u00a0',
      '\u202e',
      '😀',
    ),
    maxLength: 45,
  }),
);

describe('text as a library keeps it', () => {
  it.each(kinds)('a %s that was taken is taken again, as it is', (_kind, schema) => {
    fc.assert(
      fc.property(text, (given) => {
        const first = schema.safeParse(given);
        if (!first.success) return;
        expect(schema.safeParse(first.data)).toEqual({ success: true, data: first.data });
      }),
      { numRuns: 400 },
    );
  });

  it.each(kinds)('a %s is never longer than it may be, also where its signs fall apart', (_kind, schema) => {
    // Devanagari qa has no composed form in NFC and becomes two.
    expect(schema.safeParse('\u0958'.repeat(20)).success).toBe(true);
    expect(schema.safeParse('\u0958'.repeat(21)).success).toBe(false);
    expect(schema.safeParse('a'.repeat(40)).success).toBe(true);
    expect(schema.safeParse('a'.repeat(41)).error?.issues[0]?.message).toBe(
      'Keep this to 40 characters or fewer.',
    );
  });

  it.each(kinds)('a %s holds no control characters and nothing that turns text round', (_kind, schema) => {
    for (const sign of ['\u0000', '\u0007', '\u001b', '\u007f', '\u0085', '\u202e', '\u2066'])
      expect(schema.safeParse(`a${sign}b`).error?.issues[0]?.message).toMatch(/control characters/);
    expect(schema.safeParse('crème, 20 °C – “fine” 乳液').success).toBe(true);
    expect(schema.safeParse(null).error?.issues[0]?.message).toBe('Enter text here.');
  });

  it('one spelling of an accent is the other', () => {
    for (const [, schema] of kinds) expect(schema.parse('Cre\u0301me')).toBe('Cr\u00e9me');
  });

  it('line breaks of web pages become spaces in a line and breaks in a note', () => {
    expect(KINDS.name.parse('a\u2028b')).toBe('a b');
    expect(KINDS.long.parse('a\u2029b')).toBe('a\nb');
    expect(said('name', 'a\nb')).toBe('A name stays on one line.');
    expect(said('line', 'a\nb')).toBe('This stays on one line.');
    expect(said('beginning', 'a\tb')).toBe('This stays on one line.');
  });

  it('a name has something that can be seen; other texts may be empty', () => {
    for (const empty of ['', '   ', '\u200b', '\u2800', '\ufe0f \u00ad'])
      expect(said('name', empty)).toBe('Give a name.');
    expect([KINDS.line.parse('  '), KINDS.beginning.parse(' LOT '), KINDS.long.parse('')]).toEqual([
      '',
      'LOT ',
      '',
    ]);
    expect(KINDS.name.parse('  Wax  7 ')).toBe('Wax  7');
  });
});

describe('folding for finding', () => {
  it('twice is once, and does not mind case or the spelling of an accent', () => {
    fc.assert(
      fc.property(text, (given) => {
        expect(fold(fold(given))).toBe(fold(given));
        expect(fold(given.normalize('NFD'))).toBe(fold(given.normalize('NFC')));
      }),
    );
    for (const [one, other] of [
      ['STRASSE', 'Straße'],
      ['Ø', 'o'],
      ['Œuf', 'oeuf'],
      ['ŁÓDŹ', 'lodz'],
      ['ﬁne', 'fine'],
      ['İ', 'i'],
    ] as const)
      expect(fold(one)).toBe(fold(other));
  });
});
