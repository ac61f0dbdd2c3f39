import fc from 'fast-check';
import { afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { openBytes } from '@db/library/file/library-bytes';
import { createMeta, readMeta, writePosition } from '@db/library/file/meta';
import {
  chainAfter,
  decodeLog,
  encodeHeader,
  encodeRecord,
  type LoggedStatement,
  type LogContents,
  type Position,
} from '@db/library/log/log-format';
import { withRoom } from '@db/library/log/log-room';
import { endOf, meets, recordsBeyond, replay, replayInPieces, stateAt } from '@db/library/log/replay';
import { salvageLog } from '@db/library/log/salvage';
import { Engine } from '@db/library/sql/engine';
import { migrate } from '@db/migrations/runner';
import { everything, SAMPLE_MIGRATIONS } from './sample-library';

/* The log repeated: whatever was changed, and wherever the file stood, it comes to the state that was acknowledged. */

const ID = '0195c7a0-0000-7000-8000-000000000001';
const AT = '2026-03-01T08:00:00.000Z';
const START: Position = { sequence: 0, chain: chainAfter('', ID) };
const SHA = 'a'.repeat(64);

let empty: Uint8Array;
let engine: Engine;
beforeAll(async () => {
  const fresh = await Engine.open();
  createMeta(fresh, { id: ID, format: 1, ...START, revision: 1, createdAt: AT });
  migrate(fresh, SAMPLE_MIGRATIONS, new Date(AT));
  empty = fresh.exportBytes();
  fresh.close();
});
beforeEach(async () => {
  engine = await Engine.open(empty);
});
afterEach(() => engine.close());

const jar = fc.constantFrom('a', 'b', 'c', 'd');
const text = fc.oneof(
  fc.string({ unit: 'grapheme', maxLength: 8 }),
  fc.constantFrom('"\\\n', "it's", '{"seq":9,"at":', '\u2028'),
);
const statement: fc.Arbitrary<LoggedStatement> = fc.oneof(
  fc
    .tuple(jar, text)
    .map(([id, name]): LoggedStatement => [
      'INSERT INTO jar (id, name, grams) VALUES (?, ?, ?) ON CONFLICT (id) DO UPDATE SET name = excluded.name',
      ...[id, name, null],
    ]),
  fc
    .tuple(jar, fc.option(fc.double({ noNaN: true, noDefaultInfinity: true })))
    .map(([id, grams]): LoggedStatement => ['UPDATE jar SET grams = ? WHERE id = ?', grams, id]),
  jar.map((id): LoggedStatement => ['DELETE FROM jar WHERE id = ?', id]),
  fc
    .tuple(fc.nat(3), jar, text)
    .map(([id, of, words]): LoggedStatement => [
      'INSERT OR REPLACE INTO label (id, jar_id, text) SELECT ?, id, ? FROM jar WHERE id = ? AND NOT EXISTS (SELECT 1 FROM label WHERE text = ?)',
      ...[id, words, of, words],
    ]),
);
const transactions = fc.array(fc.array(statement, { minLength: 1, maxLength: 4 }), { maxLength: 10 });

interface Written {
  log: LogContents;
  bytes: Uint8Array;
  /** All that could be seen after so many changes, and where each record begins. */
  states: unknown[];
  starts: number[];
}

/** Runs transactions as a library does; what the database refuses is in neither. */
function written(all: readonly LoggedStatement[][]): Written {
  const parts = [encodeHeader({ libraryId: ID, ...START, fileSha256: SHA })];
  let position = START;
  const states: unknown[] = [everything(engine)];
  const starts: number[] = [];
  for (const statements of all) {
    engine.control('BEGIN');
    try {
      for (const [sql, ...values] of statements) engine.run(sql, ...values);
      const record = encodeRecord(position, AT, statements);
      writePosition(engine, record.position);
      engine.control('COMMIT');
      starts.push(parts.reduce((sum, part) => sum + part.length, 0));
      parts.push(record.bytes);
      position = record.position;
      states.push(everything(engine));
    } catch {
      engine.control('ROLLBACK');
    }
  }
  const bytes = withRoom(Buffer.concat(parts));
  return { log: decodeLog(bytes), bytes, states, starts };
}

/** Another database as it was at the beginning, for as long as `work` takes. */
async function beside<T>(work: (other: Engine) => T | Promise<T>): Promise<T> {
  const other = await Engine.open(empty);
  try {
    return await work(other);
  } finally {
    other.close();
  }
}

/** Writes transactions and holds a law of them, each time from the beginning. */
async function ofAll(runs: number, law: (made: Written) => Promise<void>): Promise<void> {
  await fc.assert(
    fc.asyncProperty(transactions, async (all) => {
      engine.close();
      engine = await Engine.open(empty);
      await law(written(all));
    }),
    { numRuns: runs },
  );
}

describe('a log that is repeated', () => {
  it('comes to the state that was acknowledged, at once, in pieces, or in any two parts', async () => {
    await ofAll(12, async ({ log, states }) => {
      const { bytes, records } = log;
      await beside((other) => {
        replay(other, bytes, records);
        expect(everything(other)).toEqual(states.at(-1));
      });
      await beside(async (other) => {
        const ends: number[] = [];
        await replayInPieces(other, bytes, records, (end) => ends.push(end));
        expect(everything(other)).toEqual(states.at(-1));
        expect(ends).toEqual(ends.toSorted((a, b) => a - b));
      });
      for (let part = 0; part <= records.length; part += 1)
        await beside((other) => {
          replay(other, bytes, records.slice(0, part));
          expect(everything(other)).toEqual(states[part]);
          // What the file holds by then is passed over, however often it is looked at.
          const beyond = recordsBeyond(readMeta(other)!, log);
          expect(beyond).toHaveLength(records.length - part);
          replay(other, bytes, beyond);
          expect(recordsBeyond(readMeta(other)!, log)).toEqual([]);
          expect(everything(other)).toEqual(states.at(-1));
        });
    });
  });

  it('goes through each state that it leads to, and through no other', async () => {
    await ofAll(15, async ({ log }) => {
      const { records, header } = log;
      const all: Position[] = [header, ...records];
      for (const { sequence, chain } of all) {
        expect(meets({ sequence, chain }, log)).toBe(true);
        expect(meets({ sequence, chain: 'f'.repeat(32) }, log)).toBe(false);
        expect(meets({ sequence: sequence + 1, chain }, log)).toBe(false);
      }
      expect(endOf(log)).toEqual({ sequence: all.at(-1)!.sequence, chain: all.at(-1)!.chain });
      expect(stateAt(records.length + 1, log)).toBeUndefined();
      expect(stateAt(-1, log)).toBeUndefined();
    });
  });

  it('is refused where it does not continue the file', async () => {
    const { log } = written([[['INSERT INTO jar (id, name) VALUES (?, ?)', 'a', 'A']]]);
    const meta = readMeta(engine)!;
    expect(() => recordsBeyond({ ...meta, id: 'x' }, log)).toThrow(/belongs to another library/);
    expect(() => recordsBeyond({ ...meta, chain: 'f'.repeat(32) }, log)).toThrow(/continues another state/);
    const later = { ...log, header: { ...log.header, sequence: 5 } };
    expect(() => recordsBeyond(meta, later)).toThrow(/starts at change 6, but the file ends at change 1/);
    // A file from after the end of the log holds all of it.
    expect(recordsBeyond({ ...meta, sequence: 9 }, log)).toEqual([]);
  });

  it('takes all or nothing, and names the change that cannot be repeated', async () => {
    const { log } = written([
      [['INSERT INTO jar (id, name) VALUES (?, ?)', 'a', 'A']],
      [['UPDATE jar SET name = ? WHERE id = ?', 'B', 'a']],
    ]);
    await beside((other) => {
      other.run('INSERT INTO jar (id, name) VALUES (?, ?)', 'a', 'there already');
      const before = everything(other);
      expect(() => replay(other, log.bytes, log.records)).toThrow(/change 1 cannot be repeated/);
      expect(everything(other)).toEqual(before);
    });
  });
});

describe('what is saved of a damaged log', () => {
  it('is every change before the damage, exactly, and the count of those after it', async () => {
    await fc.assert(
      fc.asyncProperty(transactions, fc.nat(), fc.integer({ min: 1, max: 255 }), async (all, where, by) => {
        engine.close();
        engine = await Engine.open(empty);
        const { bytes, states, starts } = written(all);
        const end = decodeLog(bytes).length;
        const at = where % end;
        const damaged = Uint8Array.from(bytes);
        damaged[at] = damaged[at]! ^ by;
        const first = starts[0] ?? end;
        // The first line names the library; without it the records still tell what they follow on, unless its end is
        // gone and the first record hangs on it.
        const whole = starts.filter((start) => start <= at).length - 1;
        const expected = at < first - 1 ? starts.length : Math.max(0, whole);
        await beside((other) => {
          const { taken, bytes: kept } = salvageLog(other, readMeta(other)!, damaged, SHA);
          expect(taken).toBe(expected);
          expect(everything(other)).toEqual(states[taken]);
          const again = decodeLog(withRoom(kept));
          expect(again.records).toHaveLength(taken);
          expect(again.header.fileSha256).toBe(SHA);
        });
      }),
      { numRuns: 30 },
    );
  });

  it('ends before a change that cannot be repeated, on which all that follows builds', async () => {
    const add = (id: string): LoggedStatement[] => [['INSERT INTO jar (id, name) VALUES (?, ?)', id, id]];
    const { bytes } = written([add('a'), add('b'), add('c')]);
    await beside((other) => {
      other.run('INSERT INTO jar (id, name) VALUES (?, ?)', 'b', 'there already');
      expect(salvageLog(other, readMeta(other)!, bytes, SHA)).toMatchObject({ taken: 1, left: 2 });
      expect(other.all('SELECT id, name FROM jar ORDER BY id')).toEqual([
        { id: 'a', name: 'a' },
        { id: 'b', name: 'there already' },
      ]);
    });
  });

  it('takes no change whose number does not follow, though its check does', async () => {
    const header = encodeHeader({ libraryId: ID, ...START, fileSha256: SHA });
    const skipping = encodeRecord({ ...START, sequence: 5 }, AT, [['DELETE FROM jar WHERE id = ?', 'a']]);
    const bytes = withRoom(Buffer.concat([header, skipping.bytes]));
    expect(() => decodeLog(bytes)).toThrow(/change 1 is missing/);
    await beside((other) =>
      expect(salvageLog(other, readMeta(other)!, bytes, SHA)).toMatchObject({ taken: 0, left: 1 }),
    );
  });

  it('of an undamaged one is all of it', async () => {
    await ofAll(10, async ({ bytes, states, starts }) => {
      await beside((other) => {
        expect(salvageLog(other, readMeta(other)!, bytes, SHA)).toMatchObject({
          taken: starts.length,
          left: 0,
        });
        expect(everything(other)).toEqual(states.at(-1));
      });
    });
  });
});

describe('the file that a replay leads to', () => {
  it('is whole, and says which change it is at', async () => {
    await ofAll(6, async ({ states }) => {
      const { engine: read, meta } = await openBytes(engine.exportBytes(), SAMPLE_MIGRATIONS.length);
      expect(meta.sequence).toBe(states.length - 1);
      expect(everything(read)).toEqual(states.at(-1));
      read.close();
    });
  });
});
