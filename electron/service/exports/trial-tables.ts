import {
  SERIES_COLUMNS,
  TRIAL_COLUMNS,
  TRIAL_LINE_COLUMNS,
  type SeriesTableRow,
  type TrialLineTableRow,
  type TrialTableRow,
} from '@core/trials/table-columns';
import type { TableColumn } from '@core/record/table-column';
import type { Reader } from '@db/database';
import { materials } from '@db/materials/materials';
import { readSeries, type SeriesRecord } from '@db/trials/trials';
import type { NounTable } from './noun-table';

const seriesOf = (db: Reader, ids: readonly string[]): SeriesRecord[] =>
  ids.flatMap((id) => readSeries(db, id) ?? []);

function seriesRows(db: Reader, ids: readonly string[]): SeriesTableRow[] {
  return seriesOf(db, ids).map((series) => {
    const formula = db.get<{ name: string }>('SELECT name FROM formula WHERE id = ?', series.formulaId);
    return { ...series, formula: formula?.name ?? '' };
  });
}

function trialRows(db: Reader, ids: readonly string[]): TrialTableRow[] {
  return seriesOf(db, ids).flatMap(({ title, trials, chosen }) =>
    trials.map((trial, at) => ({ ...trial, series: title, chosen: at === chosen })),
  );
}

function lineRows(db: Reader, ids: readonly string[]): TrialLineTableRow[] {
  const all = seriesOf(db, ids);
  const lines = all.flatMap(({ trials }) => trials.flatMap((trial) => trial.lines));
  const named = materials.readMany(
    db,
    lines.map(({ materialId }) => materialId),
  );
  return all.flatMap(({ title, trials }) =>
    trials.flatMap(({ label, lines: own }) =>
      own.map((line) => {
        const material = named.get(line.materialId);
        const called = { material: material?.tradeName ?? '', materialCode: material?.code ?? '' };
        return { ...line, ...called, series: title, trial: label };
      }),
    ),
  );
}

const table = <Row extends object>(
  name: string,
  columns: readonly TableColumn<Row>[],
  rows: (db: Reader, ids: readonly string[]) => Row[],
): NounTable => ({ name, columns: () => columns as readonly TableColumn<never>[], rows });

/** Series of trials, their trials, and what was weighed for each. */
export const TRIAL_TABLES: readonly NounTable[] = [
  table('Trial series', SERIES_COLUMNS, seriesRows),
  table('Trials', TRIAL_COLUMNS, trialRows),
  table('Lines of trials', TRIAL_LINE_COLUMNS, lineRows),
];
