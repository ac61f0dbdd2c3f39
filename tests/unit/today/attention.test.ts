import { insertDocumentEntry } from '@db/batches/documents';
import type { Engine } from '@db/library/sql/engine';
import { materials } from '@db/materials/materials';
import { readFormula } from '@db/formulas/drafts';
import { readAttention, type AttentionDays, type Some } from '@db/today/attention';
import { formulaShares } from '@core/formulas/shares';
import type { Formula } from '@core/formulas/formula';
import { isPast, type KindedPaper } from '@core/materials/document';
import type { Material } from '@core/materials/material';
import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { add, newId, smallLibrary, wax } from '../merging/two-libraries';

/* What of a library needs a look, against looking at every record. */

const DAYS: AttentionDays = {
  ...{ today: '2026-06-15', pricesFrom: '2025-06-15', dataSheetsFrom: '2023-06-15', validPast: '2026-08-15' },
};
/** On either side of each of those days, and each itself. */
const day = fc.constantFrom(
  ...[
    '2023-06-14',
    '2023-06-15',
    '2025-06-14',
    '2025-06-15',
    '2026-06-14',
    '2026-06-15',
    '2026-08-15',
    '2026-08-16',
  ],
);
const orNone = (one: fc.Arbitrary<string>): fc.Arbitrary<string> => fc.oneof(one, fc.constant(''));
const file = { sha256: 'b'.repeat(64), mediaType: 'application/pdf' as const, bytes: 10 };

let start: Engine;
let batch: string;
let formulaOfBatch: string;
beforeAll(async () => {
  ({ engine: start, batch, formula: formulaOfBatch } = await smallLibrary());
});

const paper = (kinds: readonly string[]) =>
  fc
    .record({ kind: fc.constantFrom(...kinds), dated: orNone(day), validUntil: orNone(day) })
    // None ends before its own day.
    .map((one) => (one.validUntil !== '' && one.dated > one.validUntil ? { ...one, dated: '' } : one));
const named = <T extends object>(papers: T[], of: string) =>
  papers.map((one, at) => ({ ...one, ...file, title: `${of} ${at}` }));

const material = fc.record({
  status: fc.constantFrom('in use', 'archived', 'on trial'),
  charge: fc.constantFrom('non-ionic', 'anionic', null),
  architecture: fc.constantFrom('classic', 'polymeric', null),
  functions: fc.subarray(['emulsifier', 'humectant']),
  withdrawnOn: orNone(day),
  hasHlb: fc.boolean(),
  offers: fc.array(fc.record({ date: day, priceMinor: fc.option(fc.nat(900)) }), { maxLength: 3 }),
  documents: fc.array(paper(['safety data sheet', 'specification', 'certificate', 'other']), {
    maxLength: 4,
  }),
});
const line = fc.record({ which: fc.nat(4), ppm: fc.constantFrom(0, 250_000, 500_000, 600_000) });
const draft = fc.record({
  archived: fc.boolean(),
  lines: fc.array(line, { maxLength: 4 }),
  qs: fc.nat(6),
  reports: fc.array(paper(['stability report', 'safety assessment', 'other']), { maxLength: 3 }),
});
const entry = fc.record({
  kind: fc.constantFrom('photo', 'test report'),
  validUntil: orNone(day),
  removed: fc.boolean(),
});

function putMaterials(all: (typeof material extends fc.Arbitrary<infer M> ? M : never)[]): string[] {
  return all.map(({ hasHlb, offers, documents, ...content }, at) =>
    add(start, 'material', {
      ...wax(`Material ${at}`),
      ...content,
      figures: hasHlb
        ? { hlb: { low: null, value: 11, high: null, provenance: 'supplier', source: '' } }
        : {},
      offers: offers.map((one) => ({
        ...one,
        supplier: 'Oak',
        itemCode: '',
        packMg: 1_000_000,
        currency: 'EUR',
      })),
      documents: named(documents, 'Paper'),
    }),
  );
}
function putFormula(
  one: typeof draft extends fc.Arbitrary<infer F> ? F : never,
  ids: string[],
  at: number,
): string {
  const {
    id: _id,
    revision: _r,
    createdAt: _c,
    updatedAt: _u,
    ...blank
  } = readFormula(start, formulaOfBatch)!;
  const lines = one.lines.map(({ which, ppm }, index) => ({
    ...{ id: newId(), materialId: ids[which % ids.length]!, ppm, toHundred: index === one.qs, note: '' },
  }));
  const reports = named(one.reports, 'Report').map((report) => ({
    ...report,
    id: newId(),
    versionNumber: null,
  }));
  const phases = [{ id: newId(), title: '', temperatureC: null, lines }];
  return add(start, 'formula', {
    ...blank,
    name: `Formula ${at}`,
    code: '',
    archived: one.archived,
    phases,
    reports,
  });
}

const ids = (some: readonly { id: string }[]): string[] => some.map(({ id }) => id).sort();
/** A reason holds exactly these records, and names the first three of them. */
function holds({ total, first }: Some, expected: readonly string[]): void {
  expect(total).toBe(expected.length);
  expect(first).toHaveLength(Math.min(3, total));
  for (const { id } of first) expect(expected).toContain(id);
}

