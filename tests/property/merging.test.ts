import { blankMaterial, type MaterialContent } from '@core/materials/material';
import { MATERIAL } from '@core/materials/noun';
import { ancestryOf } from '@core/merging/ancestry';
import { joinStates } from '@core/merging/join';
import { same } from '@core/record/same';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

/* Merging two libraries, record by record: what must hold whatever was changed. */

type Edit = Partial<MaterialContent>;

const text = fc.constantFrom('', 'one', 'two', 'three');
const figure = fc.record({
  low: fc.constant(null),
  value: fc.integer({ min: 1, max: 20 }),
  high: fc.constant(null),
  provenance: fc.constant('supplier' as const),
  source: text,
});
/** Changes of one field each, so that it can be told which fields two sides touch. */
const edit: fc.Arbitrary<[string, (held: MaterialContent) => Edit]> = fc.oneof(
  text.map((notes): [string, () => Edit] => ['notes', () => ({ notes })]),
  text.map((appearance): [string, () => Edit] => ['appearance', () => ({ appearance })]),
  text.map((code): [string, () => Edit] => ['code', () => ({ code })]),
  fc
    .constantFrom('cationic' as const, 'anionic' as const, null)
    .map((charge): [string, () => Edit] => ['charge', () => ({ charge })]),
  figure.map((hlb): [string, (held: MaterialContent) => Edit] => [
    'figures.hlb',
    ({ figures }) => ({ figures: { ...figures, hlb } }),
  ]),
  figure.map((density): [string, (held: MaterialContent) => Edit] => [
    'figures.density',
    ({ figures }) => ({ figures: { ...figures, density: { ...density, value: density.value! / 10 } } }),
  ]),
);
const edits = fc.array(edit, { maxLength: 5 });

const START = MATERIAL.read(blankMaterial('Larkspur Wax', 'Cetyl Alcohol'));
const done = (from: MaterialContent, all: [string, (held: MaterialContent) => Edit][]): MaterialContent =>
  all.reduce((held, [, change]) => ({ ...held, ...change(held) }), from);
const touched = (all: [string, unknown][]): Set<string> => new Set(all.map(([field]) => field));

describe('merging a record of two libraries', () => {
  it('equals doing both sides’ changes in either order, where they do not clash', () => {
    fc.assert(
      fc.property(edits, edits, edits, (before, mine, other) => {
        fc.pre(![...touched(mine)].some((field) => touched(other).has(field)));
        const base = done(START, before);
        const states = { base, ours: done(base, mine), theirs: done(base, other) };
        const joined = joinStates(MATERIAL as never, states, 'ours');
        expect(joined.clashes).toEqual([]);
        expect(same(joined.content, done(done(base, mine), other))).toBe(true);
        expect(same(joined.content, done(done(base, other), mine))).toBe(true);
      }),
    );
  });

  it('is the same from either side, and once more changes nothing', () => {
    fc.assert(
      fc.property(edits, edits, edits, (before, mine, other) => {
        const base = done(START, before);
        const [ours, theirs] = [done(base, mine), done(base, other)];
        const here = joinStates(MATERIAL as never, { base, ours, theirs }, 'ours');
        const there = joinStates(MATERIAL as never, { base, ours: theirs, theirs: ours }, 'theirs');
        expect(same(here.content, there.content)).toBe(true);
        // Theirs is a state that ours has been in by now.
        const again = joinStates(MATERIAL as never, { base: theirs, ours: here.content, theirs }, 'ours');
        expect(same(again.content, here.content)).toBe(true);
        expect(again.clashes).toEqual([]);
      }),
    );
  });

  it('keeps every change of either side, or asks about it', () => {
    fc.assert(
      fc.property(edits, edits, edits, (before, mine, other) => {
        const base = done(START, before);
        const [ours, theirs] = [done(base, mine), done(base, other)];
        const { content, clashes } = joinStates(MATERIAL as never, { base, ours, theirs }, 'ours');
        for (const key of Object.keys(base) as (keyof MaterialContent)[]) {
          if (clashes.includes(key) || key === 'figures') continue;
          const [b, o, t] = [base[key], ours[key], theirs[key]];
          expect(content[key as never]).toEqual(same(o, b) ? t : o);
        }
      }),
    );
  });
});

describe('how a record stands in two libraries', () => {
  it('is told by who has been in whose state, and mirrored from the other side', () => {
    const hash = fc.constantFrom('a', 'b', 'c', 'd', 'e');
    const chain = fc.uniqueArray(hash, { minLength: 1, maxLength: 5 });
    const mirrored = { new: 'new', same: 'same', 'both changed': 'both changed' } as const;
    fc.assert(
      fc.property(chain, chain, (one, two) => {
        const of = (all: string[]) => ({ past: all.slice(0, -1), present: all.at(-1)! });
        const [a, b] = [of(one), of(two)];
        const there = (chain_: typeof a) => ({ past: chain_.past, present: [chain_.present] });
        const own = (chain_: typeof a) => ({ past: chain_.past, present: [chain_.present] });
        const here = ancestryOf(own(a), there(b)).relation;
        const back = ancestryOf(own(b), there(a)).relation;
        if (here in mirrored) expect(back).toBe(mirrored[here as keyof typeof mirrored]);
        // Each has been where the other is: nobody is told to take what he has left.
        else if (a.past.includes(b.present) && b.past.includes(a.present)) expect(here).not.toBe('same');
        else expect(back).toBe(here === 'ours newer' ? 'theirs newer' : 'ours newer');
      }),
    );
  });
});
