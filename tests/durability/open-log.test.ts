import fc from 'fast-check';
import {
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeEach, describe, expect, it } from 'vitest';
import { Problem } from '@core/problems/problem';
import type { FileSystem } from '@db/library/file/file-system';
import { ChangeLog } from '@db/library/log/log';
import {
  chainAfter,
  decodeLog,
  encodeHeader,
  encodeRecord,
  statementsOf,
  type LogHeader,
  type Position,
} from '@db/library/log/log-format';
import { putInPlace, takeAway, takenAway } from '@db/library/log/log-place';
import { lengthWithRoom, withRoom } from '@db/library/log/log-room';
import { DISK_ERRORS, FaultyFileSystem } from './faulty-file-system';
import { problemOf, quickDisk } from './sample-library';

/* The open log by itself: what it acknowledged stands in it, whatever the disk does; what it did not, does not. */

const base = mkdtempSync(join(tmpdir(), 'stillroom-log-'));
afterAll(() => rmSync(base, { recursive: true, force: true }));

const ID = '0195c7a0-0000-7000-8000-000000000001';
const START: LogHeader = {
  libraryId: ID,
  sequence: 4,
  chain: chainAfter('', 'start'),
  fileSha256: undefined,
};
const AT = '2026-03-01T08:00:00.000Z';

let folders = 0;
let path: string;
beforeEach(() => {
  path = newPath();
});
function newPath(): string {
  const folder = join(base, String((folders += 1)));
  mkdirSync(folder);
  return join(folder, 'library.log');
}
const installed = (fs = quickDisk(), guard = (): void => undefined, longest = 10_000_000): ChangeLog =>
  ChangeLog.install(fs, path, { bytes: encodeHeader(START), position: START }, { guard, longest });
const recordAfter = (position: Position, says: string) => encodeRecord(position, AT, [['SAY ?', says]]);
/** What the log on the disk says, read as the next opener reads it. */
function said(): { from: number; says: unknown[]; files: string[] } {
  const log = decodeLog(readFileSync(path));
  const says = log.records.flatMap((record) => statementsOf(log.bytes, record).map(([, value]) => value));
  return { from: log.header.sequence, says, files: log.files };
}

type Step = { kind: 'append' | 'announce' | 'take back' | 'room' | 'fold' | 'restart'; size: number };
const step: fc.Arbitrary<Step> = fc.record({
  kind: fc.constantFrom('append', 'append', 'append', 'announce', 'take back', 'room', 'fold', 'restart'),
  size: fc.oneof(fc.nat(60), fc.constantFrom(400, 70_000)),
});

/** A log with what it is known to hold, step by step. */
class Model {
  position: Position = START;
  from: Position = START;
  says: string[] = [];
  #marks: { length: number; position: Position }[] = [];
  #made = 0;

  constructor(readonly log: ChangeLog) {}

  take({ kind, size }: Step): void {
    const { log } = this;
    if (kind === 'append') {
      const says = `${(this.#made += 1)}`.padEnd(size, 'x');
      const record = recordAfter(this.position, says);
      const length = log.length;
      log.append(record);
      this.#marks.push({ length, position: this.position });
      this.position = record.position;
      this.says.push(says);
    } else if (kind === 'announce') {
      log.announceFile('f'.repeat(64));
      this.#marks = [];
    } else if (kind === 'take back') {
      const mark = this.#marks.pop();
      if (!mark) return;
      log.truncate(mark.length, mark.position);
      this.position = mark.position;
      this.says.pop();
    } else if (kind === 'room') log.makeRoom();
    else this.#shorten(kind);
  }

  #shorten(kind: 'fold' | 'restart'): void {
    const header = { ...START, ...this.position, fileSha256: 'a'.repeat(64) };
    if (kind === 'fold') this.log.startAfter(this.log.length, header);
    else this.log.restartAt(header);
    this.from = this.position;
    this.says = [];
    this.#marks = [];
  }
}

