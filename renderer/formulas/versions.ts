import { formulaContent, type FormulaContent, type FormulaVersion } from '@core/formulas/formula';
import type { Material } from '@core/materials/material';
import { computed, ref, shallowReactive, shallowRef, watch } from 'vue';
import { answer, problemOf, service, type InferResponseType, type ProblemDetails } from '../service/client';

export type VersionSummary = InferResponseType<
  (typeof service.formulas)[':id']['versions']['$get'],
  200
>[number];

/** The name by which the draft stands beside version ids. */
export const DRAFT_SIDE = 'draft';

interface Side {
  name: string;
  /** The draft's count of edits; null for a version, which has none. */
  revision: number | null;
  content: FormulaContent;
  materials: Record<string, Material | undefined>;
}

/** A formula's versions and its draft, each fetched when it is looked at. */
export function useVersions(formulaId: string) {
  const list = shallowRef<VersionSummary[]>([]);
  const draft = shallowRef<Side | null>(null);
  const frozen = shallowReactive(new Map<string, FormulaVersion>());
  const problem = ref<ProblemDetails | null>(null);

  async function load(): Promise<void> {
    try {
      const param = { id: formulaId };
      const [versions, current] = await Promise.all([
        answer(service.formulas[':id'].versions.$get({ param })),
        answer(service.formulas[':id'].$get({ param })),
      ]);
      list.value = versions;
      draft.value = {
        name: 'Draft',
        revision: current.formula.revision,
        content: formulaContent.parse(current.formula),
        materials: current.materials,
      };
    } catch (error) {
      problem.value = problemOf(error);
    }
  }

  async function fetchVersion(versionId: string): Promise<void> {
    if (versionId === DRAFT_SIDE || frozen.has(versionId)) return;
    try {
      const version = await answer(service.formulas.versions[':versionId'].$get({ param: { versionId } }));
      frozen.set(versionId, version);
    } catch (error) {
      problem.value = problemOf(error);
    }
  }

  /** One side, as a reactive value that is there once it is fetched. */
  function side(id: () => string | null) {
    watch(id, (wanted) => wanted && void fetchVersion(wanted), { immediate: true });
    return computed<Side | null>(() => {
      const wanted = id();
      if (wanted === DRAFT_SIDE) return draft.value;
      const version = frozen.get(wanted ?? '');
      return version
        ? {
            name: `Version ${version.number}`,
            revision: null,
            content: version.content,
            materials: version.materials,
          }
        : null;
    });
  }

  return { list, draft, problem, load, side };
}
