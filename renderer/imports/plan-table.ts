import type { SheetReading } from '@core/imports/begin-reading';
import type { Outcome } from '@core/imports/plan-row';
import { gatherRows, likelyKey, rowReader, type KeyTarget } from '@core/imports/read-rows';
import type { TableRow } from '@core/imports/row';
import type { Sheet } from '@core/tables/table';
import { gatherFormulas } from '@core/imports/formula-rows';
import type { Subject } from '@core/imports/subjects';
import { answer, service } from '../service/client';

/** So many rows are read before the window has its turn: some tens of milliseconds. */
const READ_AT_ONCE = 500;
/** So many are sent together: looking them through holds the service, and whatever else is asked of it, for that long. */
const SENT_AT_ONCE = 100;

const turn = (): Promise<void> => new Promise((done) => setTimeout(done));

export interface TableToPlan {
  about: Subject;
  file: string;
  sheet: Sheet;
  reading: SheetReading;
  /** By what its rows are known; found by itself when null. */
  key: KeyTarget | null;
}

/** What would become of every row; `id` is what the service holds it by until it is taken in. */
export interface PlannedTable {
  id: string;
  key: KeyTarget;
  outcomes: Outcome[];
}

async function rowsOf({ sheet, reading }: TableToPlan, signal: AbortSignal): Promise<TableRow[]> {
  const { head, columns, ways } = reading;
  const body = sheet.rows.slice(head + 1);
  const read = rowReader(columns, ways);
  const rows: TableRow[] = [];
  for (let at = 0; at < body.length && !signal.aborted; at += READ_AT_ONCE) {
    rows.push(...read(body.slice(at, at + READ_AT_ONCE)));
    await turn();
  }
  return rows;
}

/** The records of a table: several rows may make one of them. */
function gathered({ about, reading }: TableToPlan, read: TableRow[], key: KeyTarget): TableRow[] {
  if (about === 'formulas') return gatherFormulas(read);
  return about === 'limits' ? read : gatherRows(read, key, reading.columns);
}

/** Lets go of a table that is not taken in. */
export function letGo(id: string): void {
  void service.imports[':id'].$delete({ param: { id } }).catch(() => undefined);
}

/** What would become of the rows. One piece is on its way while the one before is looked at. */
async function outcomesOf(
  id: string,
  rows: readonly TableRow[],
  signal: AbortSignal,
  told: (done: number, of: number) => void,
): Promise<Outcome[]> {
  const outcomes: Outcome[] = [];
  let before: Promise<Outcome[]> | null = null;
  const take = async (): Promise<void> => void outcomes.push(...((await before) ?? []));
  for (let at = 0; at < rows.length && !signal.aborted; at += SENT_AT_ONCE) {
    told(at, rows.length);
    const json = { at, rows: rows.slice(at, at + SENT_AT_ONCE) };
    const sent = answer(service.imports[':id'].rows.$post({ param: { id }, json }));
    // What goes wrong with it is met when it is its turn.
    sent.catch(() => undefined);
    await take();
    before = sent;
  }
  await take();
  return outcomes;
}

/**
 * Looks at every row of a table, as it is understood. Nothing is written.
 * @param told is called with how far it is
 * @returns undefined when `signal` aborted meanwhile
 * @throws ServiceProblem
 */
export async function planTable(
  asked: TableToPlan,
  signal: AbortSignal,
  told: (done: number, of: number) => void,
): Promise<PlannedTable | undefined> {
  const read = await rowsOf(asked, signal);
  const key = asked.key ?? likelyKey(read);
  const rows = gathered(asked, read, key);
  if (signal.aborted) return undefined;
  const { id } = await answer(service.imports.$post({ json: { about: asked.about, key, file: asked.file } }));
  const outcomes = await outcomesOf(id, rows, signal, told);
  if (!signal.aborted) return { id, key, outcomes };
  letGo(id);
  return undefined;
}
