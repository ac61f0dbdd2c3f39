import { FORMULA_TARGETS } from './formula-targets';
import { LIMIT_TARGETS } from './limit-targets';
import { MATERIAL_TARGETS } from './material-targets';
import type { Subject } from './subjects';
import type { Target } from './target';

const TARGETS: Readonly<Record<Subject, readonly Target[]>> = {
  materials: MATERIAL_TARGETS,
  formulas: FORMULA_TARGETS,
  limits: LIMIT_TARGETS,
};
const BY_KEY = new Map(
  Object.values(TARGETS)
    .flat()
    .map((target) => [target.key, target]),
);

/** Everything that a table of these can fill. */
export const targetsOf = (subject: Subject): readonly Target[] => TARGETS[subject];

/** What a key fills. @throws Error for a key that fills nothing: a fault of ours */
export function targetOf(key: string): Target {
  const target = BY_KEY.get(key);
  if (!target) throw new Error(`Nothing that a table fills is called ${key}.`);
  return target;
}

export const isTarget = (key: string): boolean => BY_KEY.has(key);
