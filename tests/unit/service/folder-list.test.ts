import { mkdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { FolderList } from '@service/library/folder-list';
import type { libraryStatus } from '@service/library/routes';
import type { ProblemDetails } from '@service/problems/problem-details';
import { beforeEach, describe, expect, it } from 'vitest';
import { serviceWith } from './service-fixture';

type Status = ReturnType<typeof libraryStatus>;

describe('the folders under the home folder', () => {
  let made: Awaited<ReturnType<typeof serviceWith>>;
  const list = async (token?: string) =>
    (await made.ask<FolderList>('GET', `/library/folders${token ? `?token=${token}` : ''}`)).body;
  const names = (of: FolderList) => of.folders.map((one) => one.name);
  const tokenOf = (of: FolderList, name: string) =>
    of.folders.find((one) => one.name === name)?.token ?? 'none';

  beforeEach(async () => {
    made = await serviceWith('none', { home: 'home' });
    const home = join(made.folder, 'home');
    for (const path of ['Shelf 10', 'Shelf 2/Inner', '.hidden'])
      mkdirSync(join(home, path), { recursive: true });
    mkdirSync(join(made.folder, 'outside/secret'), { recursive: true });
    writeFileSync(join(home, 'a file'), '');
    writeFileSync(join(home, 'Shelf 10/library.sqlite'), '');
    symlinkSync(join(made.folder, 'outside'), join(home, 'way out'));
    symlinkSync(join(home, 'Shelf 2'), join(home, 'way within'));
    symlinkSync(join(home, 'nowhere'), join(home, 'broken'));
  });

  it('are listed by name, libraries marked, hidden ones, files and links that lead out of it left out', async () => {
    const home = await list();
    expect(home.here.name).toBe('Home');
    expect(home.above).toEqual([]);
    expect(names(home)).toEqual(['Shelf 2', 'Shelf 10']);
    expect(home.folders.map((one) => one.library)).toEqual([false, true]);
    const within = await list(tokenOf(home, 'Shelf 2'));
    expect([within.here.name, within.above.map((one) => one.name), names(within)]).toEqual([
      'Shelf 2',
      ['Home'],
      ['Inner'],
    ]);
    expect(JSON.stringify([home, within])).not.toContain(made.folder);
  });

  it('are known by tokens that were given, never by a path, and never outside of it', async () => {
    const outside = made.session.places.offer(join(made.folder, 'outside'));
    const paths = ['..', '/', encodeURIComponent(join(made.folder, 'outside')), outside, 'f'.repeat(24)];
    for (const token of paths) {
      const refused = await made.ask<ProblemDetails>('GET', `/library/folders?token=${token}`);
      expect([refused.status, refused.body.code], token).toEqual([404, 'not-found']);
    }
  });

  it('take a new library, and the backups of one', async () => {
    const inner = tokenOf(await list(tokenOf(await list(), 'Shelf 2')), 'Inner');
    const wanted = { name: 'Mine', kind: 'empty', place: inner };
    const { body } = await made.ask<Status>('POST', '/library/create', wanted);
    expect(body.open?.folder).toBe(join(made.folder, 'home/Shelf 2/Inner/Mine'));
    const { body: kept } = await made.ask<Status>('PUT', '/library/backups/folder', { token: inner });
    expect(kept.open?.backupFolder).toBe(join(made.folder, 'home/Shelf 2/Inner/Mine backups'));
    const unknown = { ...wanted, name: 'Other', place: 'f'.repeat(24) };
    expect((await made.ask('POST', '/library/create', unknown)).status).toBe(404);
  });

  it('are not listed where the system’s own dialog chooses', async () => {
    const { ask } = await serviceWith('none');
    expect((await ask('GET', '/library/folders')).status).toBe(404);
  });
});
