import { fillBlanks } from '@core/record/blanks';
import type { SeriesEntry } from '@core/trials/list';
import { TRIAL_SERIES, TRIAL_SERIES_FIELDS, type SeriesContent } from '@core/trials/noun';
import { trialSeries, type TrialSeries } from '@core/trials/trial-series';
import type { Reader, Writer } from '../database';
import type { Repository } from '../record/repository';
import type { GlanceTable } from '../record/glance';
import { among } from '../some-ids';

/** A series with the count of its edits, so that two windows cannot overwrite each other. */
export type SeriesRecord = TrialSeries & { revision: number; updatedAt: string };

interface Row {
  revision: number;
  updatedAt: string;
  content: string;
}

/** What of all trial series can be read at a glance. */
export const SERIES_TABLE: GlanceTable = {
  from: 'trial_series',
  keys: { title: 'title', createdAt: 'created_at', updatedAt: 'updated_at' },
};

/** Trial series as their list knows them, all or some. */
export function readSeriesEntries(db: Reader, ids?: readonly string[]): SeriesEntry[] {
  const { where, values } = among('id', ids);
  return db.all<SeriesEntry>(
    `SELECT id, title, created_at AS createdAt, updated_at AS updatedAt,
       json_array_length(content, '$.trials') AS trials,
       iif(json_extract(content, '$.chosen') IS NULL, 'none chosen yet', 'chosen') AS status,
       coalesce(json_extract(content, '$.notes'), '') AS notes
     FROM trial_series ${where}`,
    ...values,
  );
}

/** One series, or undefined. */
export function readSeries(db: Reader, id: string): SeriesRecord | undefined {
  const row = db.get<Row>(
    'SELECT revision, updated_at AS updatedAt, content FROM trial_series WHERE id = ?',
    id,
  );
  if (!row) return undefined;
  const held = fillBlanks(TRIAL_SERIES_FIELDS, JSON.parse(row.content) as Record<string, unknown>);
  return { ...trialSeries.parse(held), revision: row.revision, updatedAt: row.updatedAt };
}

/** Adds a series, or writes a newer state of it. */
function writeSeries(tx: Writer, { revision, updatedAt, ...series }: SeriesRecord): void {
  tx.run(
    `INSERT INTO trial_series (id, revision, title, created_at, updated_at, content) VALUES (?, ?, ?, ?, ?, ?)
     ON CONFLICT (id) DO UPDATE SET revision = excluded.revision, title = excluded.title,
       updated_at = excluded.updated_at, content = excluded.content`,
    ...[series.id, revision, series.title, series.createdAt, updatedAt, JSON.stringify(series)],
  );
}

export const seriesRecords: Repository<SeriesRecord, SeriesContent> = {
  noun: TRIAL_SERIES,
  read: readSeries,
  insert: writeSeries,
  update: (tx, _before, after) => writeSeries(tx, after),
  remove: (tx, id) => tx.run('DELETE FROM trial_series WHERE id = ?', id),
};
