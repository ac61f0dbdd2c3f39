import type { ExchangedRecord, LibraryDocument } from '@core/exchange/document';
import type { Formula } from '@core/formulas/formula';
import { blankLimit } from '@core/limits/limit';
import type { Material } from '@core/materials/material';
import type { ProblemCode } from '@core/problems/problem';
import { Problem } from '@core/problems/problem';
import { blankContent } from '@core/record/field';
import { SUBSTANCE_FIELDS } from '@core/substances/fields';
import type { Substance } from '@core/substances/substance';
import { listVersions, readVersion } from '@db/formulas/versions';
import type { Engine } from '@db/library/sql/engine';
import { SqlError } from '@db/library/sql/sql-error';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  add,
  copyOf,
  documentOf,
  edit,
  emptyLibrary,
  formulaOf,
  libraryFrom,
  meet,
  mergeInto,
  plan,
  read,
  record,
  smallLibrary,
  statesOf,
  wax,
} from './two-libraries';

/* Documents as other tools, older libraries and hands write them: legal, and odd; or wrong, and refused. */

const sent = (engine: Engine): LibraryDocument =>
  JSON.parse(JSON.stringify(documentOf(engine))) as LibraryDocument;
const substance = (name: string, part: object = {}) => ({ ...blankContent(SUBSTANCE_FIELDS), name, ...part });
const named = (engine: Engine, kind: string): string[] =>
  documentOf(engine)
    .records.filter((one) => one.kind === kind)
    .map(({ content }) => String(content.name ?? content.tradeName ?? content.subject))
    .sort();
const withRecords = (
  document: LibraryDocument,
  change: (one: ExchangedRecord) => ExchangedRecord,
): LibraryDocument => ({ ...document, records: document.records.map(change) });

async function refusal(work: () => Promise<unknown>): Promise<ProblemCode | 'constraint'> {
  try {
    await work();
  } catch (error) {
    if (error instanceof Problem) return error.code;
    // Told in words by whoever asked for it: it names something that it does not hold, or twice.
    if (error instanceof SqlError) return 'constraint';
    throw error;
  }
  throw new Error('It was taken.');
}

describe('records in any order', () => {
  it('make the same library, and merge to the same, with what others use behind them', async () => {
    const { engine } = await smallLibrary();
    add(engine, 'substance', substance('Cetyl Alcohol'));
    add(engine, 'limit', blankLimit('Phenoxyethanol'));
    const document = sent(engine);
    const order = fc.shuffledSubarray(document.records, { minLength: document.records.length });
    await fc.assert(
      fc.asyncProperty(order, async (records) => {
        expect(statesOf(await libraryFrom({ ...document, records }))).toEqual(statesOf(engine));
        const ours = await emptyLibrary();
        mergeInto(ours, { ...document, records });
        expect(statesOf(ours)).toEqual(statesOf(engine));
        expect(ours.pragma('foreign_key_check')).toBeNull();
      }),
      { numRuns: 6 },
    );
  });
});

describe('what goes by its name alone', () => {
  it('is never taken for another that both libraries hold, however that is called by now', async () => {
    const ours = await emptyLibrary();
    const id = add(ours, 'substance', substance('Urea'));
    const theirs = await copyOf(ours);
    // Theirs was renamed, and another one bears the old name.
    edit(theirs, 'substance', id, { name: 'Carbamide', notes: 'renamed' });
    add(theirs, 'substance', substance('UREA', { cas: '57-13-6' }), '00000000-0000-7000-8000-000000000001');
    mergeInto(ours, documentOf(theirs));
    expect(read<Substance>(ours, 'substance', id)).toMatchObject({ name: 'Carbamide', notes: 'renamed' });
    expect(named(ours, 'substance')).toEqual(['Carbamide', 'UREA']);
    expect(statesOf(ours)).toEqual(statesOf(theirs));
  });

  it('loses none of two that bear one name there, and asks for none of them a second time', async () => {
    const [ours, theirs] = [await emptyLibrary(), await emptyLibrary()];
    add(ours, 'substance', substance('Urea'));
    add(theirs, 'substance', substance('Urea', { cas: '57-13-6' }));
    add(theirs, 'substance', substance('urea', { notes: 'the other drum' }));
    expect(mergeInto(ours, documentOf(theirs))).toMatchObject({ added: 1, changed: 1 });
    const [one, two] = documentOf(ours).records.map(({ content }) => content);
    expect([one!.cas, two!.cas].sort()).toEqual(['', '57-13-6']);
    expect([one!.notes, two!.notes].sort()).toEqual(['', 'the other drum']);
    expect(mergeInto(ours, documentOf(theirs))).toMatchObject({ added: 0, changed: 0, entered: 0 });
  });

  it('is added beside two of ours, where it cannot be told which of them it is; once', async () => {
    const [ours, theirs] = [await emptyLibrary(), await emptyLibrary()];
    for (const cas of ['1', '2']) add(ours, 'substance', substance('Urea', { notes: cas }));
    add(theirs, 'substance', substance('Urea', { notes: '3' }));
    for (const added of [1, 0])
      expect(mergeInto(ours, documentOf(theirs))).toMatchObject({ added, changed: 0 });
    expect(named(ours, 'substance')).toHaveLength(3);
  });

  it('leaves materials of one trade name two materials: two suppliers may use it', async () => {
    const [ours, theirs] = [await emptyLibrary(), await emptyLibrary()];
    for (const side of [ours, theirs]) add(side, 'material', wax('Larkspur Wax'));
    expect(mergeInto(ours, documentOf(theirs))).toMatchObject({ added: 1, changed: 0 });
    expect(named(ours, 'material')).toEqual(['Larkspur Wax', 'Larkspur Wax']);
  });
});

