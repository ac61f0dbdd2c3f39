import { changedExcept, merge, type Clash } from '@core/record/merge';
import { placeKey, RECORD } from '@core/record/place';
import { isPlainObject } from '@core/record/same';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  after,
  RECIPE_SHAPE,
  someEdits,
  someRecipe,
  withLine,
  withoutLine,
  type Edit,
  type Recipe,
} from '../unit/record/sample-record';

const RUNS = { numRuns: 2_000 };
const both = fc.record({ base: someRecipe, my: someEdits('m'), their: someEdits('t') });
const sides = both.map(({ base, my, their }) => ({
  base,
  mine: after(base, my),
  theirs: after(base, their),
}));
const bySide = (clashes: Clash[]) =>
  clashes
    .map(({ place, base, mine, theirs }) => JSON.stringify([placeKey(place), base, mine, theirs]))
    .sort();

/** Every single value of a state, named by the thing that it belongs to. */
function values(state: unknown, thing = '', path = ''): [string, unknown][] {
  if (Array.isArray(state) && state.every((item) => isPlainObject(item) && 'id' in item))
    return state.flatMap((item: { id: string }) => values(item, item.id));
  if (!isPlainObject(state)) return [[`${thing}.${path}`, JSON.stringify(state)]];
  return Object.entries(state).flatMap(([key, value]) => values(value, thing, `${path}/${key}`));
}

/** What one side entered: values that the base does not have at their place. */
function entered(base: Recipe, side: Recipe): [string, unknown][] {
  const before = new Map(values(base));
  return values(side).filter(([name, value]) => before.get(name) !== value);
}

describe('Merging over the last common state', () => {
  it('gives theirs where nothing was changed here, and mine where nothing was changed there', () => {
    fc.assert(
      fc.property(sides, ({ base, mine, theirs }) => {
        expect(merge(base, base, theirs, RECIPE_SHAPE)).toEqual({ state: theirs, clashes: [] });
        expect(merge(base, mine, base, RECIPE_SHAPE)).toEqual({ state: mine, clashes: [] });
        expect(merge(base, mine, mine, RECIPE_SHAPE)).toEqual({ state: mine, clashes: [] });
      }),
      RUNS,
    );
  });

  it('is the same seen from either side', () => {
    fc.assert(
      fc.property(sides, ({ base, mine, theirs }) => {
        const one = merge(base, mine, theirs, RECIPE_SHAPE);
        const other = merge(base, theirs, mine, RECIPE_SHAPE, () => 'theirs');
        expect(other.state).toEqual(one.state);
        expect(
          bySide(other.clashes.map((clash) => ({ ...clash, mine: clash.theirs, theirs: clash.mine }))),
        ).toEqual(bySide(one.clashes));
      }),
      RUNS,
    );
  });

  it('lets nothing that either side entered disappear: it stands in the state, or in a clash', () => {
    fc.assert(
      fc.property(sides, ({ base, mine, theirs }) => {
        const { state, clashes } = merge(base, mine, theirs, RECIPE_SHAPE);
        const told = JSON.stringify(clashes);
        const stands = new Set(values(state).map(([name, value]) => `${name}=${String(value)}`));
        for (const [name, value] of [...entered(base, mine), ...entered(base, theirs)]) {
          const isTold = told.includes(String(value)) && clashes.length > 0;
          expect(stands.has(`${name}=${String(value)}`) || isTold, `${name} = ${String(value)}`).toBe(true);
        }
      }),
      RUNS,
    );
  });

  it('never has one thing twice', () => {
    fc.assert(
      fc.property(sides, ({ base, mine, theirs }) => {
        for (const side of ['mine', 'theirs'] as const) {
          const { state } = merge(base, mine, theirs, RECIPE_SHAPE, () => side);
          const ids = [
            ...state.phases.flatMap((p) => [p.id, ...p.lines.map((l) => l.id)]),
            ...state.steps.map((s) => s.id),
          ];
          expect(new Set(ids).size).toBe(ids.length);
        }
      }),
      RUNS,
    );
  });

  it('merges nothing more a second time', () => {
    fc.assert(
      fc.property(sides, ({ base, mine, theirs }) => {
        const { state, clashes } = merge(base, mine, theirs, RECIPE_SHAPE);
        fc.pre(clashes.length === 0);
        expect(merge(theirs, state, theirs, RECIPE_SHAPE)).toEqual({ state, clashes: [] });
      }),
      RUNS,
    );
  });

  it('is doing both sides’ changes, in either order, where they touch different things', () => {
    const lineEdit = (parity: number): fc.Arbitrary<Edit> => {
      const id = fc.integer({ min: 0, max: 4 }).map((n) => `l${2 * n + parity}`);
      return fc.oneof(
        fc.tuple(id, fc.integer({ min: 0, max: 9 })).map(([name, ppm]) => withLine(name, { ppm })),
        id.map(withoutLine),
        fc.string().map(
          (text): Edit =>
            (recipe) =>
              parity ? { ...recipe, name: text } : { ...recipe, notes: text },
        ),
      );
    };
    const edits = (parity: number) => fc.array(lineEdit(parity), { maxLength: 4 });
    fc.assert(
      fc.property(someRecipe, edits(0), edits(1), (base, my, their) => {
        const merged = merge(base, after(base, my), after(base, their), RECIPE_SHAPE);
        expect(merged.clashes).toEqual([]);
        expect(merged.state).toEqual(after(after(base, my), their));
        expect(merged.state).toEqual(after(after(base, their), my));
      }),
      RUNS,
    );
  });
});

describe('Holding changes back', () => {
  it('of nothing gives all of them, of everything none', () => {
    fc.assert(
      fc.property(sides, ({ base, mine }) => {
        expect(changedExcept(base, mine, [], RECIPE_SHAPE)).toEqual(mine);
        expect(changedExcept(base, mine, [RECORD], RECIPE_SHAPE)).toEqual(base);
      }),
      RUNS,
    );
  });

  it('at the clashes, and then letting them go, ends where preferring one side does', () => {
    fc.assert(
      fc.property(sides, ({ base, mine, theirs }) => {
        const { state, clashes } = merge(base, mine, theirs, RECIPE_SHAPE);
        const held = clashes.map(({ place }) => place);
        // What clashes is held back, so that the library keeps theirs there until it is decided.
        const sent = changedExcept(theirs, state, held, RECIPE_SHAPE);
        for (const { place, theirs: value } of clashes)
          if (place.thing === '' && place.field.length === 1)
            expect(sent[place.field[0] as keyof Recipe]).toEqual(value);
        expect(changedExcept(sent, state, [], RECIPE_SHAPE)).toEqual(state);
      }),
      RUNS,
    );
  });
});
