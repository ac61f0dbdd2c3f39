import { formulaContent, type FormulaContent } from '@core/formulas/formula';
import { formulaShares } from '@core/formulas/shares';
import type { Material } from '@core/materials/material';
import { computed, inject, ref, shallowReactive, shallowRef, triggerRef, type InjectionKey } from 'vue';
import { answer, problemOf, service, type ProblemDetails } from '../service/client';
import { useKeptText } from '../shell/kept-text';
import { useSaving } from '../shell/saving';
import { takeBefore } from './changed-elsewhere';
import { draftSaver } from './draft-saver';
import type { Edit } from './edits';

const MOST_STEPS_BACK = 300;

/** A formula's draft on screen: its content, its materials, undo and redo, and its saving. */
export function useFormulaDraft(id: string) {
  const saving = useSaving();
  const content = shallowRef<FormulaContent | null>(null);
  const materials = shallowReactive(new Map<string, Material>());
  const past = shallowRef<FormulaContent[]>([]);
  const future = shallowRef<FormulaContent[]>([]);
  const problem = ref<ProblemDetails | null>(null);
  const archived = ref(false);
  let revision = 0;
  let lastField: string | null = null;

  const saver = draftSaver<FormulaContent>(
    async (state) => {
      const request = { param: { id }, json: { revision, content: state } };
      try {
        const saved = await answer(service.formulas[':id'].$put(request));
        revision = saved.revision;
        problem.value = null;
      } catch (error) {
        problem.value = problemOf(error);
        throw error;
      }
    },
    (whole) => saving.track(whole).finally(() => kept.settle()),
  );
  const kept = useKeptText(
    { kind: 'formula', id, schema: formulaContent },
    () => (content.value && saver.unsaved() ? { name: content.value.name, content: content.value } : null),
    () => void saver.now(),
  );

  async function fetched(): Promise<FormulaContent> {
    const found = await answer(service.formulas[':id'].$get({ param: { id } }));
    revision = found.formula.revision;
    archived.value = found.formula.archived;
    for (const [key, material] of Object.entries(found.materials)) materials.set(key, material);
    return formulaContent.parse(found.formula);
  }

  async function load(): Promise<void> {
    content.value = await fetched();
    kept.look(content.value);
    const before = takeBefore(id);
    if (!before) return;
    for (const [key, material] of Object.entries(before.materials)) materials.set(key, material);
    past.value = [before.content];
  }

  /** Takes what another window saved. What stood here is one Undo away. */
  async function loadNewer(): Promise<void> {
    const mine = content.value;
    saver.drop();
    content.value = await fetched();
    if (mine) past.value = [...past.value, mine];
    future.value = [];
    lastField = null;
    problem.value = null;
    saving.dismiss();
  }

  function show(next: FormulaContent): void {
    content.value = next;
    saver.later(next);
  }

  /** Changes the draft. Edits of the same `field` in a row, such as key strokes, are one step of undo. */
  function edit(change: Edit, field: string | null = null): void {
    const before = content.value;
    if (!before) return;
    const after = change(before);
    if (after === before) return;
    if (field === null || field !== lastField) {
      past.value.push(before);
      if (past.value.length > MOST_STEPS_BACK) past.value.shift();
      triggerRef(past);
    }
    lastField = field;
    future.value = [];
    show(after);
  }

  function step(from: typeof past, to: typeof past): void {
    const next = from.value.at(-1);
    if (!next || !content.value) return;
    to.value = [...to.value, content.value];
    from.value = from.value.slice(0, -1);
    lastField = null;
    show(next);
  }

  /** A field was left: what it holds is saved at once, and the next edit is a step of its own. */
  function leaveField(): void {
    lastField = null;
    if (saver.unsaved()) void saver.now();
  }

  /** The material, fetched if it is not among the draft's yet. */
  async function need(materialId: string): Promise<Material> {
    const known = materials.get(materialId);
    if (known) return known;
    const found = await answer(service.materials[':id'].$get({ param: { id: materialId } }));
    materials.set(materialId, found);
    return found;
  }

  /** Takes up what an earlier visit could not save; what stands now is one Undo away. */
  async function takeKept(): Promise<void> {
    const text = kept.offered.value?.content;
    if (!text) return;
    await Promise.all(text.phases.flatMap((phase) => phase.lines.map((line) => need(line.materialId))));
    kept.dismiss();
    edit(() => text);
  }

  /** What the service said is wrong at a place of the draft, such as `name` or `line.<id>`. */
  function faultAt(path: string): string | null {
    const fields = problem.value?.fields ?? [];
    return fields.find((field) => field.path === path || field.path === `content.${path}`)?.message ?? null;
  }

  return {
    id,
    content,
    materials,
    problem,
    archived,
    shares: computed(() => formulaShares(content.value ?? { phases: [] })),
    canUndo: computed(() => past.value.length > 0),
    canRedo: computed(() => future.value.length > 0),
    undo: () => step(past, future),
    redo: () => step(future, past),
    load,
    loadNewer,
    edit,
    leaveField,
    need,
    kept,
    takeKept,
    faultAt,
    saveNow: saver.now,
    unsaved: saver.unsaved,
    stuck: () => problem.value !== null,
  };
}

export type FormulaDraft = ReturnType<typeof useFormulaDraft>;
export const DRAFT: InjectionKey<FormulaDraft> = Symbol('formula draft');

/** The draft that the screen above provides. */
export function useDraft(): FormulaDraft {
  const draft = inject(DRAFT);
  if (!draft) throw new Error('No formula draft is provided above this component.');
  return draft;
}