describe('a document that somebody wrote into', () => {
  it('counts as what it says now, changed on from the state that it names', async () => {
    const { engine, water } = await smallLibrary();
    const written = withRecords(sent(engine), (one) =>
      one.id === water ? { ...one, content: { ...one.content, notes: 'by hand' } } : one,
    );
    expect(meet(engine, written).entries.find(({ id }) => id === water)?.relation).toBe('theirs newer');
    mergeInto(engine, written);
    expect(read<Material>(engine, 'material', water).notes).toBe('by hand');
    expect(mergeInto(engine, written)).toMatchObject({ changed: 0, entered: 0 });
  });

  it.each<[string, ProblemCode, (of: LibraryDocument) => LibraryDocument]>([
    [
      'of a kind that is not known',
      'library-newer',
      (of) => withRecords(of, (one) => ({ ...one, kind: 'jar' })),
    ],
    ['of a later format', 'library-newer', (of) => withRecords(of, (one) => ({ ...one, format: 99 }))],
    [
      'without what makes a record',
      'invalid-input',
      (of) => withRecords(of, (one) => ({ ...one, content: { tradeName: 7 } })),
    ],
  ])('is refused whole: %s', async (_, code, change) => {
    const { engine } = await smallLibrary();
    const document = change(sent(engine));
    expect(await refusal(() => libraryFrom(document))).toBe(code);
    expect(await refusal(async () => mergeInto(await emptyLibrary(), document))).toBe(code);
  });

  it('is refused where a kept state is not what its hash says, or a version names one that is not there', async () => {
    const { engine } = await smallLibrary();
    const document = sent(engine);
    const bent = document.states.map((state) => ({ ...state, content: { ...state.content, notes: 'bent' } }));
    for (const states of [bent, []]) {
      expect(await refusal(() => libraryFrom({ ...document, states }))).toBe('library-damaged');
      expect(await refusal(async () => mergeInto(await emptyLibrary(), { ...document, states }))).toBe(
        'library-damaged',
      );
    }
  });

  it('is refused where it names what it does not hold, or holds one thing twice', async () => {
    const { engine } = await smallLibrary();
    const document = sent(engine);
    const { records, versions, batches, numbers } = document;
    const torn: Partial<LibraryDocument>[] = [
      { records: records.filter(({ kind }) => kind !== 'material') },
      { records: records.filter(({ kind }) => kind !== 'formula') },
      { versions: [] },
      { records: [...records, records[0]!] },
      { versions: [...versions, versions[0]!] },
      { batches: [...batches, batches[0]!] },
      { numbers: [...numbers, { name: 'formula F-', last: 1 }, { name: 'formula F-', last: 2 }] },
    ];
    for (const part of torn)
      expect(await refusal(() => libraryFrom({ ...document, ...part }))).toBe('constraint');
  });
});

