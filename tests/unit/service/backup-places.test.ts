import { mkdirSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { blankMaterial } from '@core/materials/material';
import { describe, expect, it } from 'vitest';
import { serviceWith } from './service-fixture';

describe('backups', () => {
  it('go to a second place too, and say so where that cannot be reached', async () => {
    const { ask, session, folder } = await serviceWith('demonstration');
    const place = join(folder, 'other disk');
    mkdirSync(place);
    const token = session.places.offer(place);
    const { body } = await ask<{ open: { backupCopies: string } }>('PUT', '/library/backups/copies', {
      token,
    });
    expect(body.open.backupCopies).toBe(join(place, 'Shelf backups'));
    const names = (await ask<{ name: string }[]>('GET', '/library/backups')).body.map(({ name }) => name);
    expect(readdirSync(join(place, 'Shelf backups'))).toEqual([names[0]]);

    await ask('PUT', '/library/backups/copies', { token: null });
    const file = join(folder, 'a file');
    writeFileSync(file, '');
    // A disk that is gone: what stands in its place is no folder.
    await ask('PUT', '/library/backups/copies', { token: session.places.offer(file) });
    const { body: after } = await ask<{ open: { rewriteProblem: string } }>('GET', '/library');
    expect(after.open.rewriteProblem).toContain('A backup could not be copied to its second place.');
    expect((await ask<unknown[]>('GET', '/library/backups')).body.length).toBeGreaterThan(names.length - 1);
  });

  it('tell what they hold', async () => {
    const { ask } = await serviceWith('demonstration');
    const { body: backup } = await ask<{ name: string }>('POST', '/library/backups');
    const { body: holds } = await ask<Record<string, number>>(
      'GET',
      `/library/backups/holds?name=${encodeURIComponent(backup.name)}`,
    );
    const { body } = await ask<{ open: { materials: number; formulas: number; batches: number } }>(
      'GET',
      '/library',
    );
    const { materials, formulas, batches } = body.open;
    expect(holds).toMatchObject({ 'raw material': materials, formula: formulas, batch: batches });
    expect((await ask('GET', '/library/backups/holds?name=../x')).status).toBe(404);
  });

  it('are to be tried once a year: Today says so until one was compared', async () => {
    const { ask, session } = await serviceWith('empty');
    const untried = async () =>
      (await ask<{ untriedSince: string | null }>('GET', '/today/backup')).body.untriedSince;
    expect(await untried()).toBeNull();
    await ask('PATCH', '/settings', { backupTriedOn: '2020-01-01' });
    expect(await untried()).toBe('2020-01-01');
    await ask('POST', '/materials', blankMaterial('A', 'Aqua'));
    const backup = await session.current().library.backUp();
    await ask('POST', '/meetings/backup', { name: backup.name });
    expect(await untried()).toBeNull();
  });
});
