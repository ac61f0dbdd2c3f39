import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { draftOf, FakeLibrary } from './fake-library';
import { blank, line, moveLine, withLine, withoutLine, type Recipe } from './sample-record';

const start: Recipe = {
  ...blank,
  phases: [
    { id: 'A', title: 'Water', lines: [line('1', 10), line('2', 20)] },
    { id: 'B', title: 'Oil', lines: [line('3', 30)] },
  ],
};
const named =
  (name: string) =>
  (recipe: Recipe): Recipe => ({ ...recipe, name });
const noted =
  (notes: string) =>
  (recipe: Recipe): Recipe => ({ ...recipe, notes });

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());
const pause = () => vi.advanceTimersByTimeAsync(400);

describe('Saving', () => {
  it('goes out once typing pauses, and is told from the first key until it is acknowledged', async () => {
    const library = new FakeLibrary(start);
    const { draft, rounds } = await draftOf(library);
    draft.edit(named('D'), 'name');
    draft.edit(named('Da'), 'name');
    expect(rounds).toEqual(['open']);
    expect(draft.unsaved()).toBe(true);
    await pause();
    expect(library.taken.map(({ name }) => name)).toEqual(['Da']);
    expect(rounds).toEqual(['saved']);
  });

  it('sends what was typed while an answer was under way, one after the other', async () => {
    const library = new FakeLibrary(start);
    const { draft, rounds } = await draftOf(library);
    library.isQuick = false;
    draft.edit(named('First'));
    await pause();
    draft.edit(named('Second'));
    await pause();
    expect(library.waiting).toHaveLength(1);
    library.next();
    await pause();
    expect(rounds).toEqual(['open']);
    library.next();
    await pause();
    expect(library.taken.map(({ name }) => name)).toEqual(['First', 'Second']);
    expect(rounds).toEqual(['saved']);
  });

  it('does not take the space that is being typed away, though the library tidies it', async () => {
    const library = new FakeLibrary(start);
    const { draft } = await draftOf(library);
    draft.edit(named('Day '));
    await pause();
    library.changeElsewhere(noted('New.'));
    await draft.refresh(library.held.revision);
    expect(draft.content.value).toMatchObject({ name: 'Day ', notes: 'New.' });
    expect(draft.clashes.value).toEqual([]);
    draft.edit(named('Day cream'));
    await pause();
    expect(library.held.content).toMatchObject({ name: 'Day cream', notes: 'New.' });
  });

  it('tells when nothing answers, keeps what was typed, and sends it when asked again', async () => {
    const library = new FakeLibrary(start);
    const { draft, rounds } = await draftOf(library);
    library.isSilent = true;
    draft.edit(named('Day'));
    await pause();
    expect(rounds).toEqual(['not saved']);
    expect(draft.problem.value?.code).toBe('internal');
    library.isSilent = false;
    expect(await draft.saveNow()).toBe(true);
    expect(rounds).toEqual(['not saved', 'saved']);
    expect(draft.problem.value).toBeNull();
  });

  it('tells that it was deleted in another window, and keeps what was typed on screen', async () => {
    const library = new FakeLibrary(start);
    const { draft } = await draftOf(library);
    draft.edit(named('Day'));
    library.isGone = true;
    await draft.refresh(null);
    expect(draft.problem.value?.code).toBe('not-found');
    expect(draft.content.value?.name).toBe('Day');
  });
});