describe('what needs a look', () => {
  it('is what looking at every record finds, on the days before, at and after each that counts', () => {
    const shelf = fc.array(material, { minLength: 1, maxLength: 5 });
    fc.assert(
      fc.property(
        shelf,
        fc.array(draft, { maxLength: 4 }),
        fc.array(entry, { maxLength: 4 }),
        (some, drafts, entries) => {
          start.control('BEGIN');
          try {
            const own = putMaterials(some);
            const made = drafts.map((one, at) => putFormula(one, own, at));
            const onFile = entries.map((one, at) => ({
              ...one,
              ...file,
              id: newId(),
              title: `Of batch ${at}`,
            }));
            for (const one of onFile)
              insertDocumentEntry(start, batch, {
                ...one,
                revision: 1,
                dated: '',
                at: '2026-01-01T00:00:00.000Z',
              } as never);

            const all = [
              ...materials
                .readMany(
                  start,
                  start.all<{ id: string }>('SELECT id FROM material').map(({ id }) => id),
                )
                .values(),
            ];
            const formulas = [formulaOfBatch, ...made].map((id) => readFormula(start, id)!);
            const current = formulas.filter(({ archived }) => !archived);
            const found = readAttention(start, DAYS);

            holds(found.notWhole, ids(current.filter(isNotWhole)));
            const used = usedIn(current);
            const inUse = all.filter(({ id }) => used.has(id));
            holds(found.withdrawn, ids(inUse.filter(({ withdrawnOn }) => withdrawnOn !== '')));
            const priced = (one: Material) => one.offers.filter(({ priceMinor }) => priceMinor !== null);
            holds(found.withoutPrice, ids(inUse.filter((one) => priced(one).length === 0)));
            holds(
              found.oldPrice,
              ids(
                inUse.filter(
                  (one) => priced(one).length > 0 && priced(one).every(({ date }) => date < DAYS.pricesFrom),
                ),
              ),
            );
            holds(found.withoutHlb, ids(all.filter(lacksHlb)));
            holds(found.oldDataSheets, ids(all.filter(hasOldDataSheet)));

            const holders = [
              ...all
                .filter(({ status }) => status !== 'archived')
                .map(({ id, documents }) => ({ id, papers: documents })),
              ...current.map(({ id, reports }) => ({ id, papers: reports })),
              {
                id: batch,
                papers: onFile.filter(({ removed }) => !removed).map((one) => ({ ...one, dated: '' })),
              },
            ] as { id: string; papers: KindedPaper[] }[];
            const on = (last: string) =>
              holders.flatMap(({ id, papers }) =>
                papers.filter((one) => isPast(one, papers, last)).map(() => id),
              );
            holds(found.pastDocuments, on(DAYS.today));
            // Near is what is not past, and will be by then: a day after the last one that counts.
            expect(found.pastSoon.total).toBe(on('2026-08-15~').length - on(DAYS.today).length);
          } finally {
            start.control('ROLLBACK');
          }
        },
      ),
      { numRuns: 60 },
    );
  });

  it('names the first by name, A and a alike, and papers by the day they end', () => {
    start.control('BEGIN');
    const papers = (validUntil: string) => named([{ kind: 'certificate', dated: '', validUntil }], 'Paper');
    const put = (name: string, validUntil: string) =>
      add(start, 'material', {
        ...wax(name),
        charge: 'non-ionic',
        functions: ['emulsifier'],
        documents: papers(validUntil),
      });
    for (const [name, last] of [
      ['b', '2026-06-01'],
      ['A', '2026-06-03'],
      ['a', '2026-06-02'],
      ['C', '2026-05-01'],
    ] as const)
      put(name, last);
    const { withoutHlb, pastDocuments } = readAttention(start, DAYS);
    expect(withoutHlb.first.map(({ name }) => name.toLowerCase())).toEqual(['a', 'a', 'b']);
    expect(withoutHlb.total).toBe(4);
    expect(pastDocuments.first.map(({ name, of }) => [name, of])).toEqual([
      ['C: Paper 0', 'material'],
      ['b: Paper 0', 'material'],
      ['a: Paper 0', 'material'],
    ]);
    start.control('ROLLBACK');
  });
});

const usedIn = (formulas: readonly Formula[]): Set<string> =>
  new Set(
    formulas.flatMap(({ phases }) =>
      phases.flatMap(({ lines }) => lines.map(({ materialId }) => materialId)),
    ),
  );

function isNotWhole(one: Formula): boolean {
  const { byLine, hasToHundred, differencePpm } = formulaShares(one);
  if (byLine.size === 0) return false;
  // What is q.s. takes the rest, and cannot take less than nothing.
  return hasToHundred ? [...byLine.values()].some((ppm) => ppm < 0) : differencePpm !== 0;
}

function lacksHlb({ charge, status, architecture, functions, figures }: Material): boolean {
  return (
    charge === 'non-ionic' &&
    status !== 'archived' &&
    (architecture ?? 'classic') === 'classic' &&
    functions.includes('emulsifier') &&
    figures.hlb === undefined
  );
}

function hasOldDataSheet({ status, documents }: Material): boolean {
  const dated = documents
    .filter((one) => one.kind === 'safety data sheet' && one.dated !== '')
    .map((one) => one.dated);
  return status !== 'archived' && dated.length > 0 && dated.every((when) => when < DAYS.dataSheetsFrom);
}
