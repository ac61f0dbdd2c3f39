import { figureValue } from '../../materials/figure';
import type { Material } from '../../materials/material';
import { requiredHlb } from '../required-hlb';

/** An oil at its mass or share; any one unit throughout. */
export interface OilLine {
  material: Material;
  mass: number;
}

/** The required HLB of an oil phase, with the spread of its sources and what it leaves out. */
export interface OilPhaseDemand {
  /** Mass-weighted mean over the oils that have a value; null when none has. */
  value: number | null;
  low: number | null;
  high: number | null;
  /** Share of the oil phase that has a value, 0 to 1. */
  covered: number;
  /** Trade names without a value. */
  unknown: string[];
}

/** The required HLB of library materials; unlike `requiredHlb`, no value at all is an answer here, not a refusal. */
export function oilPhaseDemand(oils: readonly OilLine[], type: 'o/w' | 'w/o'): OilPhaseDemand {
  const lines = oils
    .filter((oil) => oil.mass > 0)
    .map(({ material, mass }) => {
      const figure = material.figures[type === 'o/w' ? 'requiredHlbOw' : 'requiredHlbWo'];
      const [value, low, high] = [figureValue(figure), figure?.low ?? null, figure?.high ?? null];
      return { name: material.tradeName, mass, value, low, high, source: null };
    });
  const unknown = lines.filter((line) => line.value === null).map((line) => line.name);
  if (unknown.length === lines.length) return { value: null, low: null, high: null, covered: 0, unknown };
  const { worked, low, high, coveredPercent } = requiredHlb(lines, type);
  return { value: worked.value, low, high, covered: coveredPercent / 100, unknown };
}
