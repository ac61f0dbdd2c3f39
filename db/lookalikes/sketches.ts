import type { Sketch } from '@core/lookalikes/look-alikes';
import type { Reader } from '../database';

/** What of every material tells whether another looks like it; what is archived is left out. */
export function readSketches(db: Reader): Sketch[] {
  const rows = db.all<Omit<Sketch, 'composition'>>(
    `SELECT id, trade_name AS tradeName, code FROM material WHERE status <> 'archived' ORDER BY created_at, id`,
  );
  const sketches = new Map(
    rows.map((row) => [row.id, { ...row, composition: [] as Sketch['composition'][number][] }]),
  );
  const parts = db.all<Sketch['composition'][number] & { id: string }>(
    'SELECT material_id AS id, inci, low_ppm AS lowPpm, high_ppm AS highPpm FROM material_inci ORDER BY material_id, position',
  );
  for (const { id, ...part } of parts) sketches.get(id)?.composition.push(part);
  return [...sketches.values()];
}
