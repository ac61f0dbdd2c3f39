import type { FormulaContent } from '../formulas/formula';
import type { Law } from '../limits/law';
import type { Material } from '../materials/material';

/** A formula with the materials that its checks look at. */
export interface CheckInput {
  content: FormulaContent;
  /** The materials of the formula's lines by id; a line whose material is absent here is reported. */
  materials: ReadonlyMap<string, Material>;
  /** The library's substances and limits; left out where nothing is to be held against the law. */
  law?: Law;
  /** The day that is asked about, ISO 8601; needed with `law`. */
  onDay?: string;
}
