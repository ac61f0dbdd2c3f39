import { setImmediate } from 'node:timers/promises';
import { TABLE_FORMATS, withoutEmptyColumns, type SavedTable } from '@core/exports/saved-table';
import { fromParams } from '@core/lists/address';
import type { Region } from '@core/locale/numbers';
import { Problem } from '@core/problems/problem';
import { id } from '@core/record/id';
import type { TableColumn } from '@core/record/table-column';
import type { Cell } from '@core/tables/table';
import { readSettings } from '@db/settings/settings';
import type { Reader } from '@db/database';
import { z } from 'zod';
import type { ServiceContext } from '../context';
import { NOUN_LISTS, NOUNS, type Noun } from '../lists/nouns';
import type { NounTable } from './noun-table';
import { NOUN_TABLES } from './noun-tables';

/** A list to be saved as a table: as it is filtered, or the records that were picked in it. */
export const tableRequest = z.object({
  noun: z.enum(NOUNS),
  /** The parameters of the list's address. */
  query: z.string().max(20_000),
  ids: z.array(id).max(200_000).nullable(),
  format: z.enum(TABLE_FORMATS),
  /** Which of the noun's tables a CSV file is to hold; a spreadsheet holds them all. */
  table: z.int().min(0).max(9).default(0),
});
export type TableRequest = z.infer<typeof tableRequest>;

/** So many records are read before others get their turn: a few milliseconds. */
const AT_ONCE = 50;

async function rowsOf(
  db: Reader,
  { columns, rows }: NounTable,
  ids: readonly string[],
  region: Region,
): Promise<Pick<SavedTable, 'head' | 'rows'>> {
  const all = columns(region) as readonly TableColumn<object>[];
  const cells: Cell[][] = [];
  for (let at = 0; at < ids.length; at += AT_ONCE) {
    for (const row of rows(db, ids.slice(at, at + AT_ONCE))) cells.push(all.map(({ cell }) => cell(row)));
    await setImmediate();
  }
  return { head: all.map(({ heading }) => heading), rows: cells };
}

async function idsOf(
  context: ServiceContext,
  { noun, query, ids }: TableRequest,
): Promise<readonly string[]> {
  if (ids) return ids;
  const asked = fromParams(NOUN_LISTS[noun].description, new URLSearchParams(query));
  return context.session.current().lists.ids(noun, asked);
}

/** The tables that a request asks for, each with what it holds. @throws Problem not-found where there is nothing to save */
export async function tablesOf(context: ServiceContext, request: TableRequest): Promise<SavedTable[]> {
  const { library } = context.session.current();
  const ids = await idsOf(context, request);
  if (ids.length === 0)
    throw new Problem({
      code: 'not-found',
      title: 'There is nothing to save.',
      advice: 'Widen the search or the filters, then save the list again.',
    });
  const all: readonly NounTable[] = NOUN_TABLES[request.noun as Noun];
  const wanted = request.format === 'csv' ? all.slice(request.table).slice(0, 1) : all;
  const { languageRegion } = readSettings(library);
  const tables: SavedTable[] = [];
  for (const table of wanted) {
    const made = await rowsOf(library, table, ids, languageRegion);
    tables.push(withoutEmptyColumns({ name: table.name, ...made }));
  }
  return tables;
}
