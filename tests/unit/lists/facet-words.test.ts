import { FoundWords, MOST_FOUND_WORDS } from '@core/lists/found-words';
import { KnownWords } from '@core/lists/known-words';
import { addSlot, emptySet, slotsIn } from '@core/lists/slot-set';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

const WORDS = ['wax', 'oil', 'Shea butter', 'gum', ''];
const CAPACITY = 96;
const rows = fc.array(fc.subarray(WORDS), { minLength: 1, maxLength: 80 });

function setOf(slots: readonly number[]): Uint32Array {
  const set = emptySet(CAPACITY);
  for (const slot of slots) addSlot(set, slot);
  return set;
}

describe('the words of a filter', () => {
  it('are counted alike, whether they are known before or found, through additions and removals', () => {
    fc.assert(
      fc.property(rows, fc.array(fc.nat(79)), fc.array(fc.nat(79)), (all, removed, asked) => {
        const known = new KnownWords(
          WORDS.filter((word) => word !== ''),
          CAPACITY,
        );
        const found = new FoundWords();
        all.forEach((words, slot) => {
          known.add(slot, words);
          found.add(slot, words);
        });
        const left = new Map(all.entries());
        for (const slot of removed) {
          const words = left.get(slot);
          if (!words) continue;
          known.remove(slot, words);
          found.remove(slot);
          left.delete(slot);
        }
        const among = setOf(asked);
        const expected = WORDS.filter((word) => word !== '').map((word) => [
          word,
          new Set(asked.filter((slot) => left.get(slot)?.includes(word))).size,
        ]);
        expect(known.count(among)).toEqual(Object.fromEntries(expected));
        expect(found.count(among, [])).toEqual(Object.fromEntries(expected.filter(([, n]) => n !== 0)));
        for (const word of WORDS.slice(0, 4)) {
          const [one, other] = [emptySet(CAPACITY), emptySet(CAPACITY)];
          known.addTo(one, word);
          found.addTo(other, word);
          expect(slotsIn(other)).toEqual(slotsIn(one));
        }
        const carried = (terms: { text: string; isEmpty(): boolean }[]): string[] =>
          terms
            .filter((term) => !term.isEmpty())
            .map(({ text }) => text)
            .sort();
        expect(carried(found.terms())).toEqual(carried(known.terms()));
      }),
    );
  });

  it('of many found, those that would leave most are told, and one that is chosen besides', () => {
    const found = new FoundWords();
    const count = MOST_FOUND_WORDS + 40;
    // The n-th word is carried by two slots up to the 210th, by one from there on.
    for (let n = 0; n < count; n += 1) {
      found.add(n, [`w${n}`]);
      if (n < 210) found.add(count + n, [`w${n}`]);
    }
    const all = emptySet(2 * count);
    for (let slot = 0; slot < 2 * count; slot += 1) addSlot(all, slot);
    const told = found.count(all, [`w${count - 1}`, 'gone']);
    expect(Object.keys(told)).toHaveLength(MOST_FOUND_WORDS + 2);
    expect(Object.values(told).slice(0, MOST_FOUND_WORDS)).toEqual(Array(MOST_FOUND_WORDS).fill(2));
    expect(told[`w${count - 1}`]).toBe(1);
    expect(told['gone']).toBe(0);
  });

  it('found tell when another came or the last one went, so that those in order are gathered anew', () => {
    const found = new FoundWords();
    found.add(0, ['wax']);
    const before = found.edition;
    found.add(1, ['wax']);
    expect(found.edition).toBe(before);
    found.add(2, ['oil']);
    found.remove(0);
    expect(found.edition).toBe(before + 1);
    found.remove(1);
    expect(found.edition).toBe(before + 2);
    expect(found.terms().map(({ text }) => text)).toEqual(['oil']);
  });
});
