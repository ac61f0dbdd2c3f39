import { mkdtempSync, rmSync } from 'node:fs';
import { randomUUID } from 'node:crypto';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createLibraryOpener } from '@service/library/opener';
import { Places } from '@service/library/places';
import type { libraryStatus } from '@service/library/routes';
import { LibrarySession } from '@service/library/session';
import { createService } from '@service/service';
import { afterEach, beforeEach, expect, it } from 'vitest';

type Status = ReturnType<typeof libraryStatus>;

const now = () => new Date();
let base: string;
let folder: string;
let session: LibrarySession;
let letOpen: () => void;
let service: ReturnType<typeof createService>;

beforeEach(async () => {
  base = mkdtempSync(join(tmpdir(), 'stillroom-opening-'));
  folder = join(base, 'Shelf');
  const opener = createLibraryOpener({ now, newId: randomUUID });
  await (await opener.create(folder)).close();
  const gate = new Promise<void>((resolve) => (letOpen = resolve));
  session = new LibrarySession(
    new Places(base, base),
    {
      ...opener,
      open: async (path, onReading) => {
        onReading?.(3_000_000, 9_000_000);
        await gate;
        return opener.open(path);
      },
    },
    now,
  );
  service = createService({ session, now, newId: randomUUID });
});

afterEach(async () => {
  letOpen();
  await session.close();
  rmSync(base, { recursive: true, force: true });
});

const status = async (): Promise<Status> => (await (await service.request('/api/library')).json()) as Status;

it('says what is being opened and how much of it has been read, while all else waits for it', async () => {
  void session.start(folder);
  const list = service.request('/api/materials');
  const during = await status();
  expect(during).toMatchObject({ open: null, opening: { name: 'Shelf', done: 3_000_000, of: 9_000_000 } });
  letOpen();
  expect((await list).status).toBe(200);
  expect(await status()).toMatchObject({ open: { name: 'Shelf', readOnly: null }, opening: null });
});

it('answers that no library is open once it is known that none can be opened', async () => {
  void session.start(folder);
  const list = service.request('/api/materials');
  rmSync(join(folder, 'library.sqlite'));
  letOpen();
  expect((await list).status).toBe(409);
  expect(await status()).toMatchObject({ open: null, opening: null, trouble: { code: 'library-missing' } });
});

it('waits for nothing when nothing is being opened', async () => {
  expect((await service.request('/api/materials')).status).toBe(409);
  expect(await status()).toMatchObject({ open: null, opening: null });
});
