import type { MadeBatch } from '@core/batches/outcome';
import type { FormulaContent } from '@core/formulas/formula';
import type { ProductReport } from '@core/formulas/product-file';
import type { Market } from '@core/products/market';
import { partSheet } from '@core/sheets/product-file/part-sheet';
import { FILE_PARTS } from '@core/sheets/product-file/file-parts';
import { batchesPart, claimsPart, documentsPart, reportsPart } from '@core/sheets/product-file/lists';
import { specificationPart } from '@core/sheets/product-file/specification-part';
import { blankTarget } from '@core/formulas/formula';
import { describe, expect, it } from 'vitest';
import { AT, idOf, MATERIALS, sampleMaterial } from './sample-materials';
import { CREAM, CREAM_VERSION, MAKER, sampleBatch } from './samples';
import { rowsUnder, textsOf, wordsOf } from './sheet-words';

const WIDTH = 490;
const report = (part: Partial<ProductReport> = {}): ProductReport => ({
  ...{ id: idOf(5), kind: 'stability report', title: 'Three months', versionNumber: null },
  ...{ sha256: 'a'.repeat(64), mediaType: 'application/pdf', bytes: 1, dated: '', validUntil: '' },
  ...part,
});
const words = (nodes: Parameters<typeof rowsUnder>[0]): string[] => nodes.flatMap(textsOf);

describe('the claims in a product’s file', () => {
  const content = (part: Partial<FormulaContent>): FormulaContent => ({ ...CREAM, ...part });

  it('say that there is none, and that nothing is stated, rather than nothing', () => {
    expect(words(claimsPart(CREAM, WIDTH))).toEqual([
      'Claims and their evidence',
      'No claim is on record.',
      'Good manufacturing practice',
      'Nothing is stated.',
      'Animal testing',
      'Nothing is stated.',
    ]);
  });

  it('hold the maker’s own statements, each under its head', () => {
    const statements = { goodPractice: 'By ISO 22716.', animalTesting: 'None was done by us or for us.' };
    const said = words(claimsPart(content({ statements }), WIDTH));
    expect(said.slice(said.indexOf('Good manufacturing practice'))).toEqual([
      'Good manufacturing practice',
      'By ISO 22716.',
      'Animal testing',
      'None was done by us or for us.',
    ]);
  });

  it('with words and a report show both, and a report alone lacks no evidence', () => {
    const claims = [
      {
        id: idOf(1),
        says: 'Moisturises for 24 hours',
        evidence: 'Corneometer, 20 people',
        reportId: idOf(5),
      },
      { id: idOf(2), says: 'Absorbs fast', evidence: '', reportId: idOf(5) },
      { id: idOf(3), says: 'Luxurious', evidence: '', reportId: null },
    ];
    const reports = [report({ kind: 'proof of a claim', title: 'Panel' })];
    expect(rowsUnder(claimsPart(content({ claims, reports }), WIDTH), 'Claim', 'Evidence')).toEqual([
      ['Moisturises for 24 hours', 'Corneometer, 20 people', 'Panel'],
      ['Absorbs fast', '', 'Panel'],
      ['Luxurious', 'none on file', ''],
    ]);
  });
});

describe('the reports in a product’s file', () => {
  const rows = (...reports: ProductReport[]) =>
    rowsUnder(reportsPart({ ...CREAM, reports }, 3, 'en-GB', WIDTH), 'Kind', 'Of');

  it('say of which version each speaks, and that another is another formula', () => {
    expect(
      rows(report(), report({ versionNumber: 3 }), report({ versionNumber: 2 })).map(([, , of]) => of),
    ).toEqual(['the product', 'version 3', 'version 2, another than this']);
  });

  it('bear their days where they have some, and no comma where they have none', () => {
    expect(
      rows(
        report(),
        report({ dated: '2026-02-01' }),
        report({ validUntil: '2027-01-31' }),
        report({ dated: '2026-02-01', validUntil: '2027-01-31' }),
      ).map(([, title]) => title),
    ).toEqual([
      'Three months',
      'Three months, 1 Feb 2026',
      'Three months, valid until 31 Jan 2027',
      'Three months, 1 Feb 2026, valid until 31 Jan 2027',
    ]);
  });

  it('are said to be none, without an empty table', () => {
    const none = reportsPart(CREAM, 3, 'en-GB', WIDTH);
    expect(words(none)).toEqual(['No report is on file.']);
    expect(rowsUnder(none, 'Kind')).toEqual([]);
  });
});

