import type { Material } from '@core/materials/material';
import { ref, shallowReactive, watch } from 'vue';
import { answer, problemOf, service, type ProblemDetails } from '../service/client';

/** The library's materials that a calculation reads, fetched as they are picked. */
export function usePickedMaterials(ids: () => readonly string[]) {
  const library = shallowReactive(new Map<string, Material>());
  /** Ids that were asked for and answered, found or not. */
  const asked = shallowReactive(new Set<string>());
  const problem = ref<ProblemDetails | null>(null);

  async function fetchOne(id: string): Promise<void> {
    try {
      library.set(id, await answer(service.materials[':id'].whole.$get({ param: { id } })));
    } catch (error) {
      const details = problemOf(error);
      if (details.code !== 'not-found') problem.value = details;
    }
    asked.add(id);
  }

  watch(ids, (now) => now.filter((id) => !asked.has(id)).forEach((id) => void fetchOne(id)), {
    immediate: true,
  });

  return {
    library,
    problem,
    refresh: fetchOne,
    /** False while one of them is on its way. */
    ready: () => ids().every((id) => asked.has(id)),
  };
}

/** One material by id, for taking its figures over. @throws ServiceProblem */
export function fetchMaterial(id: string): Promise<Material> {
  return answer(service.materials[':id'].whole.$get({ param: { id } }));
}