describe('What is refused', () => {
  it('stays with its reason, and holds up nothing else', async () => {
    const library = new FakeLibrary(start);
    const { draft, rounds } = await draftOf(library);
    draft.edit(named(' '));
    draft.edit(noted('New.'));
    await pause();
    expect(library.held.content).toMatchObject({ name: 'Cream', notes: 'New.' });
    expect(draft.content.value?.name).toBe(' ');
    expect(draft.faultAt('name')).toBe('Give the name.');
    expect(rounds).toEqual(['not saved']);
    draft.edit(named('Day'));
    await pause();
    expect(draft.problem.value).toBeNull();
    expect(library.held.content.name).toBe('Day');
  });

  it('keeps each reason when more is refused later', async () => {
    const { draft } = await draftOf(new FakeLibrary(start));
    draft.edit(named(''));
    await pause();
    draft.edit(withLine('1', { ppm: 101 }));
    await pause();
    expect(draft.faultAt('name')).toBe('Give the name.');
    expect(draft.faultAt('phases.0.lines.0.ppm')).toBe('At most 100.');
    expect(draft.faultsUnder('phases')).toEqual(['At most 100.']);
  });

  it('is found on its line wherever that is moved, and holds back the line when it was added so', async () => {
    const library = new FakeLibrary(start);
    const { draft } = await draftOf(library);
    draft.edit(withLine('1', { ppm: 101 }));
    await pause();
    draft.edit(moveLine('1', 'B', 1));
    await pause();
    expect(draft.faultAt('phases.1.lines.1.ppm')).toBe('At most 100.');
    expect(library.held.content.phases[1]?.lines).toEqual([line('3', 30), line('1', 10)]);
    draft.edit((recipe) => ({
      ...recipe,
      phases: [...recipe.phases, { id: 'C', title: '', lines: [line('9', 500)] }],
    }));
    await pause();
    expect(library.held.content.phases[2]?.lines ?? []).toEqual([]);
    expect(draft.faultAt('phases.2.lines.0.ppm')).toBe('At most 100.');
  });

  it('as a list of values is held back whole', async () => {
    const library = new FakeLibrary(start);
    const { draft } = await draftOf(library);
    draft.edit((recipe) => ({ ...recipe, tags: ['a', 'b', 'c'], notes: 'New.' }));
    await pause();
    expect(library.held.content).toMatchObject({ tags: [], notes: 'New.' });
    expect(draft.faultAt('tags.2')).toBe('Two tags at most.');
    expect(draft.faultAt('tags.1')).toBeNull();
  });
});

describe('What another window saved', () => {
  it('is taken in silence while nothing was changed here', async () => {
    const library = new FakeLibrary(start);
    const { draft, rounds } = await draftOf(library);
    library.changeElsewhere(named('Theirs'));
    await draft.refresh(2);
    expect(draft.content.value?.name).toBe('Theirs');
    expect([draft.canUndo.value, rounds]).toEqual([false, []]);
  });

  it('is not asked for when it is this window’s own', async () => {
    const library = new FakeLibrary(start);
    const { draft } = await draftOf(library);
    draft.edit(named('Mine'));
    await pause();
    library.isQuick = false;
    await draft.refresh(2);
    expect(library.waiting).toEqual([]);
  });

  it('is merged field by field with what is being typed', async () => {
    const library = new FakeLibrary(start);
    const { draft, rounds } = await draftOf(library);
    library.changeElsewhere((recipe) => withLine('1', { material: 'Aqua' })(noted('Theirs')(recipe)));
    draft.edit(withLine('1', { ppm: 11 }));
    await pause();
    expect(draft.clashes.value).toEqual([]);
    expect(library.held.content.notes).toBe('Theirs');
    expect(library.held.content.phases[0]?.lines[0]).toEqual({ id: '1', ppm: 11, material: 'Aqua' });
    expect(draft.content.value).toEqual(library.held.content);
    expect(rounds).toEqual(['saved']);
  });

  it('asks about the same field, shows mine, leaves theirs in the library, and saves the rest', async () => {
    const library = new FakeLibrary(start);
    const { draft, rounds } = await draftOf(library);
    library.changeElsewhere(named('Theirs'));
    draft.edit((recipe) => noted('Mine too')(named('Mine')(recipe)));
    await pause();
    expect(draft.clashes.value).toMatchObject([{ base: 'Cream', mine: 'Mine', theirs: 'Theirs' }]);
    expect(draft.content.value?.name).toBe('Mine');
    expect(library.held.content).toMatchObject({ name: 'Theirs', notes: 'Mine too' });
    expect([draft.stuck(), rounds]).toEqual([true, ['not saved']]);
  });

  it.each([
    ['mine', 'Mine'],
    ['theirs', 'Theirs'],
  ] as const)('is settled by keeping %s', async (side, name) => {
    const library = new FakeLibrary(start);
    const { draft } = await draftOf(library);
    library.changeElsewhere(named('Theirs'));
    draft.edit(named('Mine'));
    await pause();
    const place = draft.clashes.value[0]?.place;
    if (place) draft.settle(place, side);
    await pause();
    expect(draft.clashes.value).toEqual([]);
    expect([draft.content.value?.name, library.held.content.name]).toEqual([name, name]);
    expect(draft.stuck()).toBe(false);
  });

  it('taken in place of mine is one Undo away', async () => {
    const library = new FakeLibrary(start);
    const { draft } = await draftOf(library);
    library.changeElsewhere(named('Theirs'));
    draft.edit(named('Mine'));
    await pause();
    const place = draft.clashes.value[0]?.place;
    if (place) draft.settle(place, 'theirs');
    draft.undo();
    await pause();
    expect(library.held.content.name).toBe('Mine');
  });

  it('asks no more once mine says the same, and asks anew when theirs changes again', async () => {
    const library = new FakeLibrary(start);
    const { draft } = await draftOf(library);
    library.changeElsewhere(named('Theirs'));
    draft.edit(named('Mine'));
    await pause();
    library.changeElsewhere(named('Theirs again'));
    await draft.refresh(library.held.revision);
    expect(draft.clashes.value).toMatchObject([{ mine: 'Mine', theirs: 'Theirs again' }]);
    draft.edit(named('Theirs again'));
    await pause();
    expect([draft.clashes.value, draft.unsaved()]).toEqual([[], false]);
  });

  it('asks about a line that it removed and that was changed here', async () => {
    const library = new FakeLibrary(start);
    const { draft } = await draftOf(library);
    library.changeElsewhere(withoutLine('1'));
    draft.edit(withLine('1', { ppm: 99 }));
    await pause();
    expect(draft.clashes.value).toMatchObject([{ mine: line('1', 99), theirs: undefined }]);
    const place = draft.clashes.value[0]?.place;
    if (place) draft.settle(place, 'mine');
    await pause();
    expect(library.held.content.phases[0]?.lines[0]).toEqual(line('1', 99));
  });

  it('is told of when it never ends', async () => {
    const library = new FakeLibrary(start);
    const { draft } = await draftOf(library);
    const write = library.write.bind(library);
    library.write = (state, over) => {
      library.changeElsewhere((recipe) => ({ ...recipe, tags: [`${library.held.revision}`] }));
      return write(state, over);
    };
    draft.edit(named('Mine'));
    await pause();
    expect(draft.problem.value?.title).toContain('keeps being changed in another window');
    expect(draft.content.value?.name).toBe('Mine');
  });
});

