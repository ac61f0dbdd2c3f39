import { blankMaterial, type Material } from '@core/materials/material';
import { MATERIAL } from '@core/materials/noun';
import type { Engine } from '@db/library/sql/engine';
import { materialRecords } from '@db/materials/materials';
import {
  appendState,
  beginHistories,
  beginHistory,
  deletedRecords,
  keepBefore,
  keepDeleted,
  keepLeft,
  lastEntry,
  presentDoing,
  readEntry,
  readHistory,
  type Doing,
} from '@db/record/history';
import { issueNow, issueOf } from '@db/record/issues';
import { putState } from '@db/record/state';
import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { emptyLibrary } from '../merging/two-libraries';

/* What a history must hold, whoever did what and whatever the clock said. */

const ID = '0195c7a0-0000-7000-8000-000000000001';
const START = Date.parse('2026-03-01T08:00:00.000Z');
const at = (minutes: number): string => new Date(START + minutes * 60_000).toISOString();
const doing = (by: string, minute: number, why = ''): Doing => ({ by, at: at(minute), why, library: 'one' });

let engine: Engine;
beforeEach(async () => {
  engine = await emptyLibrary();
});
afterEach(() => engine.close());

function bring(notes: string, how: Doing): Material {
  const content = { ...blankMaterial('Brackwater Glycerin', 'Glycerin'), notes };
  const made = { ...content, id: ID, revision: 1, createdAt: how.at, updatedAt: how.at };
  materialRecords.insert(engine, made);
  beginHistory(engine, 'material', ID, how);
  return made;
}
const now = (): Material | undefined => materialRecords.read(engine, ID);
function edit(notes: string, how: Doing): void {
  const before = now()!;
  keepBefore(engine, MATERIAL, before, how);
  materialRecords.update(engine, before, {
    ...before,
    notes,
    revision: before.revision + 1,
    updatedAt: how.at,
  });
}
function remove(how: Doing): void {
  keepDeleted(engine, MATERIAL, now()!, how);
  materialRecords.remove(engine, ID);
}
const kept = (): string[] =>
  readHistory(engine, 'material', ID).map(({ n }) => readEntry(engine, MATERIAL, ID, n)!.notes);

interface Step {
  kind: 'edit' | 'delete or bring back';
  by: string;
  /** Minutes since the one before; a clock may have been set back. */
  after: number;
  why: string;
}
const step: fc.Arbitrary<Step> = fc.record({
  kind: fc.constantFrom('edit' as const, 'edit' as const, 'edit' as const, 'delete or bring back' as const),
  by: fc.constantFrom('Ada', 'Grace', ''),
  after: fc.oneof(fc.integer({ min: 0, max: 20 }), fc.constantFrom(0, 20, 21, 90, 300, -1, -600)),
  why: fc.constantFrom('', '', '', 'swapped'),
});

