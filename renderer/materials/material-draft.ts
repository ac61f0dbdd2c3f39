import type { Material, MaterialContent } from '@core/materials/material';
import { materialContent } from '@core/materials/material';
import { computed, ref, shallowRef } from 'vue';
import { answer, problemOf, service, type ProblemDetails } from '../service/client';
import { useSaving } from '../shell/saving';

const DEEPEST_UNDO = 200;

/**
 * A material being edited: every change is saved as it is made, one after the other, and can be taken back.
 * What the service refuses stays on screen with the reason; the last saved state stays in the library.
 */
export function useMaterialDraft(id: string, saved: () => void) {
  const saving = useSaving();
  const stored = shallowRef<Material | null>(null);
  const content = ref<MaterialContent | null>(null);
  const problem = ref<ProblemDetails | null>(null);
  const past = shallowRef<MaterialContent[]>([]);
  const future = shallowRef<MaterialContent[]>([]);
  let queue: Promise<void> = Promise.resolve();

  async function load(): Promise<void> {
    try {
      take(await answer(service.materials[':id'].$get({ param: { id } })));
      problem.value = null;
    } catch (error) {
      problem.value = problemOf(error);
    }
  }

  function take(material: Material): void {
    stored.value = material;
    content.value = materialContent.parse(material);
  }

  async function put(): Promise<void> {
    if (!stored.value || !content.value) return;
    const json = { revision: stored.value.revision, content: content.value };
    try {
      const result = await saving.track(answer(service.materials[':id'].$put({ param: { id }, json })));
      stored.value = result;
      problem.value = null;
      saved();
    } catch (error) {
      problem.value = problemOf(error);
    }
  }

  // Changes go out one by one, so that an earlier one can never land on a later one.
  function save(): Promise<void> {
    queue = queue.then(put);
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

  function step(from: typeof past, to: typeof past): void {
    const target = from.value.at(-1);
    if (!target || !content.value) return;
    from.value = from.value.slice(0, -1);
    to.value = [...to.value, content.value];
    content.value = target;
    void save();
  }

  function fault(path: string): string | null {
    return problem.value?.fields.find((f) => f.path === `content.${path}`)?.message ?? null;
  }
  /** Problems anywhere below a path, for lists that show them together. */
  function faultsUnder(path: string): string[] {
    const under = `content.${path}`;
    return problem.value?.fields.filter((f) => f.path.startsWith(under)).map((f) => f.message) ?? [];
  }

  return {
    stored,
    content,
    problem,
    load,
    change,
    fault,
    faultsUnder,
    undo: () => step(past, future),
    redo: () => step(future, past),
    canUndo: computed(() => past.value.length > 0),
    canRedo: computed(() => future.value.length > 0),
  };
}

export type MaterialDraft = ReturnType<typeof useMaterialDraft>;
