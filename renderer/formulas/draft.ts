import { formulaContent, type FormulaContent } from '@core/formulas/formula';
import { formulaShares } from '@core/formulas/shares';
import type { Material } from '@core/materials/material';
import { RECORD, type Place } from '@core/record/place';
import { computed, inject, ref, shallowReactive, type InjectionKey } from 'vue';
import { isOfAll, onChange } from '../record/changes';
import { useDraft as useRecordDraft } from '../record/use-draft';
import { answer, service } from '../service/client';
import { takeBefore } from './changed-elsewhere';
import { formulaWords } from './formula-words';

/** The materials that a formula's lines name, as they are now. */
function useMaterials() {
  const materials = shallowReactive(new Map<string, Material>());
  const fetched = async (id: string): Promise<Material> => {
    const found = await answer(service.materials[':id'].whole.$get({ param: { id } }));
    materials.set(id, found);
    return found;
  };
  onChange((change) => {
    const changed = isOfAll(change) ? [...materials.keys()] : change.kind === 'material' ? [change.id] : [];
    for (const id of changed) if (materials.has(id)) void fetched(id).catch(() => void materials.delete(id));
  });
  return {
    materials,
    /** The material, fetched if it is not among the draft's yet. */
    need: async (id: string): Promise<Material> => materials.get(id) ?? fetched(id),
    take(known: Readonly<Record<string, Material>>): void {
      for (const [key, material] of Object.entries(known)) materials.set(key, material);
    },
  };
}

/** A line that names a material no longer there is told by its own name, not by where it stands. */
function placeOfFault(path: string): Place {
  const line = /^line\.(.+)$/.exec(path)?.[1];
  return line ? { thing: `phases/lines#${line}`, field: ['materialId'] } : RECORD;
}

/** A formula's draft on screen, with its materials. */
export function useFormulaDraft(id: string) {
  const archived = ref(false);
  const { materials, need, take } = useMaterials();
  const param = { id };
  const { draft, kept, load, takeKept } = useRecordDraft<FormulaContent>({
    kind: 'formula',
    id,
    schema: formulaContent,
    shape: {},
    nameOf: ({ name }) => name,
    placeOfFault,
    async read() {
      const found = await answer(service.formulas[':id'].$get({ param }));
      archived.value = found.formula.archived;
      take(found.materials);
      return { revision: found.formula.revision, content: formulaContent.parse(found.formula) };
    },
    async write(content, { revision }) {
      const saved = await answer(service.formulas[':id'].$put({ param, json: { revision, content } }));
      return { revision: saved.revision, content: formulaContent.parse(saved) };
    },
  });
  const { content } = draft;

  const words = formulaWords(content, (materialId) => materials.get(materialId)?.tradeName);

  return {
    id,
    draft,
    words,
    content,
    materials,
    archived,
    need,
    kept,
    problem: draft.problem,
    canUndo: draft.canUndo,
    canRedo: draft.canRedo,
    shares: computed(() => formulaShares(content.value ?? { phases: [] })),
    async load(): Promise<void> {
      await load();
      const before = takeBefore(id);
      if (!before) return;
      take(before.materials);
      draft.remember(before.content);
    },
    async takeKept(): Promise<void> {
      const text = kept.offered.value?.content;
      const ids = text?.phases.flatMap((phase) => phase.lines.map((line) => line.materialId)) ?? [];
      await Promise.all(ids.map(need));
      takeKept();
    },
    edit: draft.edit.bind(draft),
    undo: () => draft.undo(),
    redo: () => draft.redo(),
    leaveField: () => draft.leaveField(),
    /** What the service said is wrong at a place of the draft, such as `name` or `line.<id>`. */
    faultAt: (path: string) => draft.faultAt(path),
    saveNow: () => draft.saveNow(),
    unsaved: () => draft.unsaved(),
    stuck: () => draft.stuck(),
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
