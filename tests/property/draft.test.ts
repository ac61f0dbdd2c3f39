import { ORDER, valueAt, WHEREABOUTS } from '@core/record/place';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { draftOf, FakeLibrary } from '../unit/record/fake-library';
import { RECIPE_SHAPE, someEdit, someRecipe, type Edit } from '../unit/record/sample-record';

beforeAll(() => void vi.useFakeTimers());
afterAll(() => void vi.useRealTimers());

type Act =
  | { is: 'edit' | 'elsewhere'; edit: Edit }
  | { is: 'answer' | 'pause' | 'tell' | 'undo' | 'redo' | 'silent' | 'answers' | 'leave' }
  | { is: 'settle'; side: 'mine' | 'theirs' };

const refusable: fc.Arbitrary<Edit> = fc.oneof(
  fc.constant<Edit>((recipe) => ({ ...recipe, name: '' })),
  fc.constant<Edit>((recipe) => ({ ...recipe, tags: ['a', 'b', 'c'] })),
);
const act: fc.Arbitrary<Act> = fc.oneof(
  { weight: 5, arbitrary: fc.oneof(someEdit('m'), refusable).map((edit): Act => ({ is: 'edit', edit })) },
  { weight: 3, arbitrary: someEdit('t').map((edit): Act => ({ is: 'elsewhere', edit })) },
  { weight: 4, arbitrary: fc.constant<Act>({ is: 'answer' }) },
  { weight: 3, arbitrary: fc.constant<Act>({ is: 'pause' }) },
  fc.constantFrom<Act>(
    { is: 'tell' },
    { is: 'undo' },
    { is: 'redo' },
    { is: 'silent' },
    { is: 'answers' },
    { is: 'leave' },
    { is: 'settle', side: 'mine' },
    { is: 'settle', side: 'theirs' },
  ),
);

type Opened = Awaited<ReturnType<typeof draftOf>>;

async function perform(one: Act, library: FakeLibrary, { draft }: Opened): Promise<void> {
  if (one.is === 'edit') draft.edit(one.edit, 'field');
  else if (one.is === 'elsewhere') library.changeElsewhere(one.edit);
  else if (one.is === 'answer') library.next();
  else if (one.is === 'pause') await vi.advanceTimersByTimeAsync(350);
  else if (one.is === 'tell') void draft.refresh(library.held.revision);
  else if (one.is === 'undo') draft.undo();
  else if (one.is === 'redo') draft.redo();
  else if (one.is === 'leave') draft.leaveField();
  else if (one.is === 'silent') library.isSilent = true;
  else if (one.is === 'answers') library.isSilent = false;
  else if (one.is === 'settle') {
    const place = draft.clashes.value[0]?.place;
    if (place) draft.settle(place, one.side);
  }
  await vi.advanceTimersByTimeAsync(0);
}

/** Whatever is not in the library is on its way, or the maker is told of it. */
function expectNothingSilent(library: FakeLibrary, { draft, rounds }: Opened): void {
  if (!draft.unsaved()) return;
  const isWaiting = rounds.includes('open') || library.waiting.length > 0;
  expect(isWaiting || draft.stuck(), 'waiting or told').toBe(true);
}

async function settleAll(library: FakeLibrary, { draft }: Opened): Promise<void> {
  library.isQuick = true;
  library.isSilent = false;
  while (library.waiting.length > 0) {
    library.next();
    await vi.advanceTimersByTimeAsync(0);
  }
  await vi.advanceTimersByTimeAsync(350);
  await draft.refresh(null);
  await draft.saveNow();
  await vi.advanceTimersByTimeAsync(350);
}

describe('Whatever the order of edits, answers, refusals and conflicts', () => {
  it('what stands on screen is acknowledged, waiting, or told', async () => {
    await fc.assert(
      fc.asyncProperty(someRecipe, fc.array(act, { maxLength: 25 }), async (base, acts) => {
        const library = new FakeLibrary(base);
        const opened = await draftOf(library);
        library.isQuick = false;
        for (const one of acts) {
          await perform(one, library, opened);
          expectNothingSilent(library, opened);
        }
        await settleAll(library, opened);
        const { draft, rounds } = opened;
        expect(rounds).not.toContain('open');
        // At rest: the screen is the library, but for what was refused or is asked about.
        const { content, clashes } = draft;
        if (!content.value) throw new Error('It was read.');
        if (!draft.stuck())
          expect({ ...content.value, name: content.value.name.trim() }).toEqual(library.held.content);
        // What is asked about is not decided in the library either: it keeps theirs.
        for (const { place, theirs } of clashes.value)
          if (!place.field.some((step) => step === ORDER || step === WHEREABOUTS))
            expect(valueAt(library.held.content, place, RECIPE_SHAPE)).toEqual(theirs);
      }),
      { numRuns: 300 },
    );
  });
});
