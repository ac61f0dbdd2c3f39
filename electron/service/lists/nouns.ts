import { BATCHES_LIST, type BatchEntry, type BatchRow } from '@core/batches/list';
import { FORMULAS_LIST, type FormulaEntry, type FormulaRow } from '@core/formulas/list';
import type { KeyOf, ListDescription } from '@core/lists/description';
import { LIMITS_LIST, type LimitEntry, type LimitRow } from '@core/limits/list';
import { MATERIALS_LIST, type MaterialEntry, type MaterialRow } from '@core/materials/list';
import { SUBSTANCES_LIST, type SubstanceEntry, type SubstanceRow } from '@core/substances/list';
import { SERIES_LIST, type SeriesEntry, type SeriesRow } from '@core/trials/list';
import { BATCHES_TABLE, readBatchEntries } from '@db/batches/batches';
import type { Reader } from '@db/database';
import { FORMULAS_TABLE, readFormulaEntries } from '@db/formulas/list';
import { LIMITS_TABLE, readLimitEntries } from '@db/limits/limits';
import { MATERIALS_TABLE, readMaterialEntries } from '@db/materials/list';
import type { GlanceTable } from '@db/record/glance';
import { readSubstanceEntries, SUBSTANCES_TABLE } from '@db/substances/substances';
import { readSeriesEntries, SERIES_TABLE } from '@db/trials/trials';

/** What each noun's list holds of a record, and what it sends. */
export interface Nouns {
  materials: { entry: MaterialEntry; row: MaterialRow };
  formulas: { entry: FormulaEntry; row: FormulaRow };
  batches: { entry: BatchEntry; row: BatchRow };
  trials: { entry: SeriesEntry; row: SeriesRow };
  substances: { entry: SubstanceEntry; row: SubstanceRow };
  limits: { entry: LimitEntry; row: LimitRow };
}
export type Noun = keyof Nouns;

/** How a noun's list is described and read. */
export interface NounList<N extends Noun> {
  description: ListDescription<KeyOf<Nouns[N]['entry']>>;
  /** All records as the list knows them, or those of some ids; one that is gone is missing. */
  read(db: Reader, ids?: readonly string[]): Nouns[N]['entry'][];
  /** What of all records can be read at a glance, for a first page that does not wait for the list. */
  table: GlanceTable;
}

/** Every noun that has a list, in the order in which finds are told. */
export const NOUN_LISTS: { [N in Noun]: NounList<N> } = {
  materials: { description: MATERIALS_LIST, read: readMaterialEntries, table: MATERIALS_TABLE },
  formulas: { description: FORMULAS_LIST, read: readFormulaEntries, table: FORMULAS_TABLE },
  batches: { description: BATCHES_LIST, read: readBatchEntries, table: BATCHES_TABLE },
  trials: { description: SERIES_LIST, read: readSeriesEntries, table: SERIES_TABLE },
  substances: { description: SUBSTANCES_LIST, read: readSubstanceEntries, table: SUBSTANCES_TABLE },
  limits: { description: LIMITS_LIST, read: readLimitEntries, table: LIMITS_TABLE },
};
export const NOUNS = Object.keys(NOUN_LISTS) as Noun[];
