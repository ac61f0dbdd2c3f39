import { plain } from '@core/imports/plain';
import type { KeyTarget } from '@core/imports/read-rows';
import type { Reader } from '@db/database';

const COLUMN: Record<KeyTarget, string> = { code: 'code', tradeName: 'trade_name' };

/** The ids of the materials that bear each key, folded; what is archived is among them, since it may come back. */
export function materialsByKey(db: Reader, key: KeyTarget): Map<string, string[]> {
  const rows = db.all<{ id: string; name: string }>(`SELECT id, ${COLUMN[key]} AS name FROM material`);
  const byKey = new Map<string, string[]>();
  for (const { id, name } of rows) {
    const folded = plain(name);
    if (folded !== '') byKey.set(folded, [...(byKey.get(folded) ?? []), id]);
  }
  return byKey;
}
