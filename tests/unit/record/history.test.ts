import { blankMaterial, type Material, type MaterialContent } from '@core/materials/material';
import { MATERIAL } from '@core/materials/noun';
import { Problem } from '@core/problems/problem';
import { keptText, liftState, type Noun } from '@core/record/noun';
import { Engine } from '@db/library/sql/engine';
import { materialRecords } from '@db/materials/materials';
import { migrations } from '@db/migrations/list';
import { migrate } from '@db/migrations/runner';
import {
  beginHistory,
  deletedRecords,
  keepBefore,
  keepDeleted,
  presentDoing,
  readEntry,
  readHistory,
} from '@db/record/history';
import { drawNumber } from '@db/record/sequence';
import { putState, readState, stateOf, stateRow } from '@db/record/state';
import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';

const ID = '0195c7a0-0000-7000-8000-000000000001';
const START = Date.parse('2026-03-01T08:00:00.000Z');
const MINUTE = 60_000;
const at = (minutes: number): string => new Date(START + minutes * MINUTE).toISOString();

let engine: Engine;
beforeEach(async () => {
  engine = await Engine.open();
  migrate(engine, migrations, new Date(START));
});
afterEach(() => engine.close());

function added(): Material {
  const content = blankMaterial('Brackwater Glycerin', 'Glycerin');
  const made = { ...content, id: ID, revision: 1, createdAt: at(0), updatedAt: at(0) };
  materialRecords.insert(engine, made);
  beginHistory(engine, 'material', ID, { by: 'Ada', at: at(0), why: '', library: 'one' });
  return made;
}

/** Changes the material as the service does, `minutes` after the start. */
function edit(part: Partial<MaterialContent>, minutes: number, by = 'Ada', why = ''): Material {
  const before = materialRecords.read(engine, ID)!;
  const after = { ...before, ...part, revision: before.revision + 1, updatedAt: at(minutes) };
  keepBefore(engine, MATERIAL, before, { by, at: at(minutes), why, library: 'one' });
  materialRecords.update(engine, before, after);
  return after;
}

const notesKept = (): string[] =>
  readHistory(engine, 'material', ID).map(({ n }) => readEntry(engine, MATERIAL, ID, n)!.notes);

describe('a record’s history', () => {
  it('carries no weight until something is changed in another sitting', () => {
    added();
    edit({ notes: 'a' }, 5);
    edit({ notes: 'b' }, 20);
    expect(readHistory(engine, 'material', ID)).toEqual([]);
    expect(engine.get('SELECT count(*) AS n FROM state')).toEqual({ n: 0 });
  });

  it('keeps what a sitting ended with, when, and whose it was', () => {
    added();
    edit({ notes: 'a' }, 5);
    edit({ notes: 'b' }, 90);
    edit({ notes: 'c' }, 91);
    edit({ notes: 'd' }, 300, 'Grace');
    expect(notesKept()).toEqual(['a', 'c']);
    expect(readHistory(engine, 'material', ID).map(({ at: when, by }) => [when, by])).toEqual([
      [at(5), 'Ada'],
      [at(91), 'Ada'],
    ]);
    expect(presentDoing(engine, 'material', ID)?.by).toBe('Grace');
  });

  it('ends a sitting where another author goes on, where it lasts for hours, and where a clock is set back', () => {
    added();
    edit({ notes: 'a' }, 1, 'Grace');
    expect(notesKept()).toEqual(['']);
    for (let minute = 15; minute <= 260; minute += 15) edit({ notes: `at ${minute}` }, minute, 'Grace');
    // Four hours after it began.
    expect(notesKept()).toEqual(['', 'at 240']);
    edit({ notes: 'yesterday' }, -1440, 'Grace');
    expect(notesKept()).toEqual(['', 'at 240', 'at 255']);
    edit({ notes: 'today' }, 262, 'Grace');
    expect(notesKept()).toEqual(['', 'at 240', 'at 255', 'yesterday']);
    expect(readHistory(engine, 'material', ID).map(({ n }) => n)).toEqual([1, 2, 3, 4]);
  });

  it('keeps a state once that is gone back to', () => {
    added();
    edit({ notes: 'a' }, 100);
    edit({ notes: '' }, 200);
    edit({ notes: 'a' }, 300);
    edit({ notes: 'b' }, 400);
    expect(notesKept()).toEqual(['', 'a', '', 'a']);
    expect(engine.get('SELECT count(*) AS n FROM state')).toEqual({ n: 2 });
  });

  it('holds what was deleted, and by whom', () => {
    const made = edit({ notes: 'last' }, 1, added().tradeName);
    keepDeleted(engine, MATERIAL, made, { by: 'Grace', at: at(2), why: '', library: 'one' });
    materialRecords.remove(engine, ID);
    expect(deletedRecords(engine, 'material')).toEqual([{ record: ID, n: 2, at: at(2), by: 'Grace' }]);
    expect(readEntry(engine, MATERIAL, ID, 2)?.notes).toBe('last');
  });
});

