import type { BatchDocumentEntry } from '@core/batches/document';
import type { BatchOutcome } from '@core/batches/outcome';
import { standingOf, type VersionDecision } from '@core/formulas/decision';
import { readBatchEntries } from '@db/batches/batches';
import { insertDocumentEntry, readBatchDocuments } from '@db/batches/documents';
import { insertOutcome, readOutcomes } from '@db/batches/outcomes';
import { insertDecision, readDecisions } from '@db/formulas/decisions';
import { readFormulaEntries } from '@db/formulas/list';
import { listVersions } from '@db/formulas/versions';
import type { Engine } from '@db/library/sql/engine';
import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { copyOf, documentOf, mergeInto, newId, smallLibrary } from './two-libraries';

/* Decisions, outcomes and documents are only ever added: what two libraries say once each has taken the other in. */

let start: Engine;
let versionId: string;
let formulaId: string;
let batchId: string;
beforeAll(async () => {
  ({ engine: start, version: versionId, formula: formulaId, batch: batchId } = await smallLibrary());
});

const at = (minute: number): string => new Date(Date.UTC(2026, 4, 2, 10, minute)).toISOString();
const decision = (made: VersionDecision['decision'], minute: number, by = 'Ada'): VersionDecision => ({
  ...{ decision: made, by, on: '2026-05-02', at: at(minute) },
  reason: made === 'withdrawn' ? 'It separates.' : '',
});
const outcome = (obtainedMg: number, minute: number): BatchOutcome => ({
  ...{ finishedOn: '2026-05-02', obtainedMg, unitsFilled: null, by: 'Ada', remarks: '', at: at(minute) },
});

/** Two copies with something added to each, once each has taken the other in. */
async function met(ours: (one: Engine) => void, theirs: (one: Engine) => void): Promise<[Engine, Engine]> {
  const sides: [Engine, Engine] = [await copyOf(start), await copyOf(start)];
  ours(sides[0]);
  theirs(sides[1]);
  mergeInto(sides[0], documentOf(sides[1]));
  mergeInto(sides[1], documentOf(sides[0]));
  return sides;
}

describe('a withdrawal', () => {
  const withdraw = (one: Engine): void => insertDecision(one, versionId, decision('withdrawn', 1));
  const approve = (one: Engine): void => insertDecision(one, versionId, decision('approved', 2, 'Grace'));

  it.each([
    ['here', withdraw, approve],
    ['there', approve, withdraw],
  ])(
    'made %s stays final where the other library, which did not know of it, approves',
    async (_, one, two) => {
      for (const side of await met(one, two)) {
        const decided = readDecisions(side, versionId);
        expect(decided.map(({ by }) => by)).toEqual(['Grace', 'Ada']);
        expect(standingOf(decided)).toBe('withdrawn');
        expect(listVersions(side, formulaId).find(({ id }) => id === versionId)?.standing).toBe('withdrawn');
        expect(readFormulaEntries(side, [formulaId])[0]?.standing).toBe('withdrawn');
      }
    },
  );

  it('leaves an approval what it is where nobody withdraws', async () => {
    for (const side of await met(approve, () => undefined)) {
      expect(standingOf(readDecisions(side, versionId))).toBe('approved');
      expect(readFormulaEntries(side, [formulaId])[0]?.standing).toBe('approved');
    }
  });
});

describe('the outcome of a batch', () => {
  it('is the one written down last, whichever library meets the other', async () => {
    const first = outcome(4_000_000, 0);
    const sides = await met(
      (one) => [first, outcome(4_500_000, 5)].forEach((made) => insertOutcome(one, batchId, made)),
      (one) =>
        [first, { ...outcome(3_000_000, 3), finishedOn: '2026-05-01' }].forEach((made) =>
          insertOutcome(one, batchId, made),
        ),
    );
    for (const side of sides) {
      expect(readOutcomes(side, batchId).map(({ obtainedMg }) => obtainedMg)).toEqual([
        4_000_000, 3_000_000, 4_500_000,
      ]);
      expect(readBatchEntries(side, [batchId])[0]).toMatchObject({
        state: 'finished',
        finishedOn: '2026-05-02',
      });
    }
  });

  it('is on both sides all that either wrote down, each once, and the same last one', async () => {
    const minutes = fc.uniqueArray(fc.integer({ min: 0, max: 50 }), { maxLength: 5 });
    await fc.assert(
      fc.asyncProperty(minutes, minutes, async (here, there) => {
        const add = (all: number[], odd: number) => (one: Engine) =>
          // Each library writes in the order of its own clock; no two write at the same moment.
          all
            .toSorted((a, b) => a - b)
            .forEach((minute) => insertOutcome(one, batchId, outcome(1000 + minute, 2 * minute + odd)));
        const [ours, theirs] = await met(add(here, 0), add(there, 1));
        const known = readOutcomes(ours, batchId);
        expect(known).toHaveLength(here.length + there.length);
        expect(readOutcomes(theirs, batchId)).toEqual(known);
        expect(readBatchEntries(ours, [batchId])).toEqual(readBatchEntries(theirs, [batchId]));
      }),
      { numRuns: 12 },
    );
  });
});

describe('a document of a batch', () => {
  const id = newId();
  const entry = (revision: number, minute: number, part: Partial<BatchDocumentEntry> = {}) =>
    ({
      ...{ id, revision, kind: 'photo', title: `as of ${minute}`, sha256: 'c'.repeat(64), removed: false },
      ...{ mediaType: 'image/jpeg', bytes: 10, dated: '', validUntil: '', at: at(minute), ...part },
    }) as BatchDocumentEntry;
  const add =
    (...all: BatchDocumentEntry[]) =>
    (one: Engine) =>
      all.forEach((made) => insertDocumentEntry(one, batchId, made));

  it('is as it was changed most often, and of as many changes as changed last, on both sides', async () => {
    const sides = await met(
      add(entry(1, 0), entry(2, 9)),
      add(entry(1, 0), entry(2, 3), entry(3, 4, { title: 'most often' })),
    );
    for (const side of sides)
      expect(readBatchDocuments(side, batchId)).toMatchObject([{ title: 'most often' }]);
    const even = await met(add(entry(1, 0), entry(2, 9)), add(entry(1, 0), entry(2, 3)));
    for (const side of even) expect(readBatchDocuments(side, batchId)).toMatchObject([{ title: 'as of 9' }]);
  });

  it('that one side took off is off on both, until somebody puts it back', async () => {
    const gone = await met(add(entry(1, 0), entry(2, 9, { removed: true })), add(entry(1, 0)));
    for (const side of gone) expect(readBatchDocuments(side, batchId)).toEqual([]);
    add(entry(3, 20, { title: 'back' }))(gone[1]);
    mergeInto(gone[0], documentOf(gone[1]));
    expect(readBatchDocuments(gone[0], batchId)).toMatchObject([{ title: 'back' }]);
  });
});

describe('an event of which only the other library knows', () => {
  it('is counted once, and not again when the two meet again', async () => {
    const [ours, theirs] = [await copyOf(start), await copyOf(start)];
    insertDecision(theirs, versionId, decision('approved', 1));
    insertOutcome(theirs, batchId, outcome(4_000_000, 2));
    expect(mergeInto(ours, documentOf(theirs))).toMatchObject({ decisions: 2, versions: 0, batches: 0 });
    expect(mergeInto(ours, documentOf(theirs))).toMatchObject({ decisions: 0, changed: 0, entered: 0 });
  });
});
