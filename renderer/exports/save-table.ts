import type { TableFormat } from '@core/exports/saved-table';
import { answer, answerBytes, service } from '../service/client';
import { saveFile } from '../sheets/save-file';
import type { FoundKind } from '@core/lists/found';

export interface TableWanted {
  noun: FoundKind;
  /** The parameters of the list's address. */
  query: string;
  /** The records picked; null for all that the query finds. */
  ids: string[] | null;
  format: TableFormat;
  /** Which of the noun's tables a CSV file holds. */
  table: number;
}

/** Asks for a list as a table, and hands it to the maker as a file. @throws ServiceProblem */
export async function saveTable(wanted: TableWanted, name: string, signal: AbortSignal): Promise<void> {
  const { bytes, mediaType } = await answerBytes(
    service.exports.table.$post({ json: wanted }, { init: { signal } }),
  );
  saveFile(bytes, `${name}.${wanted.format}`, mediaType);
}

/** The tables that can be made of a noun's records, by name. */
export async function tableNames(noun: FoundKind): Promise<string[]> {
  const tables = await answer(service.exports.tables.$get());
  return tables[noun] ?? [];
}
