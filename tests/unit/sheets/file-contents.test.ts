import type { MadeBatch } from '@core/batches/outcome';
import type { VersionDecision } from '@core/formulas/decision';
import type { FormulaContent } from '@core/formulas/formula';
import { blankLimit, type Limit } from '@core/limits/limit';
import { NO_ADVICE, NO_LAW, type Law } from '@core/limits/law';
import { labelSheet } from '@core/sheets/label-sheet';
import {
  filedMaterials,
  gapsOf,
  productFileSheet,
  type ProductFile,
} from '@core/sheets/product-file/product-file-sheet';
import { blankSubstance } from '@core/substances/substance';
import { describe, expect, it } from 'vitest';
import { kept } from '../limits/law';
import { AT, idOf, MATERIALS, PRESERVATIVE, WATER, WAX } from './sample-materials';
import { CREAM, CREAM_VERSION, MAKER, sampleBatch, sampleLine } from './samples';
import { factOf, rowsUnder, wordsOf } from './sheet-words';

const content = (edit: (copy: FormulaContent) => void = () => undefined): FormulaContent => {
  const copy = structuredClone(CREAM);
  edit(copy);
  return copy;
};
const limit = (part: Partial<Limit>): Limit => ({
  ...kept(blankLimit('Phenoxyethanol')),
  ...{ regions: ['EU'], source: 'Annex V/29', ...part },
});

describe('label and law on paper', () => {
  const sheetOf = (law: Law, edit?: (copy: FormulaContent) => void) =>
    labelSheet(
      { content: content(edit), materials: MATERIALS, version: CREAM_VERSION, law },
      { form: 'EU', allergens: '2023' },
      MAKER,
      AT,
    );

  it('has the ingredient list largest first, each with what it comes to, estimates marked', () => {
    const sheet = sheetOf(NO_LAW);
    const rows = rowsUnder(sheet.content, 'Ingredient', '% of the product');
    // Water 69.325 and half of 0.125 of acid: 69.3875 %, by hand.
    expect(rows[0]?.slice(0, 2)).toEqual(['Aqua', '69.3875']);
    expect(rows.map(([name]) => name)).toContain('Cetearyl Alcohol');
    expect(rows.find(([name]) => name === 'Phenoxyethanol')?.[1]).toBe('≈ 0.90');
    const list = wordsOf(sheet).find((one) => one.startsWith('Aqua, Prunus'));
    expect(list).toContain('Parfum');
  });

  it('says that no limit is about the formula where none is, and always that it is no advice', () => {
    const words = wordsOf(sheetOf(NO_LAW));
    expect(words).toContain('No limit of the library’s table is about anything in this formula.');
    expect(words).toContain(NO_ADVICE);
  });

  it.each([
    [1, 'within'],
    [0.92, 'within'],
    [0.91, 'MAY BE ABOVE'],
    [0.8, 'ABOVE'],
  ])('a limit of %d %% against 0.88 to 0.92 % reads “%s”', (percent, verdict) => {
    const sheet = sheetOf({
      ...NO_LAW,
      substances: [kept(blankSubstance('Phenoxyethanol'))],
      limits: [limit({ rule: 'at most', percent })],
    });
    const [row] = rowsUnder(sheet.content, 'Verdict', 'Limit');
    expect(row?.[0]).toContain('Phenoxyethanol');
    expect(row?.[3]).toContain(verdict);
    expect(row?.[4]).toContain('Annex V/29');
  });

  it('is of the version and of the regions that it was held against', () => {
    const sheet = sheetOf(NO_LAW, (copy) => (copy.market.regions = ['US', 'Canada']));
    expect(factOf(sheet, 'Checked against')).toBe('US and Canada');
    expect(factOf(sheetOf(NO_LAW), 'Checked against')).toBe('EU');
    expect(factOf(sheetOf(NO_LAW), 'Kind')).toBe('Not stated');
  });
});

