import fc from 'fast-check';
import { GLOSSARY, TERMS, termsFor, type TermKey } from '@core/glossary/glossary';
import { FIGURE_TERMS } from '@core/glossary/of-figures';
import { FIGURE_NAMES } from '@core/materials/figure';
import { foldedWords } from '@core/quantities/fold';
import { describe, expect, it } from 'vitest';

const first = (typed: string): TermKey | undefined => termsFor(typed)[0]?.key;
const keys = (typed: string): TermKey[] => termsFor(typed).map(({ key }) => key);

describe('a word that is asked for', () => {
  it.each([
    ['emulsifiers', 'emulsifier'],
    ['Surfactants', 'surfactant'],
    ['soaps', 'soap'],
    ['allergens', 'allergen'],
    ['chelators', 'chelator'],
    ['humectants', 'humectant'],
    ['fatty acids', 'fatty-acid'],
    ['fatty alcohols', 'fatty-alcohol'],
    ['esters', 'ester'],
    ['preservatives', 'preservative'],
    ['buffers', 'buffer'],
    ['lots', 'lot'],
    ['viscosities', 'viscosity'],
    ['trade names', 'trade-name'],
    ['emulsions', 'emulsion'],
  ] as const)('in the plural, %s, is found as %s', (typed, key) => expect(first(typed)).toBe(key));

  it.each([
    ['neutralise', 'neutralise'],
    ['neutralize', 'neutralise'],
    ['neutralisation', 'neutralise'],
    ['NEUTRALIZATION', 'neutralise'],
    ['qs', 'qs'],
    ['QS', 'qs'],
    ['q.s.', 'qs'],
    ['quantum satis', 'qs'],
    ['nonionic', 'non-ionic'],
    ['non-ionic', 'non-ionic'],
    ['non ionic', 'non-ionic'],
    ['yield point', 'yield-stress'],
    ['molecular weight', 'molar-mass'],
    ['molecular mass', 'molar-mass'],
    ['PET', 'challenge-test'],
    ['oil in water', 'ow'],
    ['oil-in-water', 'ow'],
    ['O/W', 'ow'],
    ['dropping point', 'drop-point'],
    ['sequestrant', 'chelator'],
    ['zwitterionic', 'amphoteric'],
    ['betaines', 'amphoteric'],
    ['Émulsion', 'emulsion'],
    ['pH', 'ph'],
    ['pKa', 'pka'],
    ['aw', 'water-activity'],
    ['SDS', 'safety-data-sheet'],
    ['e-mark', 'e-mark'],
    ['Pickering', 'particulate'],
    ['gel network', 'lamellar'],
  ] as const)('as “%s” is found as %s', (typed, key) => expect(first(typed)).toBe(key));

  it.each(['zzzz', 'xanthan gum 42', 'emulsifier zzzz'])('“%s” finds nothing', (typed) =>
    expect(termsFor(typed)).toEqual([]),
  );

  it.each(['', '   ', '%', '.', '—'])('“%s” holds no word, and shows them all', (typed) =>
    expect(termsFor(typed)).toHaveLength(TERMS.length),
  );
});

describe('a search of several words', () => {
  const word = fc.constantFrom(...TERMS.flatMap(({ term }) => foldedWords(term)));

  it('finds what each of them finds, in whatever order they are typed', () => {
    fc.assert(
      fc.property(fc.array(word, { minLength: 1, maxLength: 3 }), (words) => {
        const found = keys(words.join(' '));
        expect([...keys([...words].reverse().join(' '))].sort()).toEqual([...found].sort());
        for (const one of words) {
          const alone = new Set(keys(one));
          expect(found.filter((key) => !alone.has(key))).toEqual([]);
        }
      }),
    );
  });

  it('does not hang on case, spaces or signs between', () => {
    fc.assert(
      fc.property(word, word, fc.constantFrom(' ', '  ', '-', '/', ', '), (one, other, between) => {
        expect(keys(`${one}${between}${other}`.toUpperCase())).toEqual(keys(`${one} ${other}`));
      }),
    );
  });

  it('shows each word once', () => {
    fc.assert(
      fc.property(word, (one) => {
        const found = keys(one);
        expect(new Set(found).size).toBe(found.length);
        expect(found.length).toBeGreaterThan(0);
      }),
    );
  });
});

describe('the list of words', () => {
  it('stands in alphabetical order, whatever their case', () => {
    const order = new Intl.Collator('en');
    TERMS.slice(1).forEach(({ term }, at) => {
      const before = TERMS[at]?.term ?? '';
      expect(order.compare(before, term), `${before}, ${term}`).toBeLessThan(0);
    });
  });

  it('has no name that two words are called by', () => {
    const called = TERMS.flatMap(({ term, also = [] }) => [
      ...new Set([term, ...also].map((one) => one.toLowerCase())),
    ]);
    const twice = called.filter((one, at) => called.indexOf(one) !== at);
    expect(twice).toEqual([]);
  });

  it('explains a figure of materials by a word that is there, and no figure that does not exist', () => {
    for (const [figure, key] of Object.entries(FIGURE_TERMS)) {
      expect(FIGURE_NAMES as readonly string[]).toContain(figure);
      expect(GLOSSARY[key], figure).toBeDefined();
    }
  });

  it('uses no word of one entry’s abbreviation without telling it somewhere', () => {
    const told = new Set(TERMS.flatMap(({ term, also = [] }) => [term, ...also].flatMap(foldedWords)));
    for (const { says, key } of TERMS)
      for (const short of says.match(/\b(HLB|HLD|EACN|INCI|SMILES|PIT|CMC|SDS)\b/g) ?? [])
        expect(told.has(short.toLowerCase()), `${key}: ${short}`).toBe(true);
  });
});
