import { BATCHES_LIST, type BatchEntry, type BatchRow } from '@core/batches/list';
import { FORMULAS_LIST, type FormulaEntry, type FormulaRow } from '@core/formulas/list';
import type { KeyOf, ListDescription } from '@core/lists/description';
import { LIMITS_LIST, type LimitEntry, type LimitRow } from '@core/limits/list';
import { MATERIALS_LIST, type MaterialEntry, type MaterialRow } from '@core/materials/list';
import { SUBSTANCES_LIST, type SubstanceEntry, type SubstanceRow } from '@core/substances/list';
import { SERIES_LIST, type SeriesEntry, type SeriesRow } from '@core/trials/list';
import { readBatchEntries } from '@db/batches/batches';
import type { Reader } from '@db/database';
import { readFormulaEntries } from '@db/formulas/list';
import { readLimitEntries } from '@db/limits/limits';
import { readMaterialEntries } from '@db/materials/list';
import { readSubstanceEntries } from '@db/substances/substances';
import { readSeriesEntries } from '@db/trials/trials';

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
}

/** Every noun that has a list, in the order in which finds are told. */
export const NOUN_LISTS: { [N in Noun]: NounList<N> } = {
  materials: { description: MATERIALS_LIST, read: readMaterialEntries },
  formulas: { description: FORMULAS_LIST, read: readFormulaEntries },
  batches: { description: BATCHES_LIST, read: readBatchEntries },
  trials: { description: SERIES_LIST, read: readSeriesEntries },
  substances: { description: SUBSTANCES_LIST, read: readSubstanceEntries },
  limits: { description: LIMITS_LIST, read: readLimitEntries },
};
export const NOUNS = Object.keys(NOUN_LISTS) as Noun[];
