import { changedExcept, merge } from '@core/record/merge';
import { ORDER, placeKey, placeOfPath, RECORD, valueAt, WHEREABOUTS, widened } from '@core/record/place';
import { describe, expect, it } from 'vitest';
import {
  blank,
  line,
  moveLine,
  RECIPE_SHAPE,
  withLine,
  withoutLine,
  withoutPhase,
  type Recipe,
} from './sample-record';

const base: Recipe = {
  ...blank,
  figures: { hlb: { value: 10, source: 'supplier' } },
  usage: { min: 1, max: 5 },
  phases: [
    { id: 'A', title: 'Water', lines: [line('1'), line('2'), line('3')] },
    { id: 'B', title: 'Oil', lines: [line('4')] },
  ],
  steps: [{ id: 's', says: 'Stir.' }],
};
const merged = (mine: Recipe, theirs: Recipe) => merge(base, mine, theirs, RECIPE_SHAPE);
const linesOf = (recipe: Recipe, at: number) => recipe.phases[at]?.lines.map(({ id }) => id);

describe('Two changes of one record', () => {
  it('are both kept when they are of different fields', () => {
    const { state, clashes } = merged({ ...base, name: 'Day cream' }, { ...base, notes: 'Warm slowly.' });
    expect(clashes).toEqual([]);
    expect(state).toEqual({ ...base, name: 'Day cream', notes: 'Warm slowly.' });
  });

  it('are both kept within one line, and within one object', () => {
    const mine = { ...withLine('1', { ppm: 5 })(base), usage: { min: 2, max: 5 } };
    const theirs = { ...withLine('1', { material: 'Aqua' })(base), usage: { min: 1, max: 6 } };
    const { state, clashes } = merged(mine, theirs);
    expect(clashes).toEqual([]);
    expect(state.phases[0]?.lines[0]).toEqual({ id: '1', ppm: 5, material: 'Aqua' });
    expect(state.usage).toEqual({ min: 2, max: 6 });
  });

  it('clash when they give one field two values, and then mine stands until it is decided', () => {
    const { state, clashes } = merged({ ...base, name: 'Mine' }, { ...base, name: 'Theirs' });
    expect(state.name).toBe('Mine');
    expect(clashes).toEqual([
      { place: { thing: '', field: ['name'] }, base: 'Cream', mine: 'Mine', theirs: 'Theirs' },
    ]);
  });

  it('do not mix the value of a figure with the source of another', () => {
    const mine = { ...base, figures: { hlb: { value: 11, source: 'supplier' } } };
    const theirs = { ...base, figures: { hlb: { value: 10, source: 'measured' } } };
    expect(merged(mine, theirs).clashes.map(({ place }) => place.field)).toEqual([['figures', 'hlb']]);
  });

  it('find a line again that one of them moved to another phase', () => {
    const { state, clashes } = merged(moveLine('2', 'B', 0)(base), withLine('2', { ppm: 7 })(base));
    expect(clashes).toEqual([]);
    expect(linesOf(state, 0)).toEqual(['1', '3']);
    expect(state.phases[1]?.lines[0]).toEqual(line('2', 7));
  });

  it('keep the order that one of them changed, with what the other added in its place', () => {
    const mine = { ...base, phases: base.phases.map((p) => ({ ...p, lines: p.lines.toReversed() })) };
    const theirs: Recipe = {
      ...base,
      phases: base.phases.map((p) => (p.id === 'A' ? { ...p, lines: [...p.lines, line('9')] } : p)),
    };
    expect(linesOf(merged(mine, theirs).state, 0)).toEqual(['3', '9', '2', '1']);
    expect(merged(mine, theirs).clashes).toEqual([]);
  });

  it('clash when each puts a list in another order', () => {
    const order = (ids: string[]): Recipe => ({
      ...base,
      phases: base.phases.map((p) => (p.id === 'A' ? { ...p, lines: ids.map((id) => line(id)) } : p)),
    });
    const { state, clashes } = merged(order(['2', '1', '3']), order(['3', '1', '2']));
    expect(linesOf(state, 0)).toEqual(['2', '1', '3']);
    expect(clashes[0]?.place).toEqual({ thing: 'phases#A', field: ['lines', ORDER] });
  });

  it('clash when each moves a line elsewhere', () => {
    const wide = { ...base, phases: [...base.phases, { id: 'C', title: 'Cool', lines: [] }] };
    const { state, clashes } = merge(wide, moveLine('1', 'B', 0)(wide), moveLine('1', 'C', 0)(wide));
    expect(linesOf(state, 1)).toEqual(['1', '4']);
    expect(linesOf(state, 2)).toEqual([]);
    expect(clashes.map(({ place }) => place.field)).toEqual([[WHEREABOUTS]]);
  });
});

