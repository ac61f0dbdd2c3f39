import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeEach, describe, expect, it } from 'vitest';
import { Problem } from '@core/problems/problem';
import { openLibrary } from '@db/library/open-library';
import { recoverFromBackup, recoverFromLog } from '@db/library/opening/recovery';
import { leaveLock } from './attack/sample';
import {
  addJar,
  createSample,
  fingerprints,
  jarIds,
  newFolder,
  problemOf,
  sampleOptions,
} from './sample-library';

// Whatever is damaged: what the refusal offers can be kept. It opens, and what it leaves out is kept whole.

let folder: string;
let file: Buffer;
let log: Buffer;
let id: string;
let held: object;

/** A library whose process went away: two jars in the file, two in the log only. */
beforeEach(async () => {
  folder = newFolder();
  const library = await createSample(folder);
  id = library.id;
  for (const jar of ['a', 'b']) addJar(library, jar);
  await library.rewrite();
  for (const jar of ['c', 'd']) addJar(library, jar);
  file = readFileSync(join(folder, 'library.sqlite'));
  log = readFileSync(join(folder, 'library.log'));
  held = JSON.parse(readFileSync(join(folder, 'library.lock'), 'utf8')) as object;
});

function put(damaged: { file?: Buffer; log?: Buffer }): void {
  writeFileSync(join(folder, 'library.sqlite'), damaged.file ?? file);
  writeFileSync(join(folder, 'library.log'), damaged.log ?? log);
  leaveLock(folder, held);
  rmSync(join(folder, 'backups'), { recursive: true, force: true });
}

function flipped(bytes: Buffer, at: number, bit: number): Buffer {
  const copy = Buffer.from(bytes);
  copy.writeUInt8(copy.readUInt8(at) ^ (1 << bit), at);
  return copy;
}

/** How the library is refused, and what it holds once its offer is taken; `offered` is undefined where there is none. */
async function takeOffer(damaged: { file?: Buffer; log?: Buffer }, what: string) {
  put(damaged);
  const before = fingerprints(folder);
  const refused: unknown = await openLibrary(folder, sampleOptions()).catch((error: unknown) => error);
  if (!(refused instanceof Problem)) throw new Error(`${what} was not refused: ${String(refused)}`);
  expect(fingerprints(folder), what).toEqual(before);
  const { goodLog, asItIs } = refused.facts as { goodLog?: { taken: number }; asItIs?: boolean };
  if (!goodLog && !asItIs) return { refused, offered: undefined };
  // For reading, so that it is looked at and not folded: what was put in place must open for whoever comes.
  const { library } = await recoverFromLog(folder, sampleOptions({ readOnly: true }));
  const offered = { jars: jarIds(library).join(''), taken: goodLog?.taken, kept: keptAside() };
  await library.close();
  return { refused, offered };
}

/** The hashes of what was kept among the backups. */
function keptAside(): string[] {
  return Object.values(fingerprints(join(folder, 'backups')));
}

function hashes(...files: Buffer[]): string[] {
  writeFileSync(join(folder, 'a.sample'), Buffer.alloc(0));
  return files.map((bytes) => {
    writeFileSync(join(folder, 'a.sample'), bytes);
    const found = fingerprints(folder)['a.sample'] ?? '';
    rmSync(join(folder, 'a.sample'));
    return found;
  });
}

describe('the first line of the log, wherever it is damaged', () => {
  it('costs no change: the offer opens with all of them, and the log as it was is kept', async () => {
    for (let at = 0; at < log.indexOf('\n'); at += 1) {
      const damaged = flipped(log, at, at % 7);
      const { offered } = await takeOffer({ log: damaged }, `byte ${at}`);
      expect(offered, `byte ${at}`).toEqual({ jars: 'abcd', taken: 2, kept: hashes(damaged) });
    }
  });

  it('and wherever it is cut, opens as its file was last written', async () => {
    for (let at = 0; at <= log.indexOf('\n'); at += 1) {
      const damaged = log.subarray(0, at);
      const { offered } = await takeOffer({ log: damaged }, `cut at ${at}`);
      expect(offered, `cut at ${at}`).toEqual({ jars: 'ab', taken: 0, kept: hashes(damaged) });
    }
  });
});

describe('the name of the library in its file, wherever it is damaged', () => {
  it('is told as a damaged file, never as the log of another library; where it can be opened, all is in it', async () => {
    const start = file.indexOf(id);
    for (let at = start; at < start + id.length; at += 1)
      for (const bit of [at % 4, 4 + (at % 4)]) {
        const damaged = flipped(file, at, bit);
        const { refused, offered } = await takeOffer({ file: damaged }, `byte ${at}, bit ${bit}`);
        expect(refused.code, `byte ${at}, bit ${bit}`).toBe('library-damaged');
        expect(refused.facts.file, `byte ${at}, bit ${bit}`).toBe('library.sqlite');
        if (!offered) continue;
        expect(offered.jars).toBe('abcd');
        expect(offered.kept).toEqual(expect.arrayContaining(hashes(damaged, log)));
      }
  });

  it('beside a log whose first line is damaged too: what is offered opens', async () => {
    const damagedLog = flipped(log, 30, 1);
    const start = file.indexOf(id);
    for (let at = start; at < start + id.length; at += 5)
      for (let bit = 0; bit < 8; bit += 1) {
        const damaged = { file: flipped(file, at, bit), log: damagedLog };
        const { offered } = await takeOffer(damaged, `byte ${at}, bit ${bit}`);
        if (offered) expect(offered).toMatchObject({ jars: 'abcd', kept: hashes(damagedLog) });
      }
  });
});

describe('the tables of the file, wherever their description is damaged', () => {
  it('are told as a damaged file; nothing is offered that could not work with them', async () => {
    const start = file.indexOf('CREATE TABLE jar');
    for (let at = start; at < start + 80; at += 3) {
      const damaged = flipped(file, at, at % 7);
      for (const beside of [log, flipped(log, 30, 1)]) {
        const { refused, offered } = await takeOffer({ file: damaged, log: beside }, `byte ${at}`);
        expect(refused.code).toBe('library-damaged');
        expect(offered, `byte ${at}`).toBeUndefined();
      }
    }
  });
});

describe('a backup with one bit flipped', () => {
  it('is offered no more, and not gone back to', async () => {
    put({});
    const library = await openLibrary(folder, sampleOptions());
    addJar(library, 'e');
    const newer = await library.backUp();
    const path = join(folder, 'backups', newer.name);
    const whole = readFileSync(path);
    // In the text of a jar: SQLite sees nothing wrong with it.
    writeFileSync(path, flipped(whole, whole.lastIndexOf('jar a') + 4, 1));
    const before = readFileSync(join(folder, 'library.sqlite'));
    const refused = await problemOf(() => library.restore(newer.name), 'library-damaged');
    expect(refused.message).toContain('This backup is damaged');
    expect(readFileSync(join(folder, 'library.sqlite')).equals(before)).toBe(true);
    expect(jarIds(library).join('')).toBe('abcde');
    await library.close();
    writeFileSync(join(folder, 'library.sqlite'), whole.subarray(0, 5000));
    const problem = await problemOf(() => openLibrary(folder, sampleOptions()), 'library-damaged');
    // The one made of the present state, before it was to be gone back to.
    expect(problem.facts.newestBackup).toMatchObject({ sequence: 5, reason: 'restore' });
    await problemOf(() => recoverFromBackup(folder, newer.name, sampleOptions()), 'library-damaged');
  });
});
