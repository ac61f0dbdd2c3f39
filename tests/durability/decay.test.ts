import { existsSync, readFileSync, readdirSync, unlinkSync, writeFileSync } from 'node:fs';
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
  newPlaces,
  problemOf,
  reopened,
  sampleOptions,
} from './sample-library';

let folder: string;
let file: string;
let log: string;

beforeEach(async () => {
  ({ folder, file, log } = newPlaces());
  const library = await createSample(folder);
  for (const id of ['a', 'b', 'c']) addJar(library, id);
  await library.backUp();
  addJar(library, 'd');
  await library.close();
});

function flip(path: string, bit: number): void {
  const bytes = readFileSync(path);
  bytes[bit >> 3] = (bytes[bit >> 3] ?? 0) ^ (1 << (bit & 7));
  writeFileSync(path, bytes);
}

describe('a library file with one bit flipped', () => {
  // Every bit in turn is for `npm run test:attack`; a prime step meets every kind of place.
  it('is refused as damaged wherever it is, with nothing changed on the disk', async () => {
    const whole = readFileSync(file);
    for (let bit = 3; bit < whole.length * 8; bit += 1601) {
      flip(file, bit);
      const before = fingerprints(folder);
      const refused: unknown = await openLibrary(folder, sampleOptions()).catch((error: unknown) => error);
      expect(refused, `bit ${bit}`).toBeInstanceOf(Problem);
      expect((refused as Problem).code, `bit ${bit}`).toMatch(/^library-(damaged|changed-outside)$/);
      expect(fingerprints(folder)).toEqual(before);
      writeFileSync(file, whole);
    }
  });

  it('is not folded over, and comes back from the backup with what the log adds', async () => {
    const before = await openLibrary(folder, sampleOptions());
    addJar(before, 'e');
    unlinkSync(join(folder, 'library.lock'));
    // In the text of a jar: SQLite itself sees nothing wrong with it.
    flip(file, (readFileSync(file).lastIndexOf('jar a') + 4) * 8);
    const problem = await problemOf(() => openLibrary(folder, sampleOptions()), 'library-damaged');
    const { name } = problem.facts.newestBackup as { name: string };
    const { library } = await recoverFromBackup(folder, name, sampleOptions());
    expect(jarIds(library)).toEqual(expect.arrayContaining(['a', 'b', 'c']));
    await library.close();
  });

  it('that its maker changed by hand is opened as it is once asked for, and kept as it was', async () => {
    flip(file, (readFileSync(file).lastIndexOf('jar a') + 4) * 8);
    const changed = readFileSync(file);
    const problem = await problemOf(() => openLibrary(folder, sampleOptions()), 'library-damaged');
    expect(problem.facts).toMatchObject({ asItIs: true });
    const { library, log: kept } = await recoverFromLog(folder, sampleOptions());
    expect(kept).toBeUndefined();
    expect(jarIds(library)).toEqual(['a', 'b', 'c', 'd']);
    await library.close();
    const aside = readdirSync(join(folder, 'backups')).find((name) => name.endsWith('as it was.sqlite'));
    expect(readFileSync(join(folder, 'backups', aside ?? '')).equals(changed)).toBe(true);
    expect(await reopened(folder, jarIds)).toEqual(['a', 'b', 'c', 'd']);
  });
});

describe('a change log whose end is gone', () => {
  it('is told by the lock that its writer left: which changes are missing', async () => {
    const library = await openLibrary(folder, sampleOptions());
    const early = readFileSync(log);
    for (const id of ['e', 'f']) addJar(library, id);
    const lock = readFileSync(join(folder, 'library.lock'), 'utf8');
    const dead = `${JSON.stringify({ ...(JSON.parse(lock) as object), pid: 999_999_999 })}\n`;
    writeFileSync(join(folder, 'library.lock'), dead);
    writeFileSync(log, early);
    const problem = await problemOf(() => openLibrary(folder, sampleOptions()), 'library-changed-outside');
    expect(problem.message).toContain('Changes 5 to 6');
    expect(problem.facts.goodLog).toEqual({ taken: 0, left: 2 });
    // It is told again as long as nobody has decided.
    await problemOf(() => openLibrary(folder, sampleOptions()), 'library-changed-outside');
    const { library: opened } = await recoverFromLog(folder, sampleOptions());
    expect(jarIds(opened)).toEqual(['a', 'b', 'c', 'd']);
    await opened.close();
    expect(existsSync(join(folder, 'library.lock'))).toBe(false);
    expect(await reopened(folder, jarIds)).toEqual(['a', 'b', 'c', 'd']);
  });
});

describe('a change log that breaks off before what its writer acknowledged', () => {
  it('is left as it was, to the last byte, until its maker decides; then all of it is kept', async () => {
    const library = await openLibrary(folder, sampleOptions());
    addJar(library, 'e');
    const early = readFileSync(log);
    addJar(library, 'f');
    const late = readFileSync(log);
    leaveLock(folder, JSON.parse(readFileSync(join(folder, 'library.lock'), 'utf8')) as object);
    // The last change breaks off in the middle, as where the power went and the disk had not kept its word.
    const broken = Buffer.from(early);
    late.copy(broken, early.indexOf(0), early.indexOf(0), early.indexOf(0) + 90);
    writeFileSync(log, broken);
    const before = fingerprints(folder);
    const problem = await problemOf(() => openLibrary(folder, sampleOptions()), 'library-changed-outside');
    expect(problem.message).toContain('Change 6 is missing');
    expect(fingerprints(folder)).toEqual(before);
    const { library: opened, log: kept } = await recoverFromLog(folder, sampleOptions());
    expect(jarIds(opened)).toEqual(['a', 'b', 'c', 'd', 'e']);
    expect(kept).toMatchObject({ taken: 1, left: 1 });
    expect(readFileSync(kept?.keptAs ?? '').equals(broken)).toBe(true);
    await opened.close();
  });
});

describe('a library replaced by an older one', () => {
  it('opens, and says that a backup goes further', async () => {
    const older = [readFileSync(file), readFileSync(log)] as const;
    const library = await openLibrary(folder, sampleOptions());
    addJar(library, 'e');
    await library.backUp();
    await library.close();
    writeFileSync(file, older[0]);
    writeFileSync(log, older[1]);
    const again = await openLibrary(folder, sampleOptions());
    expect(again.status().notes.map(({ message }) => message)).toEqual([
      expect.stringContaining('A backup of this library goes further'),
    ]);
    await again.close();
  });
});
