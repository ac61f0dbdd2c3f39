import fc from 'fast-check';
import type { ListDescription } from '@core/lists/description';
import { insteadOf } from '@core/lists/instead';
import { slipsAllowed } from '@core/lists/nearest-words';
import { listQuery, withChosen, withSpan } from '@core/lists/query';
import {
  addSlot,
  countIn,
  countShared,
  dropSlot,
  emptySet,
  grown,
  hasSlot,
  intersect,
  isEmpty,
  slotsIn,
  subtract,
  unite,
  type SlotSet,
} from '@core/lists/slot-set';
import { endOf, sortInSteps, STEP } from '@core/lists/sort-in-steps';
import { compareValues, sortValue } from '@core/lists/sort-key';
import { otherForms } from '@core/lists/word-forms';
import { describe, expect, it } from 'vitest';

const ROOM = 200;
const numbers = fc.uniqueArray(fc.nat(ROOM - 1), { maxLength: 60 });
const setOf = (slots: readonly number[]): SlotSet => {
  const set = emptySet(ROOM);
  for (const slot of slots) addSlot(set, slot);
  return set;
};
const ascending = (slots: Iterable<number>): number[] => [...slots].sort((a, b) => a - b);

describe('a set of slots', () => {
  it('holds what a plain set holds, through every way of putting in and taking out', () => {
    fc.assert(
      fc.property(numbers, numbers, (one, other) => {
        const [set, against] = [setOf(one), setOf(other)];
        expect(slotsIn(set)).toEqual(ascending(one));
        expect(countIn(set)).toBe(one.length);
        expect(isEmpty(set)).toBe(one.length === 0);
        expect(countShared(set, [against, set, emptySet(ROOM)])).toEqual([
          one.filter((slot) => other.includes(slot)).length,
          one.length,
          0,
        ]);
        const [both, shared, less, dropped] = [set.slice(), set.slice(), set.slice(), set.slice()];
        unite(both, against);
        intersect(shared, against);
        subtract(less, against);
        for (const slot of other) dropSlot(dropped, slot);
        expect(slotsIn(both)).toEqual(ascending(new Set([...one, ...other])));
        expect(slotsIn(shared)).toEqual(ascending(one.filter((slot) => other.includes(slot))));
        expect(slotsIn(less)).toEqual(ascending(one.filter((slot) => !other.includes(slot))));
        expect(slotsIn(dropped)).toEqual(slotsIn(less));
        expect(slotsIn(grown(set, 3 * ROOM))).toEqual(ascending(one));
        expect(one.every((slot) => hasSlot(set, slot))).toBe(true);
      }),
    );
  });
});

describe('sorting in steps', () => {
  it('gives what sorting at once gives, equals in their order, and lets others work in between', () => {
    const some = fc.array(fc.record({ key: fc.nat(50), at: fc.nat() }), { maxLength: 5 });
    fc.assert(
      fc.property(some, fc.integer({ min: 0, max: 4 * STEP + 7 }), (few, length) => {
        // A long list of many equals, from a few by chance.
        const items = Array.from({ length }, (_, at) => ({
          key: few.length === 0 ? 0 : (few[at % few.length]!.key * (1 + (at % 7))) % 53,
          at,
        }));
        const compare = (a: { key: number }, b: { key: number }): number => a.key - b.key;
        const expected = [...items].sort(compare);
        const steps = sortInSteps(items, compare);
        let stops = 0;
        while (!steps.next().done) stops += 1;
        expect(items).toEqual(expected);
        expect(stops).toBeGreaterThanOrEqual(Math.floor(length / STEP));
      }),
      { numRuns: 15 },
    );
  });

  it('sorts typed numbers too', () => {
    const slots = Uint32Array.from({ length: 3 * STEP }, (_, at) => (at * 7919) % 10_007);
    const expected = [...slots].sort((a, b) => b - a);
    endOf(sortInSteps(slots, (a: number, b: number) => b - a));
    expect([...slots]).toEqual(expected);
  });
});

const DESCRIPTION = {
  facets: [
    { key: 'form', title: 'Form', words: ['liquid', 'paste', 'powder'] },
    { key: 'supplier', title: 'Supplier', words: null },
    { key: 'status', title: 'Status', words: ['in use', 'archived'], putAside: ['archived'] },
  ],
  ranges: [{ key: 'hlb', title: 'HLB', unit: '', min: 0, max: 40 }],
  firstSort: { key: 'name', descending: false },
} as unknown as ListDescription;

