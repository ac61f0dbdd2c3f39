import { lawAsItWas } from '@core/limits/law-then';
import type { Law } from '@core/limits/law';
import { blankLimit, type Limit } from '@core/limits/limit';
import { blankContent } from '@core/record/field';
import { SUBSTANCE_FIELDS } from '@core/substances/fields';
import type { Substance } from '@core/substances/substance';
import { insertVersion } from '@db/formulas/versions';
import type { Engine } from '@db/library/sql/engine';
import { readLaw } from '@db/limits/law';
import { lawThen } from '@db/limits/law-then';
import { limitRecords, readLimitEntries, readLimits } from '@db/limits/limits';
import { beginHistory, keepBefore, keepDeleted, type Doing } from '@db/record/history';
import type { Kept } from '@db/record/record-table';
import type { AnyRepository } from '@db/repositories';
import { readSubstanceEntries, readSubstances, substanceRecords } from '@db/substances/substances';
import fc from 'fast-check';
import { beforeEach, describe, expect, it } from 'vitest';
import { anyContent } from '../record/any-record';
import { LIMIT } from '@core/limits/noun';
import { SUBSTANCE } from '@core/substances/noun';
import { add, emptyLibrary, formulaOf, newId, wax } from '../merging/two-libraries';

/* The limits and substances that a library holds: read one by one, as a list, and as they were. */

const START = Date.parse('2026-03-01T08:00:00.000Z');
const at = (minutes: number): string => new Date(START + minutes * 60_000).toISOString();

let engine: Engine;
let formulaId: string;
beforeEach(async () => {
  engine = await emptyLibrary();
  formulaId = add(engine, 'formula', formulaOf('Balm', '', [add(engine, 'material', wax('Larkspur Wax'))]));
});

function inLibrary(work: () => void): void {
  engine.control('BEGIN');
  try {
    work();
  } finally {
    engine.control('ROLLBACK');
  }
}

const REPOSITORIES = {
  limit: limitRecords as unknown as AnyRepository,
  substance: substanceRecords as unknown as AnyRepository,
};
type Judging = keyof typeof REPOSITORIES;
const doingAt = (minute: number, by = 'Ada'): Doing => ({ by, at: at(minute), why: '', library: 'one' });

function bring(kind: Judging, content: object, minute: number, id = newId()): string {
  const kept = { ...content, id, revision: 1, createdAt: at(minute), updatedAt: at(minute) } as Kept;
  REPOSITORIES[kind].insert(engine, kept);
  beginHistory(engine, kind, id, doingAt(minute));
  return id;
}
function edit(kind: Judging, id: string, change: object, minute: number, by = 'Ada'): void {
  const { noun, read, update } = REPOSITORIES[kind];
  const before = read(engine, id)!;
  keepBefore(engine, noun, before, doingAt(minute, by));
  update(engine, before, { ...before, ...change, revision: before.revision + 1, updatedAt: at(minute) });
}
function remove(kind: Judging, id: string, minute: number): void {
  const { noun, read } = REPOSITORIES[kind];
  keepDeleted(engine, noun, read(engine, id)!, doingAt(minute));
  REPOSITORIES[kind].remove(engine, id);
}
let recorded = 0;
function version(minute: number): string {
  recorded += 1;
  const content = { ...formulaOf('Balm', '', []), archived: undefined };
  const one = {
    id: newId(),
    formulaId,
    number: recorded,
    recordedAt: at(minute),
    recordedBy: 'Ada',
    reason: '',
  };
  insertVersion(engine, { ...one, content, materials: {} });
  return one.recordedAt;
}

const substance = (name: string, notes = '') => ({ ...blankContent(SUBSTANCE_FIELDS), name, notes });
const limit = (subject: string, percent: number) => ({ ...blankLimit(subject), percent });
/** What a law says, whatever its records' counts and clocks. */
const says = ({ limits, substances }: Law): string[] =>
  [
    ...limits.map(({ id, subject, percent }) => `${id} ${subject} ${percent}`),
    ...substances.map(({ id, name, notes }) => `${id} ${name} ${notes}`),
  ].sort();
const then = (moment: string): string[] => says(lawAsItWas(readLaw(engine), lawThen(engine, moment)));

