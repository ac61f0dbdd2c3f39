import { Engine } from '@db/library/sql/engine';
import { readFileSync, readdirSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { serviceWith } from './service-fixture';

interface Status {
  open: { changedOutside: boolean; settings: { recordedBy: string } };
}

/** A library of which the last change is in nobody's file any more: its log was put back to how it was before. */
async function changedOutside() {
  const fixture = await serviceWith();
  const { ask, session } = fixture;
  const { folder } = session.current().library;
  const log = join(folder, 'library.log');
  await ask('PATCH', '/settings', { recordedBy: 'Put back' });
  const before = readFileSync(log);
  await ask('PATCH', '/settings', { recordedBy: 'Only here' });
  writeFileSync(`${log} put back`, before);
  renameSync(`${log} put back`, log);
  expect((await ask<Status>('POST', '/library/check')).body.open.changedOutside).toBe(true);
  return { ...fixture, folder };
}

it('loading what another program put on the disk first keeps what is open here among the backups', async () => {
  const { ask, folder } = await changedOutside();
  expect((await ask('PATCH', '/settings', { recordedBy: 'Not taken' })).status).toBe(409);
  const { body } = await ask<Status>('POST', '/library/reload');
  expect(body.open).toMatchObject({ changedOutside: false, settings: { recordedBy: 'Put back' } });
  const backups = join(folder, 'backups');
  const aside = readdirSync(backups).filter((name) => name.endsWith('as it was open here.sqlite'));
  expect(aside).toHaveLength(1);
  const engine = await Engine.open(readFileSync(join(backups, aside[0] ?? '')));
  expect(JSON.stringify(engine.all('SELECT * FROM setting'))).toContain('Only here');
  engine.close();
});

it('what cannot be kept is not given up: the library stays open as it is here, and it is said why', async () => {
  const { ask, folder } = await changedOutside();
  const backups = join(folder, 'backups');
  rmSync(backups, { recursive: true, force: true });
  writeFileSync(backups, 'a file in its place');
  const refused = await ask<{ title: string }>('POST', '/library/reload');
  expect(refused.status).toBeGreaterThanOrEqual(400);
  expect(refused.body.title).toContain('there is a file where its folder should be');
  const { body } = await ask<Status>('GET', '/library');
  expect(body.open).toMatchObject({ changedOutside: true, settings: { recordedBy: 'Only here' } });
});
