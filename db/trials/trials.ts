import { trialSeries, type TrialSeries } from '@core/trials/trial-series';
import type { Reader, Writer } from '../database';

/** A series with the count of its edits, so that two windows cannot overwrite each other. */
export interface KeptSeries {
  revision: number;
  updatedAt: string;
  series: TrialSeries;
}

export interface SeriesSummary {
  id: string;
  title: string;
  createdAt: string;
  updatedAt: string;
  trials: number;
}

interface Row {
  revision: number;
  updatedAt: string;
  content: string;
}

/** Every series, newest first. */
export function listSeries(db: Reader): SeriesSummary[] {
  return db.all<SeriesSummary>(
    `SELECT id, title, created_at AS createdAt, updated_at AS updatedAt,
       json_array_length(content, '$.trials') AS trials
     FROM trial_series ORDER BY created_at DESC, id`,
  );
}

/** One series, or undefined. */
export function readSeries(db: Reader, id: string): KeptSeries | undefined {
  const row = db.get<Row>(
    'SELECT revision, updated_at AS updatedAt, content FROM trial_series WHERE id = ?',
    id,
  );
  if (!row) return undefined;
  const series = trialSeries.parse(JSON.parse(row.content));
  return { revision: row.revision, updatedAt: row.updatedAt, series };
}

/** Adds a series, or writes a newer state of it. */
export function writeSeries(tx: Writer, { revision, updatedAt, series }: KeptSeries): void {
  tx.run(
    `INSERT INTO trial_series (id, revision, title, created_at, updated_at, content) VALUES (?, ?, ?, ?, ?, ?)
     ON CONFLICT (id) DO UPDATE SET revision = excluded.revision, title = excluded.title,
       updated_at = excluded.updated_at, content = excluded.content`,
    ...[series.id, revision, series.title, series.createdAt, updatedAt, JSON.stringify(series)],
  );
}

export function deleteSeries(tx: Writer, id: string): void {
  tx.run('DELETE FROM trial_series WHERE id = ?', id);
}
