/** What a row says, by target; what it says nothing of is absent. */
export type Values = Readonly<Record<string, unknown>>;

/** Why a cell, or a row, cannot be taken in. */
export interface Fault {
  /** The heading of its column; empty where the row as a whole is at fault. */
  heading: string;
  message: string;
  /** Words that no word of ours is known for, and of which target. */
  words?: { target: string; written: string[] };
}

export interface TableRow {
  /** The line of the table that it begins on. */
  line: number;
  values: Values;
  faults: Fault[];
}
