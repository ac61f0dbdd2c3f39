import { existsSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { decodeLog, encodeHeader, encodeRecord, type Position } from '@db/library/log/log-format';
import { withRoom } from '@db/library/log/log-room';
import { openLibrary } from '@db/library/open-library';
import { recoverFromLog } from '@db/library/opening/recovery';
import { sha256Of } from '@db/library/file/whole-file';
import { leaveLock } from './attack/sample';
import {
  addJar,
  closedSample,
  createSample,
  everything,
  jarIds,
  newFolder,
  problemOf,
  reopened,
  sampleOptions,
} from './sample-library';

// What people and machines do to a library's folder while it is open, or before it is.

describe('a clock that is put back and forth between edits', () => {
  it('loses no edit, no backup and no attachment, whatever it says at each', async () => {
    const folder = newFolder();
    const days = [0, 3650, -3650, 1, -1, 0.01, 400, -400, 0];
    let offset = 0;
    const now = () => new Date(Date.UTC(2026, 5, 1, 12) + offset * 86_400_000);
    let library = await createSample(folder, { now });
    const kept: string[] = [];
    for (const [at, day] of days.entries()) {
      offset = day;
      addJar(library, `jar ${at}`);
      kept.push(await library.attachments.put(Buffer.from(`photo ${at}`)));
      if (at % 3 === 1) await library.backUp();
      if (at % 4 === 2) {
        await library.close();
        library = await openLibrary(folder, sampleOptions({ now }));
        expect(library.readOnly).toBe(false);
      }
    }
    const before = everything(library);
    const asked = (await library.listBackups()).filter(({ reason }) => reason === 'request');
    expect(asked.map(({ good }) => good)).toEqual([true, true, true]);
    await library.close();
    expect(await reopened(folder, everything, { now })).toEqual(before);
    const again = await openLibrary(folder, sampleOptions({ now }));
    for (const [at, name] of kept.entries())
      expect(Buffer.from(await again.attachments.get(name)).toString()).toBe(`photo ${at}`);
    await again.close();
  });
});

describe('a folder that is renamed under way', () => {
  it.each(['a change', 'a fold', 'a backup', 'an attachment', 'closing'])(
    'before %s: what was acknowledged is in it, and no other folder is made',
    async (before) => {
      const folder = newFolder();
      const library = await createSample(folder);
      addJar(library, 'a');
      renameSync(folder, `${folder} renamed`);
      if (before === 'a change') expect(() => addJar(library, 'b')).toThrow();
      if (before === 'a fold') await expect(library.rewrite()).rejects.toThrow();
      if (before === 'a backup') await expect(library.backUp()).rejects.toThrow();
      if (before === 'an attachment')
        await expect(library.attachments.put(Buffer.from('photo'))).rejects.toThrow();
      await library.close();
      expect(existsSync(folder)).toBe(false);
      const held = join(`${folder} renamed`, 'library.lock');
      if (existsSync(held)) leaveLock(`${folder} renamed`, JSON.parse(readFileSync(held, 'utf8')) as object);
      expect(await reopened(`${folder} renamed`, jarIds)).toEqual(['a']);
    },
  );
});

describe('attachments taken away or altered while the library is open', () => {
  it('are told when they are used; one added again is whole again; edits go on meanwhile', async () => {
    const folder = newFolder();
    const library = await createSample(folder);
    const names = await Promise.all(
      ['one', 'two', 'three'].map((text) => library.attachments.put(Buffer.from(text))),
    );
    const [one = '', two = '', three = ''] = names;
    const path = (name: string) => join(folder, 'attachments', name.slice(0, 2), name);
    rmSync(path(one));
    writeFileSync(path(two), '');
    await problemOf(() => library.attachments.get(one), 'not-found');
    await problemOf(() => library.attachments.get(two), 'library-damaged');
    expect(Buffer.from(await library.attachments.get(three)).toString()).toBe('three');
    rmSync(join(folder, 'attachments'), { recursive: true });
    addJar(library, 'a');
    for (const [at, text] of ['one', 'two', 'three'].entries())
      expect(await library.attachments.put(Buffer.from(text))).toBe(names[at]);
    expect(Buffer.from(await library.attachments.get(two)).toString()).toBe('two');
    await library.close();
  });
});

/** A library whose log was never folded: so many changes of some kilobytes each. */
async function withLongLog(count: number, kilobytes: number): Promise<{ folder: string; ends: number[] }> {
  const folder = newFolder();
  await closedSample(folder);
  const log = join(folder, 'library.log');
  const { header } = decodeLog(readFileSync(log));
  const fileSha256 = sha256Of(readFileSync(join(folder, 'library.sqlite')));
  let at: Position = header;
  const parts: Uint8Array[] = [encodeHeader({ ...header, fileSha256 })];
  const ends: number[] = [];
  let length = parts[0]?.length ?? 0;
  for (let n = 0; n < count; n += 1) {
    const made = encodeRecord(at, '2026-01-31T10:20:30.000Z', [
      ['INSERT INTO jar (id, name, grams) VALUES (?, ?, ?)', `jar ${n}`, 'x'.repeat(kilobytes * 1024), n],
    ]);
    at = made.position;
    parts.push(made.bytes);
    length += made.bytes.length;
    ends.push(length);
  }
  writeFileSync(log, withRoom(Buffer.concat(parts)));
  return { folder, ends };
}

const count = (library: { get<R>(sql: string): R | undefined }) =>
  library.get<{ n: number }>('SELECT count(*) AS n FROM jar')?.n;

// As long as asked for, in megabytes: STILLROOM_LONG_LOG=600 is longer than any text may be.
const megabytes = Number(process.env.STILLROOM_LONG_LOG ?? 4);

describe('a log that was not folded for long', { timeout: 30_000 + megabytes * 5_000 }, () => {
  it('opens with all of its changes, goes on, and is folded', async () => {
    const { folder } = await withLongLog(megabytes * 4, 256);
    const library = await openLibrary(folder, sampleOptions());
    expect(count(library)).toBe(megabytes * 4);
    addJar(library, 'one more');
    await library.close();
    expect(readFileSync(join(folder, 'library.log')).length).toBeLessThan(200_000);
    expect(await reopened(folder, count)).toBe(megabytes * 4 + 1);
  });

  it('damaged near its beginning is told, and opens with the changes before that; all of it is kept', async () => {
    const { folder, ends } = await withLongLog(megabytes * 4, 256);
    const log = join(folder, 'library.log');
    const bytes = readFileSync(log);
    const at = (ends[2] ?? 0) + 5_000;
    bytes.writeUInt8(bytes.readUInt8(at) ^ 1, at);
    writeFileSync(log, bytes);
    const problem = await problemOf(() => openLibrary(folder, sampleOptions()), 'library-damaged');
    expect(problem.facts.goodLog).toEqual({ taken: 3, left: megabytes * 4 - 3 });
    const { library, log: kept } = await recoverFromLog(folder, sampleOptions());
    expect(count(library)).toBe(3);
    expect(readFileSync(kept?.keptAs ?? '').equals(bytes)).toBe(true);
    await library.close();
  });
});
