import type { FormulaContent } from './formula';

type Kept = readonly { id: string }[];

/** The ids of the first by those in the same places of the second; none where they have one in common. */
function byPlace(first: Kept, second: Kept): Map<string, string> {
  const known = new Set(first.map(({ id }) => id));
  if (second.some(({ id }) => known.has(id))) return new Map();
  return new Map(second.flatMap(({ id }, at) => (first[at] ? [[id, first[at].id]] : [])));
}

/**
 * A formula put beside another that it did not come from: phases and steps, which have no id in common, are then taken
 * for those in the same places, so that phase A is held against phase A. A version of the same formula stays as it is.
 */
export function alignedWith(before: FormulaContent, after: FormulaContent): FormulaContent {
  const phaseIds = byPlace(before.phases, after.phases);
  const stepIds = byPlace(before.steps, after.steps);
  if (phaseIds.size === 0 && stepIds.size === 0) return after;
  return {
    ...after,
    phases: after.phases.map((phase) => ({ ...phase, id: phaseIds.get(phase.id) ?? phase.id })),
    steps: after.steps.map((step) => ({
      ...step,
      id: stepIds.get(step.id) ?? step.id,
      phaseIds: step.phaseIds.map((id) => phaseIds.get(id) ?? id),
    })),
  };
}
