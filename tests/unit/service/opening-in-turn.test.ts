import { randomUUID } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, expect, it } from 'vitest';
import { createLibraryOpener } from '@service/library/opener';
import { Places } from '@service/library/places';
import { LibrarySession } from '@service/library/session';

const base = mkdtempSync(join(tmpdir(), 'stillroom-turn-'));
const now = () => new Date();

afterEach(() => rmSync(base, { recursive: true, force: true }));

it('two windows that open a library at once, close and open it again find it open for writing', async () => {
  const folder = join(base, 'library');
  const session = new LibrarySession(
    new Places(base, base),
    createLibraryOpener({ now, newId: randomUUID }),
    now,
  );
  await session.create(folder, 'empty');
  await Promise.all([session.open(folder), session.open(folder), session.close(), session.open(folder)]);
  expect(session.current().library.readOnly).toBe(false);
  await Promise.all([session.takeOver(), session.open(folder)]);
  expect(session.current().library.readOnly).toBe(false);
  await session.close();
});
