export type DifferenceKind = 'added' | 'removed' | 'changed' | 'moved';
export type DifferenceArea =
  'formula' | 'phase' | 'line' | 'material' | 'step' | 'target' | 'finding' | 'file' | 'notes';

/** One difference a maker would name. `before` and `after` are empty where there was or is nothing. */
export interface Difference {
  area: DifferenceArea;
  kind: DifferenceKind;
  /** What differs: a material's name, "Step 3, speed", "Target, pH". */
  what: string;
  before: string;
  after: string;
  /** Of a share: by how much it changed, in ppm of the formula. */
  changePpm?: number;
  /** … and of what it was, as a ratio; null where it was nothing. */
  ratio?: number | null;
}