describe('the batches in a product’s file', () => {
  const made = (part: Partial<MadeBatch> = {}): MadeBatch => ({
    ...{ ...sampleBatch(), note: '', outcome: null, documents: [] },
    ...part,
  });
  const outcome = {
    ...{ finishedOn: '2026-03-16', obtainedMg: 2_550_000, unitsFilled: null, by: 'E. Marlowe' },
    ...{ remarks: '', at: AT },
  };
  const rows = (...batches: MadeBatch[]) => rowsUnder(batchesPart(batches, 'en-GB', WIDTH), 'Batch', 'Mass');

  it('say of each by whom its outcome was recorded; without units none are counted, without remarks none printed', () => {
    // 2,550 g of 2,550 g.
    expect(rows(made({ outcome }))[0]?.[3]).toBe(
      '16 Mar 2026, 2.55\u00a0kg, 100.0\u00a0% of what was weighed; recorded by E. Marlowe.',
    );
    expect(rows(made({ outcome: { ...outcome, unitsFilled: 0 } }))[0]?.[3]).toContain(', 0 units; recorded');
  });

  it('leave the last column empty where neither note nor document is there', () => {
    expect(rows(made(), made({ note: 'Second shift' })).map((row) => row[4])).toEqual(['', 'Second shift']);
  });

  it('stand in the order in which they were given, each once', () => {
    const many = ['B-1', 'B-2', 'B-3'].map((number) => made({ number }));
    expect(rows(...many).map(([number]) => number)).toEqual(['B-1', 'B-2', 'B-3']);
  });
});

describe('the documents of suppliers in a product’s file', () => {
  it('stand beside each material with their kind and days, and a material without says so', () => {
    const sheet = {
      ...{ id: idOf(9), kind: 'safety data sheet' as const, title: 'SDS Oakbarrow' },
      ...{ dated: '2026-01-05', validUntil: '', sha256: 'b'.repeat(64), bytes: 1 },
      mediaType: 'application/pdf' as const,
    };
    const certificate = { ...sheet, id: idOf(10), kind: 'certificate' as const, title: 'Organic', dated: '' };
    const one = sampleMaterial('Oat oil', [['Avena Sativa Kernel Oil', 100]], {
      documents: [sheet, certificate],
    });
    const two = sampleMaterial('Chalk', [['Calcium Carbonate', 100]]);
    expect(rowsUnder(documentsPart([one, two], 'en-GB', WIDTH), 'Material', 'Documents on file')).toEqual([
      ['Oat oil', 'SDS Oakbarrow (safety data sheet, 5 Jan 2026); Organic (certificate)'],
      ['Chalk', 'none'],
    ]);
  });
});

describe('the specification of the finished product', () => {
  const of = (market: Partial<Market> = {}, part: Partial<FormulaContent> = {}) =>
    specificationPart({ ...CREAM, ...part, market: { ...CREAM.market, ...market } }, 'en-GB', WIDTH);
  const limit = (market: Partial<Market>): string | undefined =>
    rowsUnder(of(market), 'Micro-organisms')[0]?.[1];

  // ISO 17516:2014, table 1, from memory: 100 for children under three, the eye area and mucous membranes; 1,000 for others.
  it.each<[string, Partial<Market>, string]>([
    ['nobody in particular', {}, 'at most 1,000 CFU'],
    ['children under three', { users: ['children under 3 years'] }, 'at most 100 CFU'],
    ['lips', { sites: ['lips'] }, 'at most 100 CFU'],
    ['the mouth', { sites: ['mouth'] }, 'at most 100 CFU'],
    ['near the eyes', { sites: ['near the eyes'] }, 'at most 100 CFU'],
    ['hands', { sites: ['hands'] }, 'at most 1,000 CFU'],
  ])('for %s', (_, market, says) => {
    expect(limit(market)).toBe(says);
  });

  it('names four organisms that must be absent, and the standard that says so', () => {
    const rows = rowsUnder(of(), 'Micro-organisms');
    expect(rows.slice(1).map(([name, most, out]) => [name?.split(' ')[0], most, out])).toEqual([
      ['Escherichia', 'absent', 'found'],
      ['Pseudomonas', 'absent', 'found'],
      ['Staphylococcus', 'absent', 'found'],
      ['Candida', 'absent', 'found'],
    ]);
    expect(words(of()).join()).toContain('ISO 17516');
  });

  it('keeps the maker’s own microbiology apart from the standard’s, and says nothing of it where none is set', () => {
    expect(words(of())).toContain('The maker’s own: Under 100 CFU/g');
    expect(words(of({}, { target: blankTarget() })).join()).not.toContain('The maker’s own');
  });

  it('without any target says that none is written', () => {
    expect(words(of({}, { target: blankTarget() }))).toContain('No target is written for this version.');
    expect(words(of()).join()).not.toContain('No target');
  });
});

describe('one part of a file as a sheet of its own', () => {
  const file = {
    formula: { content: CREAM, materials: MATERIALS, version: CREAM_VERSION },
    batches: [],
    photos: {},
  };
  it.each(FILE_PARTS)('%s bears the name, code and version that it is of', (part) => {
    const sheet = partSheet({ part, file }, MAKER, AT);
    const said = wordsOf(sheet);
    for (const one of ['Almond day cream', 'F-0012', '3']) expect(said).toContain(one);
    expect(sheet.info.title).toContain('F-0012, version 3');
    const [foot = ''] = textsOf(sheet.footer(1, 1));
    expect(foot).toContain('F-0012, version 3');
  });

  it('without a code is known by its version', () => {
    const nameless = { ...file, formula: { ...file.formula, content: { ...CREAM, code: '' } } };
    const sheet = partSheet({ part: 'claims', file: nameless }, MAKER, AT);
    expect(wordsOf(sheet)).not.toContain('Code');
    expect(sheet.info.title).toMatch(/– version 3$/);
  });
});
