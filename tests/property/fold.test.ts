import { fold, foldedWords, withWideNumbers } from '@core/quantities/fold';
import { beginsWords } from '@renderer/shell/begins-words';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

/** Text as a library holds it, plain and not, with marks, digits of other scripts, ligatures and breaks. */
const text = fc.oneof(
  fc.string({ unit: 'binary-ascii' }),
  fc.string({ unit: 'grapheme' }),
  fc.string({
    unit: fc.constantFrom('a', 'Z', '7', '40', ' ', '-', '\n', '\t', 'é', 'ß', 'Œ', '٣', 'Å', '²'),
  }),
);

describe('folded words', () => {
  it('are the runs of letters and digits of the folded text, whatever it is made of', () => {
    fc.assert(
      fc.property(text, (given) => {
        expect(foldedWords(given)).toEqual(fold(given).match(/[\p{L}\p{N}]+/gu) ?? []);
      }),
    );
  });

  it('are the same however a text is written', () => {
    fc.assert(
      fc.property(text, (given) => {
        expect(foldedWords(fold(given))).toEqual(foldedWords(given));
        expect(foldedWords(`(${given})`)).toEqual(foldedWords(given));
      }),
    );
    expect(foldedWords('Behénique, PEG-40 (Œuf)')).toEqual(['behenique', 'peg', '40', 'oeuf']);
  });

  it.each([
    ['Crème Légère', 'creme legere'],
    ['Öl', 'ol'],
    ['Weißöl', 'weissol'],
    ['Smørblomst', 'smorblomst'],
    ['Łój', 'loj'],
    ['Gül Yağı', 'gul yagi'],
    ['İncir', 'incir'],
    ['Þang, Krækiber', 'thang krækiber'],
    ['ﬁne', 'fine'],
  ])('of “%s” are what is typed where a keyboard has no such letters', (written, typed) => {
    expect(foldedWords(written)).toEqual(foldedWords(typed));
    expect(beginsWords(written, typed)).toBe(true);
    expect(beginsWords(typed, written)).toBe(true);
  });

  it('have no letter more for an umlaut', () => {
    expect(foldedWords('Öl')).not.toEqual(foldedWords('oel'));
  });

  it('with wide numbers stand by their size', () => {
    fc.assert(
      fc.property(fc.nat(), fc.nat(), (one, other) => {
        const [a, b] = [one, other].map((number) => withWideNumbers(`peg ${number} é`)) as [string, string];
        expect(Math.sign(one - other)).toBe(a < b ? -1 : a > b ? 1 : 0);
      }),
    );
    expect(withWideNumbers('peg 7')).toBe('peg 000000000007');
    expect(withWideNumbers('ä ٣')).toBe('ä 00000000000٣');
  });
});
