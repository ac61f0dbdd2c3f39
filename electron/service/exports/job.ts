import { savedTable, type SavedTable, type TableFormat } from '@core/exports/saved-table';
import type { Region } from '@core/locale/numbers';

/** A file to be written. */
export interface ExportJob {
  tables: SavedTable[];
  format: TableFormat;
  region: Region;
}

/** Writes it, in this thread. @throws Problem where it does not fit what spreadsheets hold */
export function writeExport({ tables, format, region }: ExportJob): Promise<Uint8Array> {
  return Promise.resolve(savedTable(tables, format, region));
}
