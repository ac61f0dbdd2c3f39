import type { Material } from '@core/materials/material';
import { ref, shallowReactive } from 'vue';
import { isOfAll, onChange } from '../record/changes';
import { answer, problemOf, service, type ProblemDetails } from '../service/client';

/**
 * The materials that lines on the bench name, as the library has them now.
 * @param idsOn the ids that stand on the bench, repeated or not
 */
export function useBenchMaterials(idsOn: () => readonly string[]) {
  const materials = shallowReactive(new Map<string, Material>());
  const gone = shallowReactive(new Set<string>());
  const problem = ref<ProblemDetails | null>(null);

  async function fetchOne(id: string): Promise<void> {
    try {
      materials.set(id, await answer(service.materials[':id'].whole.$get({ param: { id } })));
      gone.delete(id);
    } catch (error) {
      const details = problemOf(error);
      if (details.code === 'not-found') gone.add(id);
      else problem.value = details;
    }
  }

  /** Fetches the materials that are not known yet. */
  async function need(): Promise<void> {
    const missing = new Set(idsOn().filter((id) => !materials.has(id) && !gone.has(id)));
    await Promise.all([...missing].map(fetchOne));
  }

  /** Takes materials that another answer brought along. */
  function know(known: Iterable<Material>): void {
    for (const material of known) materials.set(material.id, material);
  }

  /** Fetches every material anew: they may have been edited elsewhere. */
  async function refresh(): Promise<void> {
    problem.value = null;
    gone.clear();
    await Promise.all([...new Set(idsOn())].map(fetchOne));
  }

  /** Knows none any more: another library is open. */
  function forget(): void {
    materials.clear();
    gone.clear();
  }

  onChange((change) => {
    if (isOfAll(change)) void refresh();
    else if (change.kind === 'material' && idsOn().includes(change.id)) void fetchOne(change.id);
  });
  return { materials, gone, problem, need, know, refresh, forget };
}