describe('what a record is sorted by', () => {
  const value = (key: string, by: 'text' | 'word' | 'number' | 'date', held: unknown) =>
    sortValue(DESCRIPTION, { key, by }, { id: 'x', [key]: held } as never);

  it('a name without regard to case, accents and signs, its numbers by size', () => {
    const names = ['PEG-40', 'Éthylhexyl', 'peg 7', 'PEG-7 Olivate', 'Aqua', 'ethylhexyl-glycerin'];
    const sorted = names.sort((a, b) => compareValues(value('name', 'text', a), value('name', 'text', b)));
    expect(sorted).toEqual(['Aqua', 'Éthylhexyl', 'ethylhexyl-glycerin', 'peg 7', 'PEG-7 Olivate', 'PEG-40']);
  });

  it('a word by its place in the vocabulary; one that it does not hold, and none, as unknown', () => {
    expect(['powder', 'liquid', 'gas', ''].map((word) => value('form', 'word', word))).toEqual([
      2,
      0,
      null,
      null,
    ]);
    expect(value('form', 'word', ['paste', 'liquid'])).toBe(1);
  });

  it('a day as a moment, a figure as it is', () => {
    expect(value('updatedAt', 'date', '2026-03-31')).toBe(Date.UTC(2026, 2, 31));
    expect(value('updatedAt', 'date', 'soon')).toBeNull();
    expect([value('hlb', 'number', 0), value('hlb', 'number', null)]).toEqual([0, null]);
  });

  it('is an order: unknown last either way, and turned round but for that', () => {
    const values = fc.array(fc.option(fc.integer({ min: -5, max: 5 })), { maxLength: 12 });
    fc.assert(
      fc.property(values, (some) => {
        const up = [...some].sort((a, b) => compareValues(a, b));
        const down = [...some].sort((a, b) => compareValues(a, b, true));
        const known = up.filter((one) => one !== null);
        expect(up.slice(known.length).every((one) => one === null)).toBe(true);
        expect(known).toEqual([...known].sort((a, b) => a - b));
        expect(down).toEqual([...known.reverse(), ...up.slice(known.length)]);
      }),
    );
  });
});

describe('words as they are typed', () => {
  it.each([
    ['waxes', 'wax'],
    ['berries', 'berry'],
    ['oils', 'oil'],
    ['berry', 'berries'],
    ['lanolines', 'lanoline'],
  ])('“%s” finds “%s”', (typed, stands) => expect(otherForms(typed)).toContain(stands));

  it.each(['gas', 'oil', 'glass', 'c12s', '7s'])('“%s” has no other form', (typed) =>
    expect(otherForms(typed)).toEqual([]),
  );

  it('may hold a slip from four letters on, and two from eight; a grade none', () => {
    expect(['wax', 'oils', 'glycerine', 'peg40', 'ceteareth20'].map(slipsAllowed)).toEqual([0, 1, 2, 0, 0]);
  });
});

describe('what would find something', () => {
  const total: Record<string, number> = {};
  const count = (query: ReturnType<typeof listQuery>): number => total[JSON.stringify(query)] ?? 0;
  const query = withSpan(
    withChosen(listQuery(DESCRIPTION, { text: 'olive oyl' }), 'form', ['powder']),
    'hlb',
    { from: 3, to: 6 },
  );

  it('is offered one step at a time, with how many it would show; what would show none is not', () => {
    total[JSON.stringify(withChosen(query, 'form', []))] = 4;
    total[JSON.stringify(withSpan(query, 'hlb', { from: null, to: null }))] = 2;
    total[JSON.stringify({ ...query, text: 'olive' })] = 7;
    total[JSON.stringify(withChosen(query, 'status', ['archived']))] = 1;
    expect(insteadOf(DESCRIPTION, query, count)).toEqual([
      { kind: 'put aside', key: 'status', word: 'archived', total: 1 },
      { kind: 'facet', key: 'form', total: 4 },
      { kind: 'range', key: 'hlb', total: 2 },
      { kind: 'word', word: 'oyl', total: 7 },
    ]);
  });

  it('never offers to look for nothing at all', () => {
    const only = listQuery(DESCRIPTION, { text: 'olive' });
    expect(insteadOf(DESCRIPTION, only, () => 9).filter(({ kind }) => kind === 'word')).toEqual([]);
  });

  it('choosing and taking away again is the query of before', () => {
    const plain = listQuery(DESCRIPTION, { text: 'olive' });
    expect(withChosen(withChosen(plain, 'form', ['paste']), 'form', [])).toEqual(plain);
    const span = { from: null, to: 4 };
    expect(withSpan(withSpan(plain, 'hlb', span), 'hlb', { from: null, to: null })).toEqual(plain);
    expect(withSpan(plain, 'hlb', span).spans).toEqual({ hlb: span });
  });
});