describe('the log of an open library', () => {
  it('holds what was appended and not taken back, since it was last folded, and room behind it', () => {
    fc.assert(
      fc.property(fc.array(step, { maxLength: 20 }), (steps) => {
        path = newPath();
        const model = new Model(installed());
        for (const one of steps) {
          model.take(one);
          const { from, says } = said();
          expect([from, says]).toEqual([model.from.sequence, model.says]);
          expect(model.log.isAsLeft()).toBe(true);
        }
        expect(readFileSync(path).at(-1)).toBe(0);
        model.log.close();
        expect(readdirSync(join(path, '..'))).toEqual(['library.log']);
      }),
      { numRuns: 30 },
    );
  });

  it('loses nothing that was acknowledged, and takes up nothing that was not, at whichever call the disk fails', () => {
    const kind = fc.constantFrom(...DISK_ERRORS, 'short', 'half-then');
    fc.assert(
      fc.property(
        fc.array(step, { minLength: 1, maxLength: 8 }),
        fc.integer({ min: 1, max: 40 }),
        kind,
        (steps, at, how) => {
          path = newPath();
          const disk = new FaultyFileSystem();
          const model = new Model(installed(disk.fs));
          disk.arm(at, how);
          for (const one of steps) {
            try {
              model.take(one);
            } catch (error) {
              // What is shortened may have been shortened, or not: both hold all changes.
              if (one.kind !== 'append' && one.kind !== 'announce') return;
              expect(error).toBeInstanceOf(Problem);
            }
          }
          disk.disarm();
          model.take({ kind: 'append', size: 5 });
          const { from, says } = said();
          expect([from, says]).toEqual([model.from.sequence, model.says]);
          model.log.close();
        },
      ),
      { numRuns: 80 },
    );
  });

  it('keeps a zero behind a record that would fill the file to its last byte', () => {
    const log = installed();
    const start = log.length;
    // Framed, a record is longer than what it says, by as much as this one.
    const frame = recordAfter(START, '').bytes.length;
    const room = lengthWithRoom(start) - start;
    const exact = recordAfter(START, 'x'.repeat(room - frame - String(room).length + 2));
    expect(start + exact.bytes.length).toBe(lengthWithRoom(start));
    log.append(exact);
    expect(readFileSync(path).at(-1)).toBe(0);
    expect(said().says).toHaveLength(1);
    log.close();
  });

  it('takes nothing once it is full, and says so; what it holds stands', async () => {
    const log = installed(quickDisk(), undefined, encodeHeader(START).length + 400);
    const first = recordAfter(START, 'x'.repeat(150));
    log.append(first);
    const problem = await problemOf(
      () => log.append(recordAfter(first.position, 'y'.repeat(150))),
      'disk-error',
    );
    expect(problem.message).toContain('full');
    expect(said().says).toEqual(['x'.repeat(150)]);
    log.close();
  });

  it('acknowledges nothing that its guard does not let through, before or after it was written', async () => {
    let asked = 0;
    let refuseAt = 0;
    const guard = (): void => {
      asked += 1;
      if (asked === refuseAt)
        throw new Problem({ code: 'library-locked', title: 'Taken over.', advice: 'Go.' });
    };
    for (const at of [1, 2]) {
      path = newPath();
      [asked, refuseAt] = [0, at];
      const log = installed(quickDisk(), guard);
      await problemOf(() => log.append(recordAfter(START, 'late')), 'library-locked');
      expect(log.length).toBe(encodeHeader(START).length);
      log.close();
    }
  });

  it.each<[string, () => void]>([
    ['was renamed away', () => renameSync(path, `${path}.away`)],
    ['was removed', () => rmSync(path)],
    ['was replaced by the same content', () => writeFileSync(`${path}.new`, readFileSync(path))],
    ['was cut to its records', () => writeFileSync(path, encodeHeader(START))],
    ['was written into', () => writeFileSync(path, withRoom(Buffer.from('stillroom-log 2 other\n')))],
  ])('that %s from outside takes no more changes', async (_, change) => {
    const log = installed();
    change();
    if (readdirSync(join(path, '..')).includes('library.log.new')) renameSync(`${path}.new`, path);
    // Another time, which a coarse clock would not show.
    if (readdirSync(join(path, '..')).includes('library.log')) utimesSync(path, 1, 1);
    expect(log.isAsLeft()).toBe(false);
    await problemOf(() => log.append(recordAfter(START, 'late')), 'library-changed-outside');
    log.close();
  });

  it('whose time alone was changed goes on', () => {
    const log = installed();
    utimesSync(path, 1, 1);
    log.append(recordAfter(START, 'on'));
    expect(said().says).toEqual(['on']);
    log.close();
  });

  it('is never put in the place of another', () => {
    writeFileSync(path, 'somebody’s');
    expect(() => installed()).toThrow(/EEXIST/);
    expect(readFileSync(path, 'utf8')).toBe('somebody’s');
    expect(readdirSync(join(path, '..'))).toEqual(['library.log']);
  });
});

describe('the room of a log', () => {
  it('is always some, never less for a longer log, and never more than a megabyte and a block', () => {
    // Of any length, and of whole blocks.
    const length = fc.oneof(
      fc.nat(5_000_000),
      fc.nat(20).map((blocks) => blocks * 64 * 1024),
    );
    fc.assert(
      fc.property(length, fc.nat(100_000), (held, more) => {
        const room = lengthWithRoom(held) - held;
        expect(room).toBeGreaterThan(0);
        expect(room).toBeLessThanOrEqual(1024 * 1024 + 64 * 1024);
        expect(lengthWithRoom(held) % (64 * 1024)).toBe(0);
        expect(lengthWithRoom(held + more)).toBeGreaterThanOrEqual(lengthWithRoom(held));
      }),
    );
  });
});

describe('a file that changes hands', () => {
  it('is found where its taker left it, the latest first, and what only looks like it is not', () => {
    const fs = quickDisk();
    writeFileSync(path, 'one');
    const first = takeAway(fs, path)!;
    utimesSync(first, 100, 100);
    writeFileSync(path, 'two');
    const second = takeAway(fs, path)!;
    utimesSync(second, 200, 200);
    for (const name of ['.library.log.taken', '.other.log.1-0123456789ab.taken', '.library.log.1-xyz.taken'])
      writeFileSync(join(path, '..', name), '');
    expect(takenAway(fs, path)).toEqual([second, first]);
    expect(takeAway(fs, path)).toBeUndefined();
    putInPlace(fs, second, path);
    expect(readFileSync(path, 'utf8')).toBe('two');
    expect(() => putInPlace(fs, first, path)).toThrow(/EEXIST/);
    expect(readFileSync(path, 'utf8')).toBe('two');
  });

  it('is put in place on a disk without links too, and not over another', () => {
    const noLinks = (): never => {
      throw Object.assign(new Error('no links'), { code: 'EPERM' });
    };
    const disk: FileSystem = new Proxy(quickDisk(), {
      get: (held, name: keyof FileSystem) => (name === 'linkSync' ? noLinks : held[name]),
    });
    writeFileSync(`${path}.new`, 'new');
    expect(putInPlace(disk, `${path}.new`, path)).toBe(true);
    writeFileSync(`${path}.new`, 'newer');
    expect(() => putInPlace(disk, `${path}.new`, path)).toThrow(/already/);
    expect(readFileSync(path, 'utf8')).toBe('new');
  });
});
