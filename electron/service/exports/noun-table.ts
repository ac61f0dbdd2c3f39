import type { Region } from '@core/locale/numbers';
import type { TableColumn } from '@core/record/table-column';
import type { Reader } from '@db/database';

/** A table that can be made of a noun's records: its columns, and the rows that some of the records make. */
export interface NounTable {
  name: string;
  columns(region: Region): readonly TableColumn<never>[];
  rows(db: Reader, ids: readonly string[]): object[];
}
