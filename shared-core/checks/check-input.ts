import type { FormulaContent } from '../formulas/formula';
import type { Material } from '../materials/material';

/** A formula with the materials that its checks look at. */
export interface CheckInput {
  content: FormulaContent;
  /** The materials of the formula's lines by id; a line whose material is absent here is reported. */
  materials: ReadonlyMap<string, Material>;
}
