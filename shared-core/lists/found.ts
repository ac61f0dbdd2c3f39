import type { BatchRow } from '../batches/list';
import type { FormulaRow } from '../formulas/list';
import type { LimitRow } from '../limits/list';
import type { MaterialRow } from '../materials/list';
import type { SubstanceRow } from '../substances/list';
import type { SeriesRow } from '../trials/list';
import type { Nearness } from './list-index';

/** A record that the finder found, as its list shows it. */
export type Found = (
  | { kind: 'materials'; row: MaterialRow }
  | { kind: 'formulas'; row: FormulaRow }
  | { kind: 'batches'; row: BatchRow }
  | { kind: 'trials'; row: SeriesRow }
  | { kind: 'substances'; row: SubstanceRow }
  | { kind: 'limits'; row: LimitRow }
) & {
  near: Nearness;
  /** Whether its list shows it only when asked to, such as what is archived. */
  putAside: boolean;
};
export type FoundKind = Found['kind'];
export const FOUND_KINDS: readonly FoundKind[] = [
  'materials',
  'formulas',
  'batches',
  'trials',
  'substances',
  'limits',
];
