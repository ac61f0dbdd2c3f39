export type DifferenceKind = 'added' | 'removed' | 'changed' | 'moved';
export type DifferenceArea =
  'formula' | 'phase' | 'line' | 'material' | 'step' | 'target' | 'finding' | 'notes';

/** One difference a maker would name. `before` and `after` are empty where there was or is nothing. */
export interface Difference {
  area: DifferenceArea;
  kind: DifferenceKind;
  /** What differs: a material's name, "Step 3, speed", "Target, pH". */
  what: string;
  before: string;
  after: string;
}