describe('what a merge cannot take', () => {
  it('is said of each, and all else is taken', async () => {
    const { engine, oil, formula } = await smallLibrary();
    const document = sent(engine);
    const ours = await emptyLibrary();
    const without = { ...document, records: document.records.filter(({ id }) => id !== oil) };
    const planned = meet(ours, without).plan({ rules: {}, records: {}, fields: {} });
    expect(planned.get(`formula ${formula}`)).toMatchObject({
      choice: 'leave',
      content: null,
      refused: 'It needs a raw material that neither library holds any more.',
    });
    expect(mergeInto(ours, without)).toMatchObject({ added: 1, versions: 0, batches: 0 });
    expect(named(ours, 'formula')).toEqual([]);
  });

  it('keeps a batch away whose version stays away', async () => {
    const { engine, formula } = await smallLibrary();
    const ours = await emptyLibrary();
    const records = { [`formula ${formula}`]: 'leave' as const };
    expect(mergeInto(ours, documentOf(engine), { records })).toMatchObject({
      added: 2,
      versions: 0,
      batches: 0,
    });
    expect(documentOf(ours)).toMatchObject({ versions: [], batches: [] });
  });

  it('takes along the material of a batch, which neither its formula nor a version holds any more', async () => {
    const { engine, formula, version } = await smallLibrary();
    const ours = await copyOf(engine);
    const spare = add(engine, 'material', wax('Spare Wax'));
    const made = plan(engine, version, 'B-002', spare);
    const records = { [`material ${spare}`]: 'leave' as const };
    expect(mergeInto(ours, documentOf(engine), { records })).toMatchObject({ added: 1, batches: 1 });
    expect(documentOf(ours).batches.map(({ id }) => id)).toContain(made);
    // Of a batch that is here already nothing is needed.
    const settled = meet(ours, documentOf(engine)).plan({ rules: {}, records: {}, fields: {} });
    expect([...settled.values()].every(({ choice, follows }) => choice === 'leave' && follows === null)).toBe(
      true,
    );
    expect(read<Formula>(ours, 'formula', formula).name).toBe('Balm');
  });

  it('tells batches of one number apart, and keeps a number that both drew from being drawn again', async () => {
    const { engine, formula, version, water } = await smallLibrary();
    const theirs = await copyOf(engine);
    const mine = plan(engine, version, 'B-002', water);
    const other = plan(theirs, version, 'B-002', water);
    theirs.run('INSERT INTO sequence (name, last) VALUES (?, ?)', 'batch B-', 7);
    engine.run('INSERT INTO sequence (name, last) VALUES (?, ?)', 'batch B-', 2);
    engine.run('INSERT INTO sequence (name, last) VALUES (?, ?)', 'formula F-', 9);
    theirs.run('INSERT INTO sequence (name, last) VALUES (?, ?)', 'formula F-', 3);
    expect(mergeInto(engine, documentOf(theirs))).toMatchObject({
      apart: [{ was: 'B-002', is: 'B-002 (North Bench)' }],
      batches: 1,
    });
    const numbers = new Map(documentOf(engine).batches.map(({ id, number }) => [id, number]));
    expect([numbers.get(mine), numbers.get(other)]).toEqual(['B-002', 'B-002 (North Bench)']);
    expect(documentOf(engine).numbers).toEqual([
      { name: 'batch B-', last: 7 },
      { name: 'formula F-', last: 9 },
    ]);
    expect(read<Formula>(engine, 'formula', formula).code).toBe('F-001');
  });

  it('tells numbers apart by whatever a folder may be called, in a line that can be kept and read', async () => {
    const { engine, formula, version, water } = await smallLibrary();
    const theirs = await copyOf(engine);
    for (const side of [engine, theirs]) {
      record(side, formula, 2, { reason: `${'x'.repeat(463)}😀` });
      plan(side, version, 'B-002', water);
    }
    // Cut to the room that there is, in the midst of a sign.
    const ours = add(engine, 'formula', formulaOf('Ours', `F-${'0'.repeat(20)}`, [water]));
    const other = add(theirs, 'formula', formulaOf('Theirs', `F-${'0'.repeat(20)}`, [water]));
    mergeInto(engine, documentOf(theirs, 'Bench\nof\u0007 x😀😀😀😀😀😀😀'));
    expect(read<Formula>(engine, 'formula', ours).code).toBe(`F-${'0'.repeat(20)}`);
    expect(read<Formula>(engine, 'formula', other).code).toBe(`F-${'0'.repeat(20)} (Bench of x😀😀)`);
    const told = listVersions(engine, formula)[0]!;
    expect(readVersion(engine, told.id)).toMatchObject({ number: 3 });
    expect(told.reason.startsWith(`${'x'.repeat(463)}😀 (version 2 in Bench of x😀`)).toBe(true);
    expect(told.reason.length).toBeLessThanOrEqual(500);
    expect(documentOf(engine).batches.map(({ number }) => number)).toContain(
      'B-002 (Bench of x😀😀😀😀😀😀😀)',
    );
  });

  it('numbers versions of both sides each once, in the order in which theirs were recorded', async () => {
    const { engine, formula } = await smallLibrary();
    const theirs = await copyOf(engine);
    const mine = [2, 3].map((number) => record(engine, formula, number));
    const other = [2, 3, 4].map((number) => record(theirs, formula, number));
    mergeInto(engine, documentOf(theirs));
    const numbers = new Map(documentOf(engine).versions.map(({ id, number }) => [id, number]));
    expect(mine.map((id) => numbers.get(id))).toEqual([2, 3]);
    expect(other.map((id) => numbers.get(id))).toEqual([4, 5, 6]);
  });
});
