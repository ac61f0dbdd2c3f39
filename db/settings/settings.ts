import { settings, type Settings } from '@core/settings/settings';
import type { Reader, Writer } from '../database';

/** The library's settings; what was never set has its default. */
export function readSettings(db: Reader): Settings {
  const rows = db.all<{ name: string; value: string }>('SELECT name, value FROM setting');
  return settings.parse(
    Object.fromEntries(rows.map(({ name, value }) => [name, JSON.parse(value) as unknown])),
  );
}

export function writeSettings(tx: Writer, changed: Settings): void {
  for (const [name, value] of Object.entries(changed))
    tx.run(
      'INSERT INTO setting (name, value) VALUES (?, ?) ON CONFLICT (name) DO UPDATE SET value = excluded.value',
      name,
      JSON.stringify(value),
    );
}