describe('Undo', () => {
  it('takes key strokes of one field back together, and a left field begins anew', async () => {
    const { draft } = await draftOf(new FakeLibrary(start));
    draft.edit(named('D'), 'name');
    draft.edit(named('Da'), 'name');
    draft.leaveField();
    draft.edit(named('Day'), 'name');
    draft.undo();
    expect(draft.content.value?.name).toBe('Da');
    draft.undo();
    expect(draft.content.value?.name).toBe('Cream');
    draft.redo();
    draft.redo();
    expect(draft.content.value?.name).toBe('Day');
  });

  it('leaves what another window changed meanwhile', async () => {
    const library = new FakeLibrary(start);
    const { draft } = await draftOf(library);
    draft.edit(named('Mine'), 'name');
    await pause();
    library.changeElsewhere(noted('Theirs'));
    await draft.refresh(null);
    draft.edit(named('Mine still'), 'name');
    draft.undo();
    draft.undo();
    await pause();
    expect(library.held.content).toMatchObject({ name: 'Cream', notes: 'Theirs' });
    expect(draft.canUndo.value).toBe(false);
  });
});

describe('Text that an earlier visit could not save', () => {
  it('goes on top of what stands now, by field, and asks where both changed one', async () => {
    const library = new FakeLibrary({ ...start, notes: 'Newer.' });
    const { draft } = await draftOf(library);
    draft.adopt({ ...start, name: 'Typed then' }, start);
    expect(draft.clashes.value).toEqual([]);
    await pause();
    expect(library.held.content).toMatchObject({ name: 'Typed then', notes: 'Newer.' });
    draft.adopt({ ...start, notes: 'Typed then too' }, start);
    expect(draft.clashes.value).toMatchObject([{ mine: 'Typed then too', theirs: 'Newer.' }]);
  });
});
