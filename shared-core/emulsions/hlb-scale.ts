import { FIGURE_KINDS } from '../materials/figure';
import { between } from '../working/inputs';

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
