import type { Source } from '../working/working';

/** A word of the trade, told in a line. */
export interface Term {
  /** The word as it is written. */
  term: string;
  /** What else it is called, or is looked for by. */
  also?: readonly string[];
  /** One or two sentences that a first-day student can follow. */
  says: string;
  source: Source;
}
