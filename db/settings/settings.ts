import { SETTINGS } from '@core/settings/noun';
import { settings, type Settings } from '@core/settings/settings';
import type { Reader, Writer } from '../database';
import { keepBefore, type Doing } from '../record/history';

/** The library's settings; what was never set has its default. */
export function readSettings(db: Reader): Settings {
  const rows = db.all<{ name: string; value: string }>('SELECT name, value FROM setting');
  return settings.parse(
    Object.fromEntries(rows.map(({ name, value }) => [name, JSON.parse(value) as unknown])),
  );
}

/** Writes settings into a new library. @param at ISO 8601 */
export function writeSettings(tx: Writer, changed: Settings, at: string): void {
  for (const [name, value] of Object.entries(changed))
    tx.run(
      `INSERT INTO setting (name, value, updated_at) VALUES (?, ?, ?)
       ON CONFLICT (name) DO UPDATE SET value = excluded.value, updated_at = excluded.updated_at`,
      ...[name, JSON.stringify(value), at],
    );
}

/** Changes the settings of a library; what they were stays in their history. */
export function changeSettings(tx: Writer, changed: Settings, doing: Doing): void {
  const last = tx.get<{ at: string | null }>('SELECT max(updated_at) AS at FROM setting')?.at;
  const at = last || doing.at;
  const before = { ...readSettings(tx), id: SETTINGS.kind, revision: 1, createdAt: at, updatedAt: at };
  keepBefore(tx, SETTINGS, before, doing);
  writeSettings(tx, changed, doing.at);
}
