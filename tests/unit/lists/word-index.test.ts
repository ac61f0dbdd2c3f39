import fc from 'fast-check';
import { emptySet, slotsIn } from '@core/lists/slot-set';
import { WordIndex } from '@core/lists/word-index';
import { describe, expect, it } from 'vitest';

const CAPACITY = 64;
const word = fc.constantFrom('ce', 'cera', 'cetearyl', 'ceteareth', 'cetyl', 'aqua', 'öl', '油脂', '40', '4');
const words = fc.array(word, { maxLength: 6 });

/** What a look at every word would find. */
function plain(held: ReadonlyMap<number, readonly string[]>, text: string, whole: boolean): number[] {
  return [...held]
    .filter(([, own]) => own.some((one) => (whole ? one === text : one.startsWith(text))))
    .map(([slot]) => slot)
    .sort((a, b) => a - b);
}

function found(index: WordIndex, text: string, whole: boolean): number[] {
  const set = emptySet(CAPACITY);
  index.collect(text, whole, set);
  return slotsIn(set);
}

describe('the index of words', () => {
  it('finds what a look at every record finds, however records come and go', () => {
    const steps = fc.array(fc.tuple(fc.nat(9), words), { maxLength: 25 });
    fc.assert(
      fc.property(steps, word, (all, asked) => {
        const index = new WordIndex();
        const held = new Map<number, readonly string[]>();
        for (const [slot, own] of all) {
          const before = held.get(slot);
          if (before) {
            index.remove(slot, before);
            held.delete(slot);
          } else {
            index.add(slot, own);
            held.set(slot, own);
          }
          for (const text of [asked, asked.slice(0, 1)])
            for (const whole of [true, false]) {
              const expected = plain(held, text, whole);
              expect(found(index, text, whole)).toEqual(expected);
              expect(index.has(text, whole)).toBe(expected.length > 0);
            }
        }
      }),
    );
  });

  it('tells its words in order, each once, and none that no record holds any more', () => {
    fc.assert(
      fc.property(fc.array(words, { maxLength: 12 }), (rows) => {
        const index = new WordIndex();
        rows.forEach((own, slot) => index.add(slot, own));
        expect(index.lettered()).toEqual(
          [...new Set(rows.flat())].filter((word) => !/\p{N}/u.test(word)).sort(),
        );
        rows.forEach((own, slot) => index.remove(slot, own));
        expect(index.lettered()).toEqual([]);
      }),
    );
  });

  it('put in order in steps is the one put in order at once', () => {
    const [one, other] = [new WordIndex(), new WordIndex()];
    for (let slot = 0; slot < 60; slot += 1) {
      const own = [`w${(slot * 37) % 60}`, 'cera', `x${slot % 7}`];
      one.add(slot, own);
      other.add(slot, own);
    }
    for (const _ of one.settleInSteps()) void _;
    expect(one.lettered()).toEqual(other.lettered());
    expect(found(one, 'x3', true)).toEqual(found(other, 'x3', true));
  });

  it('takes many new words at once as it takes few', () => {
    const index = new WordIndex();
    index.add(0, ['m']);
    expect(index.has('m', false)).toBe(true);
    index.add(
      1,
      Array.from({ length: 200 }, (_, n) => `n${n}`),
    );
    expect(found(index, 'n19', false)).toEqual([1]);
    index.add(2, ['n199', 'a']);
    expect(found(index, 'n199', true)).toEqual([1, 2]);
    expect(index.lettered()).toEqual(['a', 'm']);
  });

  it('a word taken from a record that never had it changes nothing', () => {
    const index = new WordIndex();
    index.add(3, ['cera', 'cera']);
    index.remove(4, ['cera', 'aqua']);
    expect(found(index, 'cera', true)).toEqual([3]);
    index.remove(3, ['cera', 'cera']);
    expect(index.has('cera', true)).toBe(false);
  });
});
