import { figureValue } from '../../materials/figure';
import type { Material } from '../../materials/material';

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

interface Known {
  mass: number;
  value: number;
  low: number;
  high: number;
}

function known(line: OilLine, type: 'o/w' | 'w/o'): Known | null {
  const figure = line.material.figures[type === 'o/w' ? 'requiredHlbOw' : 'requiredHlbWo'];
  const value = figureValue(figure);
  if (value === null || line.mass <= 0) return null;
  return { mass: line.mass, value, low: figure?.low ?? value, high: figure?.high ?? value };
}

/**
 * The required HLB of the oils that have one: the mass-weighted mean (Griffin 1949), its ends the means of the
 * sources' lower and upper ends. What has no value is named, never counted as zero.
 */
export function oilPhaseDemand(oils: readonly OilLine[], type: 'o/w' | 'w/o'): OilPhaseDemand {
  const parts = oils.map((line) => known(line, type)).filter((part) => part !== null);
  const unknown = oils.filter((line) => known(line, type) === null).map((line) => line.material.tradeName);
  const mass = parts.reduce((sum, part) => sum + part.mass, 0);
  const whole = oils.reduce((sum, line) => sum + Math.max(line.mass, 0), 0);
  if (mass <= 0) return { value: null, low: null, high: null, covered: 0, unknown };
  const mean = (end: 'value' | 'low' | 'high') =>
    parts.reduce((sum, part) => sum + part.mass * part[end], 0) / mass;
  return { value: mean('value'), low: mean('low'), high: mean('high'), covered: mass / whole, unknown };
}
