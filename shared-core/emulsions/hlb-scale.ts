import { FIGURE_KINDS } from '../materials/figure';
import { between } from '../working/inputs';
import type { Source } from '../working/working';
import { GRIFFIN_1949 } from './sources';

/** An HLB within the bounds of a material's figure (Griffin's scale ends at 20, Davies' at 40), else a `Problem`. */
export function hlbValue(value: number, what: string): number {
  return between(value, FIGURE_KINDS.hlb.min, FIGURE_KINDS.hlb.max, what);
}

/** Davies' sums run from below zero (triglycerides) to above 40 (short alkyl sulfates); beyond these none is an HLB. */
const WIDEST = { min: -50, max: 100 };

/** An HLB of an emulsifier, or a target, as published figures of any scale give it, else a `Problem`. */
export function emulsifierHlb(value: number, what: string): number {
  return between(value, WIDEST.min, WIDEST.max, what);
}

export interface FunctionRange {
  use: string;
  low: number;
  high: number;
}

/** What the parts of the scale are used for: hints, as texts differ and the ranges overlap. */
export const FUNCTION_RANGES: { source: Source; ranges: readonly FunctionRange[] } = {
  source: GRIFFIN_1949,
  ranges: [
    { use: 'w/o emulsifier', low: 4, high: 6 },
    { use: 'wetting agent', low: 7, high: 9 },
    { use: 'o/w emulsifier', low: 8, high: 18 },
    { use: 'detergent', low: 13, high: 15 },
    { use: 'solubiliser', low: 15, high: 18 },
  ],
};
