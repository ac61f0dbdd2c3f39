import type { Material, MaterialContent } from '@core/materials/material';
import { materialContent, storedContent } from '@core/materials/material';
import { computed, ref, shallowRef } from 'vue';
import { answer, problemOf, service, type ProblemDetails } from '../service/client';
import { useKeptText } from '../shell/kept-text';
import { useSaving } from '../shell/saving';

const DEEPEST_UNDO = 200;

type Part = keyof MaterialContent;
const PARTS = Object.keys(materialContent.shape) as Part[];

/** The parts in which two states differ; a part that nobody touched is the same object in both. */
function differing(one: MaterialContent, other: MaterialContent): Part[] {
  return PARTS.filter((part) => one[part] !== other[part]);
}

/** A state with some of its parts as they are in another. */
function withParts(state: MaterialContent, parts: readonly Part[], other: MaterialContent): MaterialContent {
  return { ...state, ...Object.fromEntries(parts.map((part) => [part, other[part]])) };
}

/**
 * A material being edited: every change is saved as it is made, one after the other, and can be taken back.
 * A part that the service refuses stays on screen with the reason, and holds up none of the others.
 */
export function useMaterialDraft(id: string, saved: () => void) {
  const saving = useSaving();
  const stored = shallowRef<Material | null>(null);
  /** What stands on screen. */
  const content = shallowRef<MaterialContent | null>(null);
  const problem = ref<ProblemDetails | null>(null);
  const past = shallowRef<MaterialContent[]>([]);
  const future = shallowRef<MaterialContent[]>([]);
  /** What the library holds, as this screen sent or read it. */
  let accepted: MaterialContent | null = null;
  /** What was refused of each part; once it is put right, the part goes out again. */
  const refused = new Map<Part, unknown>();
  let queue: Promise<void> = Promise.resolve();
  const kept = useKeptText(
    { kind: 'material', id, schema: storedContent },
    () => (content.value && unsaved() ? { name: content.value.tradeName, content: content.value } : null),
    () => void save(),
  );

  async function fetched(): Promise<MaterialContent> {
    const found = await answer(service.materials[':id'].$get({ param: { id } }));
    stored.value = found;
    // What an earlier version let stand must still be opened, to be put right here.
    accepted = storedContent.parse(found);
    return accepted;
  }

  async function load(): Promise<void> {
    try {
      content.value = await fetched();
      kept.look(content.value);
      problem.value = null;
    } catch (error) {
      problem.value = problemOf(error);
    }
  }

  /** Takes what another window saved. What was changed here and not saved is one Undo away, on top of it. */
  async function loadNewer(): Promise<void> {
    const mine = content.value;
    const before = accepted;
    try {
      const newer = await fetched();
      const own = mine && before ? differing(mine, before) : [];
      past.value = mine && own.length > 0 ? [withParts(newer, own, mine)] : [];
      future.value = [];
      content.value = newer;
      refused.clear();
      problem.value = null;
      saving.dismiss();
    } catch (error) {
      problem.value = problemOf(error);
    }
  }

  /** What can go out: all that stands on screen, but for parts that were refused as they are. */
  function sendable(whole: MaterialContent, known: MaterialContent): MaterialContent {
    for (const [part, value] of refused) if (whole[part] !== value) refused.delete(part);
    return withParts(whole, [...refused.keys()], known);
  }

  async function send(state: MaterialContent): Promise<void> {
    if (!stored.value) return;
    const json = { revision: stored.value.revision, content: state };
    stored.value = await saving.track(answer(service.materials[':id'].$put({ param: { id }, json })));
    accepted = state;
    if (refused.size === 0) problem.value = null;
    // Something on screen is still not in the library.
    else saving.failed = problem.value;
    saved();
  }

  async function put(): Promise<void> {
    const whole = content.value;
    if (!whole || !accepted) return;
    // A second round sends what was not at fault in the first.
    for (let round = 1; round <= 2; round += 1) {
      const state = sendable(whole, accepted);
      if (differing(state, accepted).length === 0) return;
      try {
        return await send(state);
      } catch (error) {
        const details = problemOf(error);
        problem.value = details;
        const atFault = PARTS.filter((part) => details.fields.some(({ path }) => isWithin(path, part)));
        if (atFault.length === 0) return;
        for (const part of atFault) refused.set(part, whole[part]);
      }
    }
  }

  // Changes go out one by one, so that an earlier one can never land on a later one.
  function save(): Promise<void> {
    queue = queue.then(put).finally(kept.settle);
    return queue;
  }

  /** Changes part of the material and saves it. */
  function change(part: Partial<MaterialContent>): void {
    if (!content.value) return;
    past.value = [...past.value, content.value].slice(-DEEPEST_UNDO);
    future.value = [];
    content.value = { ...content.value, ...part };
    void save();
  }

  /** Takes up what an earlier visit could not save; what stands now is one Undo away. */
  function takeKept(): void {
    const text = kept.offered.value?.content;
    kept.dismiss();
    if (text) change(text);
  }

  function step(from: typeof past, to: typeof past): void {
    const target = from.value.at(-1);
    if (!target || !content.value) return;
    from.value = from.value.slice(0, -1);
    to.value = [...to.value, content.value];
    content.value = target;
    void save();
  }

  function unsaved(): boolean {
    return !!content.value && !!accepted && differing(content.value, accepted).length > 0;
  }

  /** Waits for what is under way; false when something on screen is not in the library then. */
  async function saveNow(): Promise<boolean> {
    await queue;
    if (unsaved()) await save();
    return !unsaved();
  }

  function fault(path: string): string | null {
    return problem.value?.fields.find((f) => f.path === `content.${path}`)?.message ?? null;
  }
  /** Problems anywhere below a path, for lists that show them together. */
  function faultsUnder(path: string): string[] {
    return problem.value?.fields.filter((f) => isWithin(f.path, path)).map((f) => f.message) ?? [];
  }

  return {
    stored,
    content,
    problem,
    load,
    loadNewer,
    change,
    saveNow,
    unsaved,
    kept,
    takeKept,
    fault,
    faultsUnder,
    undo: () => step(past, future),
    redo: () => step(future, past),
    canUndo: computed(() => past.value.length > 0),
    canRedo: computed(() => future.value.length > 0),
  };
}

function isWithin(path: string, place: string): boolean {
  return path === `content.${place}` || path.startsWith(`content.${place}.`);
}

export type MaterialDraft = ReturnType<typeof useMaterialDraft>;
