/** Where a number or a rule comes from. `memory`: from memory, to be checked before relying on it. */
export interface Source {
  text: string;
  basis: 'read' | 'memory' | 'common-practice' | 'library' | 'user';
}

/** The mark of a fact of the trade that no publication backs. */
export const COMMON_PRACTICE: Source = { text: 'common practice, no source', basis: 'common-practice' };

/** One step of a computation as a student would write it, with the numbers put in. */
export interface WorkingStep {
  /** What is done, in words: "mass-weighted mean of the oils' required HLB". */
  says: string;
  /** The formula with the numbers put in: "(12 × 10.5 + 3 × 15.5) / 15". */
  shows: string;
  /** What comes out, unrounded. */
  result: number;
  unit: string;
}

/** A computed quantity that can show how it came about. Rounded only for show, never here. */
export interface Worked {
  value: number;
  unit: string;
  steps: WorkingStep[];
  sources: Source[];
  /** What the reader must know before trusting it; empty when there is nothing to say. */
  cautions: string[];
}
