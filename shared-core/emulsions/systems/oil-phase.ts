import { figureValue } from '../../materials/figure';
import type { Material } from '../../materials/material';
import { isEmulsifier } from '../conflicts/recognise';
import type { HlbBand } from '../hlb-band';
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

/**
 * A line that has to be emulsified: it has a required HLB, or is an emollient of the oil phase, and is no emulsifier.
 * Fatty alcohol counts, wherever it stands: its required HLB moves the mean. The one rule for bench, ranking and checks.
 */
export function isOil(material: Material): boolean {
  if (isEmulsifier(material)) return false;
  const { requiredHlbOw, requiredHlbWo } = material.figures;
  if (requiredHlbOw || requiredHlbWo) return true;
  return material.functions.includes('emollient') && material.phaseOfUse === 'oil';
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

/** The band of a demand; null where no oil has a value. */
export function demandBand({ value, low, high }: OilPhaseDemand): HlbBand | null {
  return value === null ? null : { value, low: low ?? value, high: high ?? value };
}

/** Below this an o/w system by HLB alone is in doubt. Griffin: o/w from about 8. */
const LOWEST_OW_TARGET = 8;

/** What to say of a target that lies where HLB serves the type badly; nothing where it does not. */
export function targetCautions(target: number | null, type: 'o/w' | 'w/o' | 'cationic o/w'): string[] {
  if (target === null || type === 'w/o' || target >= LOWEST_OW_TARGET) return [];
  return [
    `A target of HLB ${target.toFixed(1)} lies below 8, where Griffin’s scale ends for o/w: seed oils and silicones have a low required HLB. Take at least one emulsifier that disperses in water (HLB 10 or more, or a charge), and let trials around the ratio decide.`,
  ];
}
