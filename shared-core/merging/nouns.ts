import type { FormulaPhase } from '../formulas/formula';
import { MATERIAL_SHAPE } from '../materials/shape';
import type { Shape } from '../record/place';
import { SERIES_SHAPE } from '../trials/shape';

type Content = Record<string, unknown>;

/** How a noun's states are merged. */
export interface Merging {
  shape: Shape;
  /** A state without what is only worked out of the rest, which both sides would seem to have changed. */
  plain(state: Content): Content;
  /** Fields that make sense only together. */
  together: readonly string[];
}

/** The share of a q.s. line is worked out of the others. */
function withoutComputedShare(content: Content): Content {
  const phases = (content.phases ?? []) as FormulaPhase[];
  return {
    ...content,
    phases: phases.map((phase) => ({
      ...phase,
      lines: phase.lines.map((line) => (line.toHundred ? { ...line, ppm: 0 } : line)),
    })),
  };
}

const PLAIN: Merging = { shape: {}, plain: (state) => state, together: [] };
const BY_KIND: Readonly<Record<string, Merging>> = {
  material: { ...PLAIN, shape: MATERIAL_SHAPE },
  formula: { ...PLAIN, plain: withoutComputedShare, together: ['phases', 'steps'] },
  'trial series': { ...PLAIN, shape: SERIES_SHAPE, together: ['trials', 'chosen'] },
};

/** How the states of a kind of record are merged. */
export function merging(kind: string): Merging {
  return BY_KIND[kind] ?? PLAIN;
}