describe('the law at the moment of a version', () => {
  type Step = { kind: 'bring' | 'edit' | 'remove' | 'version'; of: Judging; which: number; after: number };
  const step: fc.Arbitrary<Step> = fc.record({
    kind: fc.constantFrom('bring', 'edit', 'edit', 'edit', 'remove', 'version', 'version'),
    of: fc.constantFrom('limit', 'substance'),
    which: fc.nat(9),
    // Never at one moment: of two edits in one it cannot be told which a version saw.
    after: fc.constantFrom(1, 2, 19, 21, 300),
  });

  it('is what the library held when it was recorded, whatever came, changed and went since', () => {
    fc.assert(
      fc.property(fc.array(step, { maxLength: 30 }), (steps) =>
        inLibrary(() => {
          let minute = 0;
          const held: Record<Judging, string[]> = { limit: [], substance: [] };
          const seen: [string, string[]][] = [];
          for (const [n, { kind, of, which, after }] of steps.entries()) {
            minute += after;
            const id = held[of][which % Math.max(1, held[of].length)];
            if (kind === 'version') seen.push([version(minute), says(readLaw(engine))]);
            else if (kind === 'bring')
              held[of].push(
                bring(of, of === 'limit' ? limit(`Subject ${n}`, n) : substance(`Name ${n}`), minute),
              );
            else if (id === undefined) continue;
            else if (kind === 'edit')
              edit(of, id, of === 'limit' ? { percent: n } : { notes: `${n}` }, minute);
            else {
              remove(of, id, minute);
              held[of] = held[of].filter((one) => one !== id);
            }
          }
          for (const [moment, was] of seen) expect(then(moment)).toEqual(was);
        }),
      ),
      { numRuns: 40 },
    );
  });

  it('is kept also where the version that came in last, by a merge, is an older one', () => {
    inLibrary(() => {
      const id = bring('limit', limit('Phenoxyethanol', 1), 0);
      edit('limit', id, { percent: 0.9 }, 1);
      const moment = version(2);
      // Recorded elsewhere, before any of this.
      version(-10_000);
      edit('limit', id, { percent: 0.8 }, 3);
      expect(then(moment)).toEqual([`${id} Phenoxyethanol 0.9`]);
    });
  });

  it('holds an edit of the very moment at which the version was recorded', () => {
    inLibrary(() => {
      const id = bring('limit', limit('Phenoxyethanol', 1), 0);
      edit('limit', id, { percent: 0.9 }, 30);
      const moment = version(30);
      expect(then(moment)).toEqual([`${id} Phenoxyethanol 0.9`]);
      edit('limit', id, { percent: 0.8 }, 31);
      expect(then(moment)).toEqual([`${id} Phenoxyethanol 0.9`]);
    });
  });

  it('is empty before there was any, and that of now in the time to come', () => {
    inLibrary(() => {
      const [one, two] = [bring('limit', limit('A', 1), 0), bring('substance', substance('B'), 0)];
      expect(lawThen(engine, at(-1))).toEqual({ was: { limits: [], substances: [] }, since: [two, one] });
      expect(lawThen(engine, at(1))).toEqual({ was: { limits: [], substances: [] }, since: [] });
    });
  });
});

describe('limits and substances', () => {
  const byName = (one: string, other: string): number => {
    const [a, b] = [one, other].map((name) => name.replace(/[A-Z]/g, (letter) => letter.toLowerCase()));
    return Buffer.compare(Buffer.from(a!), Buffer.from(b!));
  };

  it('come in the order of their names, A and a alike, more of them than one statement takes', () => {
    inLibrary(() => {
      const names = Array.from({ length: 620 }, (_, n) => `${n % 2 ? 'name' : 'NAME'} ${(n * 7) % 620}`);
      for (const name of names) {
        limitRecords.insert(engine, {
          ...limit(name, 1),
          id: newId(),
          revision: 1,
          createdAt: at(0),
          updatedAt: at(0),
        });
        bring('substance', substance(name), 0);
      }
      const sorted = names.toSorted(byName);
      expect(readLimits(engine).map(({ subject }) => subject)).toEqual(sorted);
      expect(readSubstances(engine).map(({ name }) => name)).toEqual(sorted);
      expect(readLaw(engine).limits).toHaveLength(620);
    });
  });

  it('say in the list what they say in whole, all of them or some', () => {
    const contents = fc.tuple(
      fc.array(anyContent(LIMIT.fields), { maxLength: 4 }),
      fc.array(anyContent(SUBSTANCE.fields), { maxLength: 4 }),
    );
    fc.assert(
      fc.property(contents, fc.nat(4), ([some, others], few) =>
        inLibrary(() => {
          const limits = some.map((content) => bring('limit', LIMIT.read(content), 0));
          const substances = others.map((content) => bring('substance', SUBSTANCE.read(content), 0));
          const whole = new Map<string, Limit | Substance>(
            [...readLimits(engine), ...readSubstances(engine)].map((one) => [one.id, one]),
          );
          const entries = [...readLimitEntries(engine), ...readSubstanceEntries(engine)];
          expect(entries.map(({ id }) => id).sort()).toEqual([...limits, ...substances].sort());
          for (const { id, ...shown } of entries) {
            const one = whole.get(id)! as unknown as Record<string, unknown>;
            const namesOf = (rows: unknown) => (rows as { name: string }[]).map(({ name }) => name);
            const said =
              'synonyms' in one
                ? { ...one, synonyms: namesOf(one.synonyms), groups: namesOf(one.groups) }
                : one;
            expect(said).toMatchObject(shown);
          }
          const ids = limits.slice(0, few);
          expect(readLimitEntries(engine, ids)).toEqual(
            readLimitEntries(engine).filter(({ id }) => ids.includes(id)),
          );
          expect(readSubstanceEntries(engine, [])).toEqual([]);
        }),
      ),
      { numRuns: 30 },
    );
  });
});