describe('What one side removed', () => {
  it('goes when the other left it alone, with all that was in it', () => {
    const { state, clashes } = merged(withoutPhase('A')(base), { ...base, name: 'Day cream' });
    expect(clashes).toEqual([]);
    expect(state.phases.map(({ id }) => id)).toEqual(['B']);
  });

  it('clashes when the other changed it, and is whole again when theirs is taken', () => {
    const theirs = withLine('1', { ppm: 7 })(base);
    const { state, clashes } = merged(withoutPhase('A')(base), theirs);
    expect(state.phases.map(({ id }) => id)).toEqual(['B']);
    expect(clashes).toHaveLength(1);
    expect(clashes[0]?.theirs).toEqual(theirs.phases[0]);
    expect(merge(base, withoutPhase('A')(base), theirs, {}, () => 'theirs').state).toEqual(theirs);
  });

  it('keeps a line that the other moved out of it in time', () => {
    const { state } = merge(base, withoutPhase('A')(base), moveLine('1', 'B', 0)(base), {}, () => 'theirs');
    expect(state.phases.flatMap((p) => p.lines.map(({ id }) => id)).sort()).toEqual(['1', '2', '3', '4']);
  });

  it('of lists of mere values is one value', () => {
    const tagged = { ...base, tags: ['a', 'b'] };
    const { clashes } = merge(tagged, { ...tagged, tags: ['a'] }, { ...tagged, tags: ['a', 'b', 'c'] });
    expect(clashes.map(({ place }) => place.field)).toEqual([['tags']]);
  });

  it('of a list whose things have a name of their own goes by that name', () => {
    const trials = (...labels: string[]) => ({ trials: labels.map((label) => ({ label, seen: '' })) });
    const { state, clashes } = merge(
      trials('HLB 9', 'HLB 10'),
      trials('HLB 10'),
      trials('HLB 9', 'HLB 10', 'HLB 11'),
      {
        keys: { trials: 'label' },
      },
    );
    expect(clashes).toEqual([]);
    expect(state).toEqual(trials('HLB 10', 'HLB 11'));
  });
});

describe('A state with another one’s changes, but for what is held back', () => {
  const changed = { ...withLine('4', { ppm: 7 })(withoutLine('1')(base)), name: 'Day cream', notes: 'New.' };

  it('holds back a field, a line, a part or all', () => {
    const held = (thing: string, ...field: string[]) => changedExcept(base, changed, [{ thing, field }]);
    expect(held('', 'name')).toEqual({ ...changed, name: 'Cream' });
    expect(held('phases/lines#4', 'ppm')).toEqual({
      ...withoutLine('1')(base),
      name: 'Day cream',
      notes: 'New.',
    });
    expect(held('phases/lines#1')).toEqual({ ...changed, phases: withLine('4', { ppm: 7 })(base).phases });
    expect(held('phases#A')).toEqual({ ...changed, phases: withLine('4', { ppm: 7 })(base).phases });
    expect(held('', 'phases')).toEqual({ ...changed, phases: base.phases });
    expect(changedExcept(base, changed, [RECORD])).toEqual(base);
  });

  it('holds a field back wherever its line was moved', () => {
    const moved = moveLine('4', 'A', 0)(changed);
    const state = changedExcept(base, moved, [{ thing: 'phases/lines#4', field: ['ppm'] }]);
    expect(state.phases[0]?.lines[0]).toEqual(line('4'));
  });
});

describe('A place', () => {
  it('has one name, and tells its fields apart', () => {
    expect(placeKey({ thing: '', field: ['a', 'b'] })).toBe(placeKey({ thing: '', field: ['a', 'b'] }));
    expect(placeKey({ thing: '', field: ['a.b'] })).not.toBe(placeKey({ thing: '', field: ['a', 'b'] }));
  });

  it('is found from where the service says that a fault is, by index', () => {
    const at = (path: string) => placeOfPath(base, path.split('.'));
    expect(at('phases.0.lines.2.ppm')).toEqual({ thing: 'phases/lines#3', field: ['ppm'] });
    expect(at('phases.1')).toEqual({ thing: 'phases#B', field: [] });
    expect(at('phases')).toEqual({ thing: '', field: ['phases'] });
    expect(at('usage.min')).toEqual({ thing: '', field: ['usage', 'min'] });
    // The list of values is one fact: which of them is at fault says nothing once one is taken away.
    expect(at('tags.3')).toEqual({ thing: '', field: ['tags'] });
    const figure = placeOfPath(base, ['figures', 'hlb', 'value'], RECIPE_SHAPE);
    expect(figure).toEqual({ thing: '', field: ['figures', 'hlb'] });
  });

  it('gives its value, wherever its thing was moved', () => {
    const place = { thing: 'phases/lines#1', field: ['ppm'] };
    expect(valueAt(base, place)).toBe(10_000);
    expect(valueAt(moveLine('1', 'B', 0)(base), place)).toBe(10_000);
    expect(valueAt(withoutLine('1')(base), place)).toBeUndefined();
  });

  it('widens to all that is around it, and then to nothing', () => {
    const line = widened({ thing: 'phases/lines#3', field: ['ppm'] });
    expect(line).toEqual({ thing: 'phases/lines#3', field: [] });
    const part = line && widened(line);
    expect(part).toEqual({ thing: '', field: ['phases'] });
    expect(part && widened(part)).toBeNull();
    expect(widened({ thing: '', field: ['usage', 'min'] })).toEqual({ thing: '', field: ['usage'] });
  });
});
