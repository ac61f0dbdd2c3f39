import { fileGaps, reportsOf, type FiledVersion } from '@core/formulas/file-gaps';
import { enteredDecision, standingOf } from '@core/formulas/decision';
import { REPORT_KINDS, type ProductReport, type ReportKind } from '@core/formulas/product-file';
import type { DocumentKind } from '@core/materials/vocabulary';
import { describe, expect, it } from 'vitest';
import { idOf, MATERIALS, sampleMaterial } from '../sheets/sample-materials';
import { CREAM } from '../sheets/samples';

let reports = 0;
function report(kind: ReportKind, versionNumber: number | null = 3): ProductReport {
  reports += 1;
  return {
    ...{ id: idOf(4000 + reports), kind, versionNumber, title: `A ${kind}` },
    ...{ sha256: 'a'.repeat(64), mediaType: 'application/pdf', bytes: 1, dated: '', validUntil: '' },
  };
}
const paper = (kind: DocumentKind) => ({
  ...{ kind, title: `A ${kind}`, dated: '2026-01-01', validUntil: '' },
  ...{ sha256: 'b'.repeat(64), mediaType: 'application/pdf' as const, bytes: 1 },
});
const documented = Object.fromEntries(
  Object.entries(MATERIALS).map(([id, one]) => [
    id,
    { ...one, documents: [paper('specification'), paper('safety data sheet')] },
  ]),
);
const approved = {
  decision: 'approved',
  by: 'E. M.',
  on: '2026-03-01',
  reason: '',
  at: '2026-03-01T10:00:00Z',
} as const;

/** Of which nothing is missing. */
function whole(): FiledVersion {
  return {
    content: {
      ...structuredClone(CREAM),
      market: { ...CREAM.market, kind: 'face cream' },
      reports: (['safety assessment', 'stability report', 'challenge test report', 'packaging'] as const).map(
        (kind) => report(kind),
      ),
      statements: { goodPractice: 'ISO 22716', animalTesting: 'None was made.' },
    },
    materials: documented,
    number: 3,
    decisions: [approved],
    batches: 1,
  };
}
const gaps = (edit: (filed: FiledVersion) => void) => {
  const filed = whole();
  edit(filed);
  return fileGaps(filed);
};
const said = (edit: (filed: FiledVersion) => void) => gaps(edit).map(({ part, says }) => `${part}: ${says}`);

