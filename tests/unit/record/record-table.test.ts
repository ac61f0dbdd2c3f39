import { LIMIT } from '@core/limits/noun';
import { blankMaterial } from '@core/materials/material';
import { MATERIAL } from '@core/materials/noun';
import type { Noun } from '@core/record/noun';
import { same } from '@core/record/same';
import { SUBSTANCE } from '@core/substances/noun';
import { Engine } from '@db/library/sql/engine';
import { limits } from '@db/limits/limits';
import { materials } from '@db/materials/materials';
import { migrations } from '@db/migrations/list';
import { migrate } from '@db/migrations/runner';
import type { Kept, RecordTable } from '@db/record/record-table';
import { putState, readState, stateOf, stateRow } from '@db/record/state';
import { substances } from '@db/substances/substances';
import fc from 'fast-check';
import { beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { anyContent } from './any-record';

const AT = '2026-03-01T08:00:00.000Z';
const idOf = (n: number): string => `0195c7a0-0000-7000-8000-${String(n).padStart(12, '0')}`;

interface Tabled {
  noun: Noun<object>;
  table: RecordTable<Kept>;
}
const TABLES: [string, Tabled][] = [
  ['material', { noun: MATERIAL as never, table: materials as never }],
  ['substance', { noun: SUBSTANCE as never, table: substances as never }],
  ['limit', { noun: LIMIT as never, table: limits as never }],
];
const recordsOf = ({ noun }: Tabled): fc.Arbitrary<object> =>
  anyContent(noun.fields).map((content) => noun.read(content));
const kept = (content: object, n: number, revision = 1): Kept =>
  ({ ...content, id: idOf(n), revision, createdAt: AT, updatedAt: AT }) as Kept;

let empty: Uint8Array;
let engine: Engine;
beforeAll(async () => {
  const fresh = await Engine.open();
  migrate(fresh, migrations, new Date(AT));
  empty = fresh.exportBytes();
  fresh.close();
});
beforeEach(async () => {
  engine = await Engine.open(empty);
  return () => engine.close();
});

/** Runs a law on an empty library each time. */
function inLibrary(work: () => void): void {
  engine.control('BEGIN');
  try {
    work();
  } finally {
    engine.control('ROLLBACK');
  }
}
/** All rows of a noun's tables: what is left where it should have gone. */
const rowsOf = (table: string): number =>
  engine
    .all<{ name: string }>("SELECT name FROM sqlite_schema WHERE type = 'table' AND name GLOB ?", `${table}*`)
    .reduce((sum, { name }) => sum + engine.get<{ n: number }>(`SELECT count(*) AS n FROM "${name}"`)!.n, 0);

describe.each(TABLES)('the table of a %s', (_, tabled) => {
  const { noun, table } = tabled;

  it('gives back what it was given, whatever that holds', () => {
    fc.assert(
      fc.property(recordsOf(tabled), (content) =>
        inLibrary(() => {
          const made = kept(content, 1);
          table.insert(engine, made);
          const back = table.read(engine, made.id)!;
          expect(same(back, made), JSON.stringify([back, made])).toBe(true);
        }),
      ),
      { numRuns: 60 },
    );
  });

  it('holds what was last written, and nothing of what stood there before', () => {
    fc.assert(
      fc.property(fc.array(recordsOf(tabled), { minLength: 2, maxLength: 4 }), (states) =>
        inLibrary(() => {
          let now = kept(states[0]!, 1);
          table.insert(engine, kept(states[1]!, 2));
          table.insert(engine, now);
          for (const [at, content] of states.entries()) {
            const next = kept(content, 1, at + 2);
            table.update(engine, now, next);
            now = next;
          }
          expect(same(table.read(engine, now.id), now)).toBe(true);
          // The one beside it stays as it is.
          expect(same(table.read(engine, idOf(2)), kept(states[1]!, 2))).toBe(true);
          table.remove(engine, now.id);
          table.remove(engine, idOf(2));
          expect(rowsOf(table.table)).toBe(0);
        }),
      ),
      { numRuns: 25 },
    );
  });

  it('takes many at once as one by one, and gives back those asked for, in that order, each once', () => {
    const few = fc.array(recordsOf(tabled), { maxLength: 5 });
    const asked = fc.array(fc.integer({ min: 0, max: 7 }), { maxLength: 9 });
    fc.assert(
      fc.property(few, asked, (contents, wanted) =>
        inLibrary(() => {
          const made = contents.map((content, at) => kept(content, at));
          table.insertMany(engine, made);
          const found = table.readMany(engine, wanted.map(idOf));
          const there = [...new Set(wanted)].filter((n) => n < made.length);
          expect([...found.keys()]).toEqual(there.map(idOf));
          for (const n of there) expect(same(found.get(idOf(n)), made[n])).toBe(true);
        }),
      ),
      { numRuns: 25 },
    );
  });

  it('keeps a state that says the same as the record, and is read as it', () => {
    fc.assert(
      fc.property(recordsOf(tabled), (content) =>
        inLibrary(() => {
          const row = stateRow(engine, putState(engine, noun, idOf(1), content))!;
          expect(same(readState(noun, row), content)).toBe(true);
          table.insert(engine, kept(content, 1));
          const { hash } = stateOf(noun, idOf(1), noun.read(table.read(engine, idOf(1))));
          expect(hash).toBe(row.hash);
        }),
      ),
      { numRuns: 40 },
    );
  });
});

describe('many records at once', () => {
  it('are read whole, beyond what one statement takes', () => {
    const blank = MATERIAL.read({ ...blankMaterial('x', 'Aqua'), functions: ['emulsifier', 'solvent'] });
    const made = Array.from({ length: 1203 }, (_, n) => kept({ ...blank, tradeName: `No. ${n}` }, n));
    inLibrary(() => {
      materials.insertMany(engine, made as never);
      const wanted = made.map(({ id }) => id).reverse();
      const found = [...materials.readMany(engine, [...wanted, idOf(9999), ...wanted]).values()];
      expect(found.map(({ tradeName }) => tradeName)).toEqual(
        made.map((one) => (one as unknown as { tradeName: string }).tradeName).reverse(),
      );
      expect(found.every(({ functions }) => functions.join() === 'emulsifier,solvent')).toBe(true);
    });
  });

  it('that are none ask nothing of the library', () => {
    expect(materials.readMany(engine, []).size).toBe(0);
    expect(materials.read(engine, '')).toBeUndefined();
    materials.insertMany(engine, []);
    expect(rowsOf('material')).toBe(0);
  });

  it('are refused where one of them bears an identifier that is there already', () => {
    inLibrary(() => {
      materials.insert(engine, kept(blankMaterial('One', 'Aqua'), 1) as never);
      expect(() => materials.insertMany(engine, [kept(blankMaterial('Two', 'Aqua'), 1)] as never)).toThrow(
        /UNIQUE/,
      );
    });
  });

  it('are refused whole where a text holds half a sign, which no file can keep', () => {
    inLibrary(() => {
      const half = { ...blankMaterial('One', 'Aqua'), notes: '😀'.slice(0, 1) };
      expect(() => materials.insert(engine, kept(half, 1) as never)).toThrow(/cannot be stored/);
      expect(rowsOf('material')).toBe(0);
    });
  });

  it('are not read as what they are not: what another tool wrote is told', () => {
    inLibrary(() => {
      materials.insert(engine, kept(blankMaterial('One', 'Aqua'), 1) as never);
      engine.run('UPDATE material SET created_at = ? WHERE id = ?', 'yesterday', idOf(1));
      expect(() => materials.read(engine, idOf(1))).toThrow(/createdAt/);
    });
  });
});
