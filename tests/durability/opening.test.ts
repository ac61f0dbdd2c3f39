import {
  copyFileSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  truncateSync,
  unlinkSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { beforeEach, describe, expect, it } from 'vitest';
import { createInlineRewriter, type Rewriter } from '@db/library/folding/rewrite';
import { decodeLog } from '@db/library/log/log-format';
import { recoverFromLog } from '@db/library/opening/recovery';
import { createLibrary, openLibrary, type OpenLibrary } from '@db/library/open-library';
import {
  addJar,
  createSample,
  everything,
  fingerprints,
  jarIds,
  newFolder,
  problemOf,
  quickDisk,
  reopened,
  SAMPLE_MIGRATIONS,
  sampleOptions,
} from './sample-library';

let folder: string;
let file: string;
let log: string;

beforeEach(() => {
  folder = newFolder();
  file = join(folder, 'library.sqlite');
  log = join(folder, 'library.log');
});

/** A closed library with three jars in the file. */
async function closedLibrary(): Promise<void> {
  const library = await createSample(folder);
  for (const id of ['a', 'b', 'c']) addJar(library, id);
  await library.close();
}

/** A library whose process went away: two jars in the file, `more` in the log only. */
async function abandonedLibrary(more: string[]): Promise<OpenLibrary> {
  const library = await createSample(folder);
  addJar(library, 'a');
  addJar(library, 'b');
  await library.rewrite();
  for (const id of more) addJar(library, id);
  unlinkSync(join(folder, 'library.lock'));
  return library;
}

const refusedUntouched = async (code: Parameters<typeof problemOf>[1]) => {
  const before = fingerprints(folder);
  const problem = await problemOf(() => openLibrary(folder, sampleOptions()), code);
  expect(fingerprints(folder)).toEqual(before);
  return problem;
};

describe('creating a library', () => {
  it('makes one that opens again with what was put in', async () => {
    await closedLibrary();
    expect(await reopened(folder, jarIds)).toEqual(['a', 'b', 'c']);
  });

  it('never puts one over another', async () => {
    await closedLibrary();
    const before = fingerprints(folder);
    await problemOf(() => createLibrary(folder, sampleOptions()), 'conflict');
    expect(fingerprints(folder)).toEqual(before);
  });

  it('refuses a file in place of a folder', async () => {
    writeFileSync(folder, 'text');
    await problemOf(() => createLibrary(folder, sampleOptions()), 'library-not-one');
    expect(readFileSync(folder, 'utf8')).toBe('text');
  });
});

describe('opening what is not a whole library', () => {
  it('reports a folder that is gone, and creates nothing', async () => {
    await problemOf(() => openLibrary(folder, sampleOptions()), 'library-missing');
    expect(existsSync(folder)).toBe(false);
  });

  it('reports a missing file, with its log left alone and the newest backup named', async () => {
    const library = await createSample(folder);
    addJar(library, 'a');
    const backup = await library.backUp();
    await library.close();
    unlinkSync(file);
    const problem = await refusedUntouched('library-missing');
    expect(problem.facts.newestBackup).toMatchObject({ name: backup.name });
  });

  it('refuses a file given as the folder, and a folder in place of the file', async () => {
    mkdirSync(folder);
    mkdirSync(file);
    await problemOf(() => openLibrary(folder, sampleOptions()), 'library-not-one');
    const plain = join(folder, 'notes.txt');
    writeFileSync(plain, 'text');
    await problemOf(() => openLibrary(plain, sampleOptions()), 'library-not-one');
  });

  it.each([
    ['a PNG', Buffer.from('89504e470d0a1a0a0000000d49484452', 'hex')],
    ['junk', Buffer.alloc(50_000, 'junk')],
  ])('refuses %s: beside a log of ours it is damage, alone it is no library', async (_what, bytes) => {
    await closedLibrary();
    writeFileSync(file, bytes);
    await refusedUntouched('library-damaged');
    rmSync(log);
    rmSync(join(folder, 'backups'), { recursive: true });
    await refusedUntouched('library-not-one');
  });

  it('refuses zero bytes: SQLite would take them for an empty library', async () => {
    await closedLibrary();
    truncateSync(file, 0);
    await refusedUntouched('library-damaged');
  });

  it('refuses an SQLite file of another program', async () => {
    await closedLibrary();
    const bytes = readFileSync(file);
    bytes.writeUInt32BE(0x12345678, 68);
    writeFileSync(file, bytes);
    await refusedUntouched('library-damaged');
    rmSync(log);
    rmSync(join(folder, 'backups'), { recursive: true });
    await refusedUntouched('library-not-one');
  });

  it('refuses a newer schema, and a library made by other migrations', async () => {
    await closedLibrary();
    await problemOf(() => openLibrary(folder, sampleOptions({ migrations: [] })), 'library-newer');
    const [first] = SAMPLE_MIGRATIONS;
    const edited = [{ ...first!, sql: `${first!.sql} -- edited` }];
    await problemOf(() => openLibrary(folder, sampleOptions({ migrations: edited })), 'library-newer');
    expect(await reopened(folder, jarIds)).toEqual(['a', 'b', 'c']);
  });

  it('refuses a file cut at any page, with the newest good backup named', async () => {
    const library = await createSample(folder);
    for (let n = 0; n < 40; n += 1) addJar(library, `jar-${n}-${'x'.repeat(300)}`);
    const backup = await library.backUp();
    await library.close();
    const whole = readFileSync(file);
    expect(whole.length).toBeGreaterThan(5 * 4096);
    for (let length = 4096; length < whole.length; length += 4096) {
      for (const cut of [length, length + 1]) {
        writeFileSync(file, whole.subarray(0, cut));
        const problem = await refusedUntouched('library-damaged');
        expect(problem.facts.newestBackup).toMatchObject({ name: backup.name });
      }
    }
  });

  it('refuses flipped bytes in the structure', async () => {
    await closedLibrary();
    const whole = readFileSync(file);
    for (let page = 1; page * 4096 < whole.length; page += 1) {
      const flipped = Buffer.from(whole);
      flipped[page * 4096] = 0xff;
      writeFileSync(file, flipped);
      await refusedUntouched('library-damaged');
    }
  });

  it('refuses while another SQLite program has unfinished business with it', async () => {
    await closedLibrary();
    writeFileSync(`${file}-wal`, 'frames');
    await refusedUntouched('library-locked');
  });
});

describe('opening with a log', () => {
  it('replays what the file does not hold', async () => {
    const left = await abandonedLibrary(['c', 'd']);
    const library = await openLibrary(folder, sampleOptions());
    expect(everything(library)).toEqual(everything(left));
    expect(library.status().opening).toEqual({ replayed: 2, tornBytes: 0 });
    await library.close();
  });

  it('changes nothing by replaying twice, as when the power goes between file and log', async () => {
    const left = await abandonedLibrary(['c', 'd']);
    const inline = createInlineRewriter(quickDisk());
    let logBefore = Buffer.alloc(0);
    const rewriter: Rewriter = (job, announce) =>
      inline(job, async (sha256) => {
        await announce(sha256);
        logBefore = readFileSync(log);
      });
    await reopened(folder, () => undefined, { rewriter });
    writeFileSync(log, logBefore);
    const library = await openLibrary(folder, sampleOptions());
    expect(everything(library)).toEqual(everything(left));
    addJar(library, 'e');
    await library.close();
    expect(await reopened(folder, jarIds)).toEqual(['a', 'b', 'c', 'd', 'e']);
  });

  it('asks before it opens a file newer than its log, keeps both aside, and starts the log anew', async () => {
    await abandonedLibrary(['c']);
    const oldLog = readFileSync(log);
    const library = await openLibrary(folder, sampleOptions());
    addJar(library, 'd');
    addJar(library, 'e');
    await library.close();
    writeFileSync(log, oldLog);
    const problem = await refusedUntouched('library-changed-outside');
    expect(problem.facts).toMatchObject({ asItIs: true });
    const { library: again } = await recoverFromLog(folder, sampleOptions());
    const names = readdirSync(join(folder, 'backups'));
    expect(names.some((name) => name.endsWith('as it was.sqlite'))).toBe(true);
    expect(names.some((name) => name.endsWith('set aside.log'))).toBe(true);
    addJar(again, 'f');
    expect(jarIds(again)).toEqual(['a', 'b', 'c', 'd', 'e', 'f']);
    unlinkSync(join(folder, 'library.lock'));
    expect(await reopened(folder, jarIds)).toEqual(['a', 'b', 'c', 'd', 'e', 'f']);
  });

  it('opens a file without a log, and says that the log was not there', async () => {
    await closedLibrary();
    unlinkSync(log);
    const library = await openLibrary(folder, sampleOptions());
    expect(jarIds(library)).toEqual(['a', 'b', 'c']);
    expect(library.status().notes.map(({ message }) => message)).toEqual([
      expect.stringContaining('library.log, was not there'),
    ]);
    await library.close();
  });

  it('says nothing of a log missing beside a library that was just made', async () => {
    await (await createSample(folder)).close();
    unlinkSync(log);
    expect(await reopened(folder, (library) => library.status().notes)).toEqual([]);
  });

  it('drops a torn last record, says so, and goes on from there', async () => {
    await abandonedLibrary(['c', 'd']);
    const bytes = readFileSync(log);
    writeFileSync(log, bytes.fill(0, decodeLog(bytes).length - 7));
    const library = await openLibrary(folder, sampleOptions());
    expect(library.status().opening).toMatchObject({ replayed: 1 });
    expect(library.status().opening.tornBytes).toBeGreaterThan(0);
    addJar(library, 'e');
    unlinkSync(join(folder, 'library.lock'));
    expect(await reopened(folder, jarIds)).toEqual(['a', 'b', 'c', 'e']);
  });

  it('refuses the log of another library', async () => {
    await closedLibrary();
    const other = newFolder();
    await (await createSample(other)).close();
    copyFileSync(join(other, 'library.log'), log);
    await refusedUntouched('library-changed-outside');
  });

  it('refuses a log that starts after the file ends', async () => {
    await abandonedLibrary([]);
    const older = readFileSync(file);
    const library = await openLibrary(folder, sampleOptions());
    addJar(library, 'c');
    await library.rewrite();
    addJar(library, 'd');
    unlinkSync(join(folder, 'library.lock'));
    writeFileSync(file, older);
    await refusedUntouched('library-changed-outside');
  });

  it('refuses a log that continues another state of the same length', async () => {
    await abandonedLibrary([]);
    const copy = newFolder();
    mkdirSync(copy);
    copyFileSync(file, join(copy, 'library.sqlite'));
    copyFileSync(log, join(copy, 'library.log'));
    const here = await openLibrary(folder, sampleOptions());
    const there = await openLibrary(copy, sampleOptions());
    addJar(here, 'here');
    addJar(there, 'there');
    await here.close();
    await there.rewrite();
    addJar(there, 'there too');
    copyFileSync(join(copy, 'library.log'), log);
    await refusedUntouched('library-changed-outside');
  });

  it('sweeps half-written files of processes that are gone, and nothing else', async () => {
    await closedLibrary();
    const group = join(folder, 'attachments', 'ab');
    mkdirSync(group, { recursive: true });
    mkdirSync(join(folder, 'backups'), { recursive: true });
    const half = (place: string, name: string, pid: number) =>
      join(place, `.${name}.${pid}-0123456789ab.part`);
    const stale = [
      half(folder, 'library.sqlite', 999_999_999),
      half(join(folder, 'backups'), '2026-03-01 change 3 daily.sqlite', 999_999_999),
      half(group, 'ab'.repeat(32), 999_999_999),
    ];
    const theirs = [
      join(folder, 'library (conflict copy).sqlite'),
      join(folder, 'backups', 'notes of mine.part'),
      // The first process of the machine is always there.
      half(group, 'cd'.repeat(32), 1),
    ];
    for (const path of [...stale, ...theirs]) writeFileSync(path, 'half');
    await reopened(folder, () => undefined);
    expect(stale.filter((path) => existsSync(path))).toEqual([]);
    expect(theirs.filter((path) => !existsSync(path))).toEqual([]);
  });
});
