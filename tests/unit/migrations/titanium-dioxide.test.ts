import { migrations } from '@db/migrations/list';
import { migrate } from '@db/migrations/runner';
import { Engine } from '@db/library/sql/engine';
import { createMeta, LIBRARY_FORMAT } from '@db/library/file/meta';
import { expect, it } from 'vitest';

const AS_POWDER = '2, as a powder breathed in';
const AT = new Date(0);

it('takes the annulled class off titanium dioxide as the examples gave it, and off nothing that a maker entered', async () => {
  const engine = await Engine.open();
  const state = { sequence: 0, chain: '', revision: 0, createdAt: AT.toISOString() };
  createMeta(engine, { id: '0', format: LIBRARY_FORMAT, ...state });
  migrate(engine, migrations.slice(0, 14), AT);
  const rows: [name: string, cmrClass: string | null, revision: number][] = [
    ['Titanium Dioxide', AS_POWDER, 1],
    ['CI 77891', AS_POWDER, 2],
    ['Our own pigment', AS_POWDER, 1],
    ['Formaldehyde', '1A or 1B', 1],
  ];
  for (const [name, cmrClass, revision] of rows)
    engine.run(
      `INSERT INTO substance (id, revision, created_at, updated_at, name, cmr_class, us_name, colour_index, cas, formula,
         allergen_label, pod_kind, safety_source, notes) VALUES (?, ?, ?, ?, ?, ?, '', '', '', '', '', '', '', '')`,
      ...[name, revision, AT.toISOString(), AT.toISOString(), name, cmrClass],
    );
  migrate(engine, migrations, AT);
  const found = engine.all<{ name: string; cmr: string | null }>(
    'SELECT name, cmr_class AS cmr FROM substance ORDER BY rowid',
  );
  expect(found.map(({ name, cmr }) => [name, cmr])).toEqual([
    ['Titanium Dioxide', null],
    ['CI 77891', AS_POWDER],
    ['Our own pigment', AS_POWDER],
    ['Formaldehyde', '1A or 1B'],
  ]);
  engine.close();
});