describe('a kept state', () => {
  const content = blankMaterial('Brackwater Glycerin', 'Glycerin');

  it('is known by what it says: the same is kept once, anything else under another hash', () => {
    const first = putState(engine, MATERIAL, ID, content);
    expect(putState(engine, MATERIAL, ID, { ...content })).toBe(first);
    expect(putState(engine, MATERIAL, ID, { ...content, notes: 'x' })).not.toBe(first);
    expect(stateOf(MATERIAL, ID, content).hash).toBe(stateRow(engine, first)!.hash);
  });

  it('cannot be changed or taken away', () => {
    const id = putState(engine, MATERIAL, ID, content);
    expect(() => engine.run('UPDATE state SET content = ? WHERE id = ?', '{}', id)).toThrow(/never changes/);
    expect(() => engine.run('DELETE FROM state WHERE id = ?', id)).toThrow(/never deleted/);
  });

  it('that is not what was kept is said to be so, and read as nothing else', () => {
    const row = stateRow(engine, putState(engine, MATERIAL, ID, content))!;
    const bent = { ...row, content: row.content.replace('Glycerin', 'Glycerol') };
    expect(() => readState(MATERIAL, bent)).toThrow(Problem);
    expect(() => readState(MATERIAL, { ...row, kind: 'formula' })).toThrow(/cannot be read/);
  });

  it('of a format from the future is refused; an earlier one is lifted step by step', () => {
    expect(() => liftState(MATERIAL, 2, '{}')).toThrow(/newer version/);
    interface Jar {
      grams: number;
      lid: string;
    }
    const jar: Noun<Jar> = {
      kind: 'jar',
      name: 'jar',
      fields: {},
      read: (held) => held as Jar,
      titleOf: () => 'jar',
      upgraders: [
        ({ ounces, ...rest }) => ({ ...rest, grams: Number(ounces) * 28 }),
        (held) => {
          if (held.grams === 0) throw new Error('an empty jar');
          return { ...held, lid: 'screw' };
        },
      ],
    };
    expect(liftState(jar, 1, '{"ounces":2}')).toEqual({ grams: 56, lid: 'screw' });
    expect(liftState(jar, 2, '{"grams":5}')).toEqual({ grams: 5, lid: 'screw' });
    expect(liftState(jar, 3, '{"grams":5,"lid":"cork"}')).toEqual({ grams: 5, lid: 'cork' });
    expect(() => liftState(jar, 1, '{"ounces":0}')).toThrow(/cannot be read/);
  });

  it('says the same whatever the order of its parts', () => {
    fc.assert(
      fc.property(fc.string(), fc.string(), (notes, handling) => {
        const one = { ...content, notes, handling };
        const other = Object.fromEntries(Object.entries(one).reverse());
        expect(keptText(MATERIAL.fields, other)).toBe(keptText(MATERIAL.fields, one));
      }),
    );
  });
});

describe('a running number', () => {
  const draw = (taken: string[] = [], inUse: string[] = taken) =>
    drawNumber(engine, 'formula', {
      prefix: 'F-',
      inUse: () => inUse,
      isTaken: (number) => taken.includes(number),
    });

  it('goes on behind what was in use before numbers were drawn', () => {
    expect(draw(['F-011', 'F-3', 'F-note'])).toBe('F-012');
  });

  it('is never given twice, also when what bore it is gone', () => {
    expect([draw(), draw(), draw([])]).toEqual(['F-001', 'F-002', 'F-003']);
  });

  it('steps over one that was written by hand', () => {
    draw();
    expect(draw(['F-002', 'F-003'])).toBe('F-004');
  });
});
