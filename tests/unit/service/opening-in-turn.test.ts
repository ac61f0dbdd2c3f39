import { randomUUID } from 'node:crypto';
import { mkdirSync, mkdtempSync, realpathSync, rmSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { createLibraryOpener } from '@service/library/opener';
import { Places } from '@service/library/places';
import { LibrarySession } from '@service/library/session';

const now = () => new Date();
let base: string;

beforeEach(() => (base = realpathSync(mkdtempSync(join(tmpdir(), 'stillroom-turn-')))));
afterEach(() => rmSync(base, { recursive: true, force: true }));

function newSession(): LibrarySession {
  const places = new Places(base, base);
  const backupFolder = (folder: string) => places.backupFolder(folder);
  return new LibrarySession(places, createLibraryOpener({ now, newId: randomUUID, backupFolder }), now);
}

it('two windows that open a library at once, close and open it again find it open for writing', async () => {
  const folder = join(base, 'library');
  const session = newSession();
  await session.create(folder, 'empty');
  await Promise.all([session.open(folder), session.open(folder), session.close(), session.open(folder)]);
  expect(session.current().library.readOnly).toBe(false);
  await Promise.all([session.takeOver(), session.open(folder)]);
  expect(session.current().library.readOnly).toBe(false);
  await session.close();
});

it('a library opened by another name of its folder is the one that is open: not locked by ourselves, known once', async () => {
  const folder = join(base, 'library');
  const link = join(base, 'by another name');
  const session = newSession();
  await session.create(folder, 'empty');
  symlinkSync(folder, link);
  mkdirSync(join(base, 'safe'));
  session.places.chooseBackupFolder(link, join(base, 'safe'));
  await session.open(link);
  const { library } = session.current();
  expect(library.readOnly).toBe(false);
  expect(library.folder).toBe(folder);
  expect(session.places.recent().map((each) => each.folder)).toEqual([folder]);
  expect(session.places.backupFolder(folder)).toContain(join(base, 'safe'));
  expect(session.places.backupFolder(link)).toBe(session.places.backupFolder(folder));
  session.places.chooseBackupFolder(folder, null);
  expect(session.places.backupFolder(link)).toBeUndefined();
  await session.close();
});
