import type { Decimals } from '../locale/numbers';
import { badInput } from '../working/inputs';
import type { Worked } from '../working/working';

/** A figure that went in: a number with its unit, or words. */
export interface Given {
  label: string;
  value: number | string;
  unit: string;
}

/** One figure that came out, with its working. */
export interface Result {
  /** For finding it again; unique within a calculation. */
  key: string;
  label: string;
  worked: Worked;
  /** Decimals shown of the value. */
  digits: number | Decimals;
  /** What it means, in words; empty when the figure says it all. */
  says: string;
}

/** What came out in words: within, out, accepted. */
export interface Verdict {
  key: string;
  label: string;
  verdict: string;
  /** Null where neither good nor bad is said. */
  good: boolean | null;
  why: readonly string[];
}

/** What came out as a list. */
export interface ResultTable {
  label: string;
  head: readonly string[];
  rows: readonly (readonly (string | number)[])[];
}

/** What a calculation comes to. */
export interface Answer {
  results: Result[];
  verdicts?: readonly Verdict[];
  tables?: readonly ResultTable[];
  notes?: string[];
}

/** A calculation as screens show it and sheets print it. Numbers are unrounded. */
export interface Calculated {
  title: string;
  given: Given[];
  results: Result[];
  verdicts?: readonly Verdict[];
  tables?: readonly ResultTable[];
  /** What could not be computed, with why. */
  withheld: { label: string; why: string }[];
  /** What to know besides the cautions of each working. */
  notes: string[];
}

/** A number that must have been entered. @throws Problem `invalid-input` with `path` as its field */
export function entered(value: number | null, what: string, path: string): number {
  if (value === null)
    throw badInput(`${what} is not entered yet.`, 'Enter it to see the result.', path, { missing: true });
  return value;
}

/** Lists the figures that are known, for `given`. */
export function givens(
  rows: readonly [label: string, value: number | string | null, unit: string][],
): Given[] {
  return rows.flatMap(([label, value, unit]) =>
    value === null || value === '' ? [] : [{ label, value, unit }],
  );
}
