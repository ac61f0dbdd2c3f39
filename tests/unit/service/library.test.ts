import { cpSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { blankMaterial, type Material } from '@core/materials/material';
import type { Settings } from '@core/settings/settings';
import { composeService } from '@service/compose';
import type { libraryStatus } from '@service/library/routes';
import type { ProblemDetails } from '@service/problems/problem-details';
import { describe, expect, it } from 'vitest';
import { serviceWith } from './service-fixture';

type Status = ReturnType<typeof libraryStatus>;

describe('the library through the service', () => {
  it('starts without one, makes one by name, and remembers it', async () => {
    const { ask } = await serviceWith('none');
    expect((await ask<Status>('GET', '/library')).body.open).toBeNull();
    expect((await ask<ProblemDetails>('GET', '/materials')).body.code).toBe('no-library');
    const { body } = await ask<Status>('POST', '/library/create', { name: 'My shelf', kind: 'empty' });
    expect(body.open?.name).toBe('My shelf');
    expect(body.recent.map((known) => known.name)).toEqual(['My shelf']);
    const again = await ask<ProblemDetails>('POST', '/library/create', { name: 'My shelf', kind: 'empty' });
    expect(again.body.code).toBe('conflict');
  });

  it('refuses a name that cannot be a folder, and never leaves its place for one', async () => {
    const { ask, folder } = await serviceWith('none');
    expect((await ask<ProblemDetails>('POST', '/library/create', { name: '..', kind: 'empty' })).status).toBe(
      422,
    );
    const { body } = await ask<Status>('POST', '/library/create', { name: '../../elsewhere', kind: 'empty' });
    expect(body.open?.folder.startsWith(join(folder, 'documents'))).toBe(true);
  });

  it('opens only folders behind a token that it gave', async () => {
    const { ask } = await serviceWith('none');
    expect((await ask<ProblemDetails>('POST', '/library/open', { token: 'f'.repeat(24) })).body.code).toBe(
      'library-missing',
    );
  });

  it('says what is wrong with a damaged library at start, and opens its newest backup, keeping the damaged file', async () => {
    const { ask, session } = await serviceWith('empty');
    await ask<Material>('POST', '/materials', blankMaterial('Kept', 'Cetyl Alcohol'));
    await ask('POST', '/library/backups');
    const { folder } = session.current().library;
    await session.close();
    const file = join(folder, 'library.sqlite');
    const damaged = readFileSync(file).subarray(0, 5000);
    writeFileSync(file, damaged);
    await session.start(folder);
    const { body } = await ask<Status>('GET', '/library');
    expect(body.open).toBeNull();
    expect(body.trouble?.code).toBe('library-damaged');
    expect(body.trouble?.facts.newestBackup).toBeTruthy();
    const { body: recovered } = await ask<Status>('POST', '/library/recover');
    expect(recovered.open?.materials).toBe(1);
    const kept = readdirSync(join(folder, 'backups')).find((name) => name.endsWith('damaged.sqlite'));
    expect(readFileSync(join(folder, 'backups', kept ?? '')).equals(damaged)).toBe(true);
  });

  it('opens a library whose log is damaged, and that has no backup, with the changes before the damage', async () => {
    const { ask, session, folder } = await serviceWith('empty');
    for (const name of ['One', 'Two', 'Three', 'Four'])
      await ask('POST', '/materials', blankMaterial(name, 'Cetyl Alcohol'));
    // As a killed process leaves it: what was added is in the log only, and there is no backup.
    const place = join(folder, 'killed');
    cpSync(session.current().library.folder, place, { recursive: true });
    rmSync(join(place, 'library.lock'));
    rmSync(join(place, 'backups'), { recursive: true, force: true });
    const damaged = readFileSync(join(place, 'library.log'));
    const third = damaged.indexOf('"Three"');
    damaged[third + 1] = (damaged[third + 1] ?? 0) ^ 1;
    writeFileSync(join(place, 'library.log'), damaged);
    await session.close();
    expect((await ask('POST', '/library/recover-log')).status).toBe(404);
    await session.start(place);
    const { body: refused } = await ask<Status>('GET', '/library');
    expect(refused.trouble).toMatchObject({ code: 'library-damaged', goodLog: { taken: 3, left: 2 } });
    expect(refused.trouble?.facts.newestBackup).toBeNull();
    expect(readFileSync(join(place, 'library.log')).equals(damaged)).toBe(true);
    const { body, status } = await ask<Status>('POST', '/library/recover-log');
    expect(status).toBe(200);
    expect(body.trouble).toBeNull();
    expect(body.open).toMatchObject({ materials: 2, keptLog: { taken: 3, left: 2 } });
    expect(readFileSync(body.open?.keptLog?.keptAs ?? '').equals(damaged)).toBe(true);
    await session.open(place);
    expect((await ask<Status>('GET', '/library')).body.open).toMatchObject({ materials: 2, keptLog: null });
  });

  it('tells since when somebody else has it open as a moment, and writes no machine time in the sentence', async () => {
    const { ask, session } = await serviceWith('empty');
    const other = composeService({ documents: session.places.documents, config: session.places.documents });
    await other.session.open(session.current().library.folder);
    const response = await other.service.request('/api/library');
    const { open } = (await response.json()) as Status;
    await other.session.close();
    expect(open?.locked).toBe(true);
    expect(Date.parse(open?.lockedSince ?? '')).toBeGreaterThan(0);
    expect(open?.readOnly).not.toMatch(/\d{4}-\d\d-\d\dT/);
    expect(open?.readOnly).toContain('cuts that window off');
    expect((await ask<Status>('GET', '/library')).body.open?.lockedSince).toBeNull();
  });

  it.each([
    ['a PNG', Buffer.from('89504e470d0a1a0a0000000d49484452', 'hex')],
    ['nothing at all', Buffer.alloc(0)],
  ])('refuses a library file that is %s', async (_what, bytes) => {
    const { ask, session, folder } = await serviceWith('none');
    const place = join(folder, 'odd');
    mkdirSync(place);
    writeFileSync(join(place, 'library.sqlite'), bytes);
    await session.start(place);
    const { body } = await ask<Status>('GET', '/library');
    expect(body.open).toBeNull();
    expect(body.trouble?.title.length).toBeGreaterThan(10);
    expect(readFileSync(join(place, 'library.sqlite')).equals(bytes)).toBe(true);
  });

  it('goes back to a backup, shelf and all, and can come forward again', async () => {
    const { ask } = await serviceWith('empty');
    await ask('POST', '/materials', blankMaterial('First', 'Cetyl Alcohol'));
    const { body: backup } = await ask<{ name: string }>('POST', '/library/backups');
    await ask('POST', '/materials', blankMaterial('Second', 'Stearyl Alcohol'));
    expect(
      (await ask<Status>('POST', '/library/backups/restore', { name: backup.name })).body.open?.materials,
    ).toBe(1);
    const { body: backups } = await ask<{ name: string; reason: string }[]>('GET', '/library/backups');
    const before = backups.find((known) => known.reason === 'restore');
    expect(
      (await ask<Status>('POST', '/library/backups/restore', { name: before?.name })).body.open?.materials,
    ).toBe(2);
    expect(
      (await ask<ProblemDetails>('POST', '/library/backups/restore', { name: '../../etc/passwd' })).status,
    ).toBe(404);
  });

  it('keeps backups in a folder of the maker’s choice, for good, and back in the library when asked', async () => {
    const { ask, session, folder } = await serviceWith('empty');
    const elsewhere = join(folder, 'other disk');
    const token = session.places.offer(elsewhere);
    const { body } = await ask<Status>('PUT', '/library/backups/folder', { token });
    expect(body.open?.backupFolder.startsWith(elsewhere)).toBe(true);
    await ask('POST', '/materials', blankMaterial('Kept', 'Cetyl Alcohol'));
    await ask('POST', '/library/backups');
    expect(
      readdirSync(body.open?.backupFolder ?? '').some((name) => / request \w+\.sqlite$/.test(name)),
    ).toBe(true);
    await session.open(session.current().library.folder);
    expect(
      (await ask<{ reason: string }[]>('GET', '/library/backups')).body.map((backup) => backup.reason),
    ).toContain('request');
    expect(
      (await ask<Status>('PUT', '/library/backups/folder', { token: null })).body.open?.backupsAreWithin,
    ).toBe(true);
    expect((await ask('PUT', '/library/backups/folder', { token: 'f'.repeat(24) })).status).toBe(404);
  });

  it('a file changed by another program is not overwritten; the state here can be saved as a copy, or reloaded', async () => {
    const { ask, session } = await serviceWith('empty');
    await ask('POST', '/materials', blankMaterial('Kept', 'Cetyl Alcohol'));
    const { folder } = session.current().library;
    const theirs = Buffer.concat([readFileSync(join(folder, 'library.sqlite'))]);
    theirs[theirs.length - 1] = (theirs.at(-1) ?? 0) ^ 1;
    writeFileSync(join(folder, 'library.sqlite'), theirs);
    const { body: noticed } = await ask<Status>('POST', '/library/check');
    expect(noticed.open?.changedOutside).toBe(true);
    expect(noticed.open?.readOnly).toBeTruthy();
    const refused = await ask<ProblemDetails>('POST', '/materials', blankMaterial('Lost?', 'Cetyl Alcohol'));
    expect(refused.status).toBe(409);
    expect(readFileSync(join(folder, 'library.sqlite')).equals(theirs)).toBe(true);
    expect((await ask<Status>('POST', '/library/copy', { name: 'Mine' })).status).toBe(200);
    const mine = await ask<Status>('POST', '/library/open', {
      token: session.places.offer(join(session.places.documents, 'Mine')),
    });
    expect(mine.body.open?.materials).toBe(1);
  });

  it('every setting has a default, changes leave each other alone, and a bad one is refused', async () => {
    const { ask } = await serviceWith('empty');
    expect((await ask<Settings>('GET', '/settings')).body.paperSize).toBe('A4');
    await Promise.all([
      ask('PATCH', '/settings', { paperSize: 'LETTER' }),
      ask('PATCH', '/settings', { makerName: 'M' }),
    ]);
    const { body: kept } = await ask<Settings>('GET', '/settings');
    expect([kept.paperSize, kept.makerName, kept.currency]).toEqual(['LETTER', 'M', 'EUR']);
    const refused = await ask<ProblemDetails>('PATCH', '/settings', { readabilityMg: 0 });
    expect(refused.status).toBe(422);
    expect(refused.body.fields[0]?.path).toBe('readabilityMg');
  });

  it('keeps photos by their bytes, whatever they are called, and any other file as one that is only saved', async () => {
    const { service } = await serviceWith('empty');
    const png = Buffer.from(
      'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==',
      'base64',
    );
    const post = (body: Buffer) =>
      service.request('/api/attachments', { method: 'POST', body: new Uint8Array(body) });
    const kept = (await (await post(png)).json()) as { sha256: string; mediaType: string };
    expect(kept.mediaType).toBe('image/png');
    const back = await service.request(`/api/attachments/${kept.sha256}`);
    expect(Buffer.from(await back.arrayBuffer()).equals(png)).toBe(true);
    expect(back.headers.get('content-type')).toBe('image/png');
    const drawing = await post(Buffer.from('<svg onload="x()"/>'));
    expect(await drawing.json()).toMatchObject({ mediaType: 'application/octet-stream' });
    expect((await post(Buffer.alloc(26 * 1024 * 1024))).status).toBe(413);
  });
});
