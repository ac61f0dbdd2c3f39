import fc from 'fast-check';
import { WordIndex } from '@core/lists/word-index';
import { nearestWords, slipsAllowed } from '@core/lists/nearest-words';
import { otherForms } from '@core/lists/word-forms';
import { describe, expect, it } from 'vitest';
import { slipsToBeginning } from '../../property/plain-list';

const SHELF = [
  'acetate',
  'behenyl',
  'benzoate',
  'carbomer',
  'cetearyl',
  'cetyl',
  'decyl',
  'emulsifier',
  'glyceryl',
  'glycerin',
  'glycol',
  'lactate',
  'lecithin',
  'polysorbate',
  'sorbate',
  'sorbitan',
  'squalane',
  'squalene',
  'stearate',
  'stearic',
  'tocopherol',
  'xanthan',
].sort();
const meant = (typed: string): string[] => nearestWords(typed, SHELF, slipsAllowed(typed))?.words ?? [];

describe('a slip of the finger', () => {
  it.each([
    // A letter wrong, missing, too many, two swapped.
    ['cetil', ['cetyl']],
    ['cetearil', ['cetearyl']],
    ['glycrin', ['glycerin']],
    ['glyccerin', ['glycerin']],
    ['glycerni', ['glycerin']],
    ['tocoferol', ['tocopherol']],
    ['tocpherol', ['tocopherol']],
    ['xantham', ['xanthan']],
    ['lecitin', ['lecithin']],
    ['carbomre', ['carbomer']],
    ['polisorbat', ['polysorbate']],
    ['emulgifier', ['emulsifier']],
    ['sorbitna', ['sorbitan']],
    // Two that are as near: both are meant.
    ['squalxne', ['squalane', 'squalene']],
  ])('“%s” means %j', (typed, words) => expect(meant(typed)).toEqual(words));

  it.each([
    ['cet', 'three letters are too few'],
    ['aloe', 'nothing is near'],
    ['peg40', 'a grade is never another one'],
    ['c12', 'a grade is never another one'],
    ['zzzzzzzz', 'nothing is near'],
    ['', 'nothing is typed'],
  ])('“%s” means nothing else: %s', (typed) => expect(meant(typed)).toEqual([]));

  it('of a beginning is one too: “polisor” is the beginning of polysorbate', () => {
    expect(meant('polisor')).toEqual(['polysorbate']);
  });

  it('is never made where a word with a figure would be meant', () => {
    const index = new WordIndex();
    index.add(0, ['ceteareth20', 'zz', '20', 'twenti', 'c12']);
    expect(index.lettered()).toEqual(['twenti', 'zz']);
    expect(nearestWords('ceteareht', index.lettered(), 2)).toBeNull();
    expect(nearestWords('twenty', index.lettered(), 1)?.words).toEqual(['twenti']);
  });

  it('one slip anywhere in a word of the shelf is forgiven, and the word itself is no slip', () => {
    const slip = fc.record({
      word: fc.constantFrom(...SHELF),
      at: fc.nat(30),
      kind: fc.constantFrom('wrong', 'missing', 'more', 'swapped'),
    });
    fc.assert(
      fc.property(slip, ({ word, at, kind }) => {
        const place = at % word.length;
        const letters = [...word];
        if (kind === 'wrong') letters[place] = 'q';
        else if (kind === 'missing') letters.splice(place, 1);
        else if (kind === 'more') letters.splice(place, 0, 'q');
        else [letters[place], letters[place + 1]] = [letters[place + 1] ?? '', letters[place] ?? ''];
        const typed = letters.join('');
        if (slipsAllowed(typed) < 1) return;
        const near = nearestWords(typed, SHELF, slipsAllowed(typed));
        expect(near?.slips).toBeLessThanOrEqual(1);
        // Of all that is as near, none is left out, and none that is farther is in.
        const least = Math.min(...SHELF.map((one) => slipsToBeginning(typed, one)));
        expect(near?.words).toEqual(SHELF.filter((one) => slipsToBeginning(typed, one) === least));
      }),
      { numRuns: 60 },
    );
  });

  it('may be made once from four letters on, twice from eight', () => {
    expect(['wax', 'oils', 'glycols', 'glycerin', 'c12-15'].map(slipsAllowed)).toEqual([0, 1, 1, 2, 0]);
  });
});

describe('the other number of a word', () => {
  it.each([
    ['waxes', ['waxe', 'wax']],
    ['oils', ['oil']],
    ['berries', ['berry', 'berrie']],
    ['clays', ['clay']],
    ['berry', ['berries']],
    ['emulsifiers', ['emulsifier']],
    ['esters', ['ester']],
    ['glasses', ['glasse', 'glass']],
    ['alcohols', ['alcohol']],
    ['gas', []],
    ['glass', []],
    ['wax', []],
    ['peg40s', []],
    ['', []],
  ])('of “%s” may be %j', (word, forms) => expect(otherForms(word)).toEqual(forms));

  it('of the plural is the word itself, for every word of the shelf', () => {
    for (const word of SHELF) {
      const plural = word.endsWith('y') ? `${word.slice(0, -1)}ies` : `${word}s`;
      expect(otherForms(plural), plural).toContain(word);
    }
  });
});