describe('the history of a record', () => {
  it('holds each state that was left for good, in order and under its own number, and the present makes it whole', () => {
    fc.assert(
      fc.property(fc.array(step, { maxLength: 25 }), (steps) => {
        engine.control('BEGIN');
        try {
          bring('0', doing('Ada', 0));
          let [minute, last, by] = [0, 0, 'Ada'];
          /** Every state that it has been in, and those of them that no sitting goes on from. */
          const been = ['0'];
          const left: string[] = [];
          for (const [index, one] of steps.entries()) {
            minute += one.after;
            const how = doing(one.by, minute, one.why);
            if (one.kind === 'delete or bring back') {
              if (now()) {
                left.push(now()!.notes);
                remove(how);
                expect(deletedRecords(engine, 'material')).toMatchObject([
                  { record: ID, by: one.by, at: at(minute) },
                ]);
                expect(kept().at(-1)).toBe(left.at(-1));
              } else {
                const { n } = lastEntry(engine, 'material', ID)!;
                bring(readEntry(engine, MATERIAL, ID, n)!.notes, how);
                expect(deletedRecords(engine, 'material')).toEqual([]);
              }
            } else if (now()) {
              // Another author, a reason, a pause, a clock set back: what stood is left for good.
              if (one.by !== by || one.why !== '' || minute - last > 20 || minute < last)
                left.push(now()!.notes);
              edit(String(index + 1), how);
              been.push(String(index + 1));
            } else continue;
            [last, by] = [minute, one.by];
          }
          const history = kept();
          expect(readHistory(engine, 'material', ID).map(({ n }) => n)).toEqual(history.map((_, n) => n + 1));
          // Nothing that it never was, in the order in which it was: each later than the one before, or that again.
          const places = history.map((notes) => been.indexOf(notes));
          expect(places).not.toContain(-1);
          expect(places).toEqual(places.toSorted((a, b) => a - b));
          for (const notes of left) expect(history).toContain(notes);
          if (now()) expect(presentDoing(engine, 'material', ID)?.by).toBe(by);
        } finally {
          engine.control('ROLLBACK');
        }
      }),
      { numRuns: 60 },
    );
  });

  it('keeps no more than what a sitting ended with, however long somebody types', () => {
    bring('0', doing('Ada', 0));
    for (let minute = 1; minute <= 239; minute += 1) edit(`at ${minute}`, doing('Ada', minute));
    expect(kept()).toEqual([]);
    edit('at 241', doing('Ada', 241));
    expect(kept()).toEqual(['at 239']);
  });

  it('ends a sitting where the clock goes back by a minute, and where it lasts for four hours to the millisecond', () => {
    bring('0', doing('Ada', 0));
    edit('at 10', doing('Ada', 10));
    edit('at 9', doing('Ada', 9));
    expect(kept()).toEqual(['at 10']);
    for (let minute = 29; minute <= 249; minute += 20) edit(`at ${minute}`, doing('Ada', minute));
    // Four hours after it began, at 9, and exactly twenty minutes after the one before.
    expect(kept()).toEqual(['at 10']);
    edit('at 249.1', doing('Ada', 249.1));
    expect(kept()).toEqual(['at 10', 'at 249']);
  });

  it('keeps what is about to be left once, though it is asked for twice', () => {
    bring('0', doing('Ada', 0));
    keepLeft(engine, MATERIAL, now()!);
    keepLeft(engine, MATERIAL, now()!);
    expect(kept()).toEqual(['0']);
    expect(readHistory(engine, 'material', ID)[0]).toMatchObject({
      n: 1,
      by: 'Ada',
      library: 'one',
      why: '',
    });
  });

  it('takes a state of another library to its end, and says when and where it was left there', () => {
    bring('0', doing('Ada', 0));
    const state = putState(engine, MATERIAL, ID, { ...blankMaterial('Elsewhere', 'Glycerin') });
    const there = { at: at(-500), by: 'Grace', library: 'two', why: 'merged' };
    appendState(engine, 'material', ID, state, there);
    appendState(engine, 'material', ID, state, there);
    expect(readHistory(engine, 'material', ID).map(({ n, hash: _, ...left }) => [n, left])).toEqual([
      [1, there],
      [2, there],
    ]);
    expect(readEntry(engine, MATERIAL, ID, 2)?.tradeName).toBe('Elsewhere');
  });

  it('says nothing of what there is not: another kind, another number, another record', () => {
    bring('0', doing('Ada', 0));
    keepLeft(engine, MATERIAL, now()!);
    expect(readEntry(engine, MATERIAL, ID, 2)).toBeUndefined();
    expect(readEntry(engine, MATERIAL, ID, 0)).toBeUndefined();
    expect(readEntry(engine, MATERIAL, '', 1)).toBeUndefined();
    expect(readHistory(engine, 'formula', ID)).toEqual([]);
    expect(lastEntry(engine, 'material', 'nobody')).toBeUndefined();
    expect(presentDoing(engine, 'formula', ID)).toBeUndefined();
  });

  it('of a record that nobody is known to have begun is kept all the same, without a name', () => {
    const content = blankMaterial('From before histories', 'Aqua');
    const made = { ...content, id: ID, revision: 1, createdAt: at(0), updatedAt: at(0) };
    materialRecords.insert(engine, made);
    edit('first', doing('Ada', 1));
    expect(readHistory(engine, 'material', ID)).toMatchObject([
      { n: 1, by: '', library: '', why: '', at: at(0) },
    ]);
  });

  it('begins for a thousand records at once as for each', () => {
    const ids = Array.from({ length: 1000 }, (_, n) => `record ${n}`);
    beginHistories(engine, 'material', ids, doing('Ada', 3, 'taken in'));
    expect(presentDoing(engine, 'material', ids[999]!)).toEqual({
      ...{ by: 'Ada', began: at(3), why: 'taken in', library: 'one' },
    });
    expect(engine.get('SELECT count(*) AS n FROM sitting')).toEqual({ n: 1000 });
    beginHistories(engine, 'material', [], doing('Ada', 4));
    expect(() => beginHistories(engine, 'material', ['record 5'], doing('Ada', 4))).toThrow(/UNIQUE/);
  });
});

describe('an issue', () => {
  const by = { at: at(1), by: 'Ada' };
  it('bears one number as long as nothing changes, and the next one after, also where an earlier state comes back', () => {
    bring('a', doing('Ada', 0));
    expect(issueOf(engine, MATERIAL, now()!)).toBeNull();
    expect([issueNow(engine, MATERIAL, now()!, by), issueNow(engine, MATERIAL, now()!, by)]).toEqual([1, 1]);
    edit('b', doing('Ada', 2));
    expect(issueOf(engine, MATERIAL, now()!)).toBeNull();
    expect(issueNow(engine, MATERIAL, now()!, by)).toBe(2);
    edit('a', doing('Ada', 3));
    expect(issueOf(engine, MATERIAL, now()!)).toBeNull();
    expect(issueNow(engine, MATERIAL, now()!, by)).toBe(3);
    expect(engine.get('SELECT count(*) AS n FROM issue')).toEqual({ n: 3 });
  });

  it('is the same again where what was changed is changed back before it is printed', () => {
    bring('a', doing('Ada', 0));
    issueNow(engine, MATERIAL, now()!, by);
    edit('b', doing('Ada', 2));
    edit('a', doing('Ada', 3));
    expect(issueOf(engine, MATERIAL, now()!)).toBe(1);
  });
});