describe('what a product’s file lacks (Regulation (EC) No 1223/2009, Article 11(2), from memory)', () => {
  it('is nothing where all is there', () => {
    expect(gaps(() => undefined)).toEqual([]);
  });

  it.each<[string, string, (filed: FiledVersion) => void]>([
    ['the kind', 'Product', (filed) => (filed.content.market.kind = null)],
    ['an approval', 'Product', (filed) => (filed.decisions = [])],
    ['the method', 'Procedure', (filed) => (filed.content.steps = [])],
    ['good practice', 'Procedure', (filed) => (filed.content.statements.goodPractice = '')],
    ['an appearance', 'Specification', (filed) => (filed.content.target.appearance = '')],
    ['a pH', 'Specification', (filed) => Object.assign(filed.content.target, { phLow: null, phHigh: null })],
    [
      'a viscosity',
      'Specification',
      (filed) => Object.assign(filed.content.target, { viscosityLow: null, viscosityHigh: null }),
    ],
    ['animal testing', 'Statements', (filed) => (filed.content.statements.animalTesting = '')],
    ['a batch', 'Batches', (filed) => (filed.batches = 0)],
  ])('%s: the one gap, in its part', (_, part, edit) => {
    expect(gaps(edit).map((gap) => gap.part)).toEqual([part]);
  });

  it('is not a pH of which one end is set, nor one of 0', () => {
    expect(gaps((filed) => Object.assign(filed.content.target, { phLow: null, phHigh: 6 }))).toEqual([]);
    expect(
      gaps((filed) => Object.assign(filed.content.target, { viscosityLow: 0, viscosityHigh: null })),
    ).toEqual([]);
  });

  it.each(['safety assessment', 'stability report', 'challenge test report', 'packaging'] as const)(
    'is a %s that is missing, or that speaks of another version',
    (kind) => {
      const without = (filed: FiledVersion) =>
        (filed.content.reports = filed.content.reports.filter((one) => one.kind !== kind));
      expect(gaps(without).map((gap) => gap.part)).toEqual(['Reports']);
      const older = said((filed) => {
        without(filed);
        filed.content.reports.push(report(kind, 2));
      });
      expect(older[0]).toContain('One of version 2 is, which is another formula.');
      // One about the product as such serves every version.
      const product = said((filed) => {
        without(filed);
        filed.content.reports.push(report(kind, null));
      });
      expect(product).toEqual([]);
    },
  );

  it('asks for no report that is only kept besides', () => {
    const optional = REPORT_KINDS.filter((kind) => !whole().content.reports.some((one) => one.kind === kind));
    expect(optional).toEqual(['microbiological quality', 'proof of a claim', 'other']);
  });

  it('names each material once that lacks a paper, by the paper', () => {
    const bare = sampleMaterial('Bare', [['Squalane', 100]], { documents: [paper('certificate')] });
    const found = said((filed) => {
      const line = filed.content.phases[1]!.lines[0]!;
      filed.content.phases[1]!.lines[0] = { ...line, materialId: bare.id };
      filed.content.phases[2]!.lines.push({ ...line, id: idOf(8999), materialId: bare.id });
      filed.materials = { ...documented, [bare.id]: bare };
    });
    expect(found).toEqual([
      'Materials: No specification of the supplier is on file for Bare.',
      'Materials: No safety data sheet of the supplier is on file for Bare.',
    ]);
  });

  it('is a claim without evidence, be it words or a report that is still there', () => {
    const claim = (evidence: string, reportId: string | null) => (filed: FiledVersion) =>
      (filed.content.claims = [{ id: idOf(1), says: 'Soothes', evidence, reportId }]);
    expect(said(claim('', null))).toEqual(['Claims: “Soothes” has no evidence.']);
    expect(said(claim('', idOf(4999)))).toEqual(['Claims: “Soothes” has no evidence.']);
    expect(said(claim('Panel of 20', null))).toEqual([]);
    expect(said((filed) => claim('', filed.content.reports[0]!.id)(filed))).toEqual([]);
  });

  it('says of a withdrawn version that it is, and no more that nobody approved it', () => {
    const withdrawn = { ...approved, decision: 'withdrawn' as const, reason: 'A lot failed' };
    expect(said((filed) => (filed.decisions = [approved, withdrawn]))).toEqual([
      'Product: This version is withdrawn.',
    ]);
  });
});

describe('reports of a version', () => {
  it('are its own and those of the product, in their order', () => {
    const all = [report('other', 1), report('other', null), report('other', 2), report('other', 2)];
    expect(reportsOf(all, 2)).toEqual([all[1], all[2], all[3]]);
    expect(reportsOf(all, 9)).toEqual([all[1]]);
    expect(reportsOf([], 1)).toEqual([]);
  });
});

describe('a decision on a version', () => {
  it('is where it stands: the last one', () => {
    expect(standingOf([])).toBe('recorded');
    expect(standingOf([{ decision: 'approved' }])).toBe('approved');
    expect(standingOf([{ decision: 'approved' }, { decision: 'withdrawn' }])).toBe('withdrawn');
  });

  it.each([
    [{ decision: 'withdrawn', reason: '' }, 'Say why it is withdrawn: whoever finds it later has to know.'],
    [
      { decision: 'withdrawn', reason: '   ' },
      'Say why it is withdrawn: whoever finds it later has to know.',
    ],
    [{ on: '1 March' }, 'Enter the day as a date.'],
    [{ on: '2026-02-30' }, 'Enter the day as a date.'],
  ])('refuses %o', (part, message) => {
    const entered = { decision: 'approved', by: 'E. M.', on: '2026-03-01', reason: '' };
    expect(enteredDecision.safeParse(entered).success).toBe(true);
    expect(enteredDecision.safeParse({ ...entered, ...part }).error?.issues[0]?.message).toBe(message);
  });

  it('needs a name', () => {
    expect(
      enteredDecision.safeParse({ decision: 'approved', by: ' ', on: '2026-03-01', reason: '' }).success,
    ).toBe(false);
  });
});