describe('the file of a product', () => {
  const approved: VersionDecision = {
    decision: 'approved',
    by: 'E. Marlowe',
    on: '2026-03-01',
    reason: '',
    at: AT,
  };
  const file = (
    part: {
      edit?: (copy: FormulaContent) => void;
      batches?: MadeBatch[];
      decisions?: VersionDecision[];
    } = {},
  ): ProductFile => ({
    formula: {
      ...{ content: content(part.edit), materials: MATERIALS },
      version: { ...CREAM_VERSION, decisions: part.decisions ?? [approved] },
    },
    batches: part.batches ?? [],
    photos: {},
  });
  const words = (of: ProductFile) => wordsOf(productFileSheet(of, MAKER, AT));

  it('lists its parts in order, each material under its own name, and has each on a page of its own', () => {
    const sheet = productFileSheet(file(), MAKER, AT);
    const parts = rowsUnder(sheet.content, 'Part', 'Page').map(([part]) => part);
    expect(parts.slice(0, 8)).toEqual([
      ...[
        'Formula and procedure',
        'Specification of the finished product',
        'Label and law',
        'Exposure and natural origin',
      ],
      ...['Claims and statements', 'Reports on file', 'Batches', 'Raw materials'],
    ]);
    expect(parts.slice(8)).toEqual(filedMaterials(file().formula).map(({ tradeName }) => `– ${tradeName}`));
    const heads = sheet.content.filter((node) => 'outline' in node && node.outline === true);
    expect(heads).toHaveLength(parts.length);
    for (const head of heads) expect(head).toMatchObject({ pageBreak: 'before' });
    const ids = heads.map((head) => ('id' in head ? head.id : ''));
    expect(new Set(ids).size).toBe(ids.length);
  });

  it('holds each material once, in the order of its lines, and passes over one that is gone', () => {
    const twice = file({
      edit: (copy) => {
        copy.phases[2]!.lines.push(sampleLine(WAX, 1));
        copy.phases[1]!.lines[0]!.materialId = idOf(99);
      },
    });
    const names = filedMaterials(twice.formula).map(({ tradeName }) => tradeName);
    expect(names[0]).toBe(WATER.tradeName);
    expect(names.filter((name) => name === WAX.tradeName)).toHaveLength(1);
    expect(names.at(-1)).toBe(WAX.tradeName);
  });

  it('names its gaps first, and says so where it looks in vain for one', () => {
    const gaps = gapsOf(file());
    const rows = rowsUnder(productFileSheet(file(), MAKER, AT).content, 'What');
    expect(rows).toEqual(gaps.map(({ part, says }) => [part, says]));
    expect(rows.map(([part]) => part)).toContain('Batches');
    expect(
      gapsOf(file({ batches: [{ ...sampleBatch(), outcome: null, documents: [] }] })).map(({ part }) => part),
    ).not.toContain('Batches');
  });

  it('holds the strict microbiological limits of what goes near the eyes, with why', () => {
    const of = (kind: FormulaContent['market']['kind']) =>
      productFileSheet(file({ edit: (copy) => (copy.market.kind = kind) }), MAKER, AT);
    // ISO 17516:2014, Table 1: 100 and 1,000 CFU, out above twice that.
    expect(rowsUnder(of('eye make-up').content, 'Micro-organisms')[0]?.slice(1)).toEqual([
      'at most 100 CFU',
      'above 200 CFU',
    ]);
    expect(rowsUnder(of('body lotion').content, 'Micro-organisms')[0]?.slice(1)).toEqual([
      'at most 1,000 CFU',
      'above 2,000 CFU',
    ]);
    expect(rowsUnder(of(null).content, 'Micro-organisms')).toHaveLength(5);
    expect(wordsOf(of('eye make-up')).join()).toContain('This limit counts because it is for the eye area.');
  });

  it('tells claims with what bears each out, or that nothing is on file for it', () => {
    const report = {
      id: idOf(5),
      kind: 'proof of a claim',
      title: 'Panel of 20',
      versionNumber: 2,
      sha256: 'a'.repeat(64),
      mediaType: 'application/pdf',
      bytes: 1,
      dated: '2026-02-01',
      validUntil: '2027-01-31',
    } as const;
    const sheet = productFileSheet(
      file({
        edit: (copy) => {
          copy.reports = [report];
          copy.claims = [
            { id: idOf(1), says: 'Softens', evidence: '', reportId: report.id },
            { id: idOf(2), says: 'Lasts', evidence: 'Our measurement', reportId: null },
            { id: idOf(3), says: 'Glows', evidence: '', reportId: idOf(77) },
          ];
        },
      }),
      MAKER,
      AT,
    );
    expect(rowsUnder(sheet.content, 'Claim', 'Evidence')).toEqual([
      ['Softens', '', 'Panel of 20'],
      ['Lasts', 'Our measurement', ''],
      ['Glows', 'none on file', ''],
    ]);
    expect(rowsUnder(sheet.content, 'Kind', 'Of')).toEqual([
      [
        'Proof of a claim',
        'Panel of 20, 1 Feb 2026, valid until 31 Jan 2027',
        'version 2, another than this',
      ],
    ]);
  });

  it('tells its batches, each material’s documents, and who approved it', () => {
    const outcome = {
      ...{ finishedOn: '2026-03-16', obtainedMg: 2_473_500, unitsFilled: 48, by: 'E. Marlowe' },
      ...{ remarks: 'A little left in the vessel.', at: AT },
    };
    const found = {
      ...{ id: idOf(9), kind: 'certificate of analysis' as const, title: 'Certificate B-0041' },
      ...{ dated: '2026-03-20', validUntil: '', sha256: 'c'.repeat(64), bytes: 1 },
      mediaType: 'application/pdf',
    } as const;
    const batches = [
      { ...sampleBatch(), outcome, documents: [found] },
      { ...sampleBatch(), number: 'B-0042', outcome: null, documents: [] },
    ];
    const sheet = productFileSheet(file({ batches }), MAKER, AT);
    expect(rowsUnder(sheet.content, 'Batch', 'Mass')).toEqual([
      [
        'B-0041',
        '14 Mar 2026',
        '2.5500\u00a0kg',
        // By hand: 2,473.5 g of 2,550 g are 97.0 %; masses are told in four figures.
        '16 Mar 2026, 2.474\u00a0kg, 97.0\u00a0% of what was weighed, 48 units; recorded by E. Marlowe. A little left in the vessel.',
        'For the Thursday class; keep 200 g back for the stability study. On file: Certificate B-0041 (certificate of analysis, 20 Mar 2026).',
      ],
      [
        'B-0042',
        '14 Mar 2026',
        '2.5500\u00a0kg',
        'not recorded yet',
        'For the Thursday class; keep 200 g back for the stability study.',
      ],
    ]);
    expect(rowsUnder(sheet.content, 'Material', 'Documents on file')).toContainEqual([
      PRESERVATIVE.tradeName,
      'none',
    ]);
    expect(factOf(sheet, 'Approved')).toBe('E. Marlowe, 1 Mar 2026');
    expect(words(file({ batches: [] }))).toContain('No batch of this version is on record.');
  });

  it('of a withdrawn version says so before all else', () => {
    const withdrawn = {
      ...approved,
      decision: 'withdrawn' as const,
      by: 'R. Thorne',
      reason: 'A lot failed.',
    };
    const first = words(file({ decisions: [approved, withdrawn] })).find((one) => one.startsWith('– '));
    expect(first).toContain('WITHDRAWN: version 3 by R. Thorne');
  });
});
