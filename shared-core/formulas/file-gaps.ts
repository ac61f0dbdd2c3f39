import type { FormulaContent } from './formula';
import { formulaLines } from './shares';
import type { ProductReport, ReportKind } from './product-file';
import { standingOf, type VersionDecision } from './decision';
import type { Material } from '../materials/material';

/** Something that a product's file should hold and does not. */
export interface FileGap {
  /** The part of the file in which it is missing. */
  part: string;
  says: string;
}

/** A version as its file is put together: what was recorded, with claims, reports and statements as they are kept now. */
export interface FiledVersion {
  content: FormulaContent;
  materials: Readonly<Record<string, Material | undefined>>;
  number: number;
  decisions: readonly VersionDecision[];
  batches: number;
}

/** Reports that speak of a version: of that very one, or of the product as such. */
export function reportsOf(reports: readonly ProductReport[], number: number): ProductReport[] {
  return reports.filter(({ versionNumber }) => versionNumber === null || versionNumber === number);
}

const WANTED: readonly (readonly [kind: ReportKind, says: string])[] = [
  ['safety assessment', 'No safety report with its assessment by a qualified person is on file.'],
  ['stability report', 'No stability report is on file.'],
  ['challenge test report', 'No challenge test of the preservation is on file.'],
  ['packaging', 'Nothing is on file about the packaging: its material, purity and stability.'],
];

function reportGaps({ content, number }: FiledVersion): FileGap[] {
  const own = reportsOf(content.reports, number);
  return WANTED.filter(([kind]) => !own.some((report) => report.kind === kind)).map(([kind, says]) => {
    const other = content.reports.find((report) => report.kind === kind);
    const older = other ? ` One of version ${other.versionNumber ?? ''} is, which is another formula.` : '';
    return { part: 'Reports', says: `${says}${older}` };
  });
}

function materialGaps({ content, materials }: FiledVersion): FileGap[] {
  const used = [...new Set(formulaLines(content).map(({ materialId }) => materials[materialId]))];
  const known = used.filter((one): one is Material => one !== undefined);
  const without = (kind: 'safety data sheet' | 'specification'): string[] =>
    known
      .filter(({ documents }) => !documents.some((one) => one.kind === kind))
      .map(({ tradeName }) => tradeName);
  return (['specification', 'safety data sheet'] as const).flatMap((kind) => {
    const names = without(kind);
    return names.length > 0
      ? [{ part: 'Materials', says: `No ${kind} of the supplier is on file for ${names.join(', ')}.` }]
      : [];
  });
}

function claimGaps({ content: { claims, reports } }: FiledVersion): FileGap[] {
  return claims
    .filter(({ evidence, reportId }) => evidence === '' && !reports.some(({ id }) => id === reportId))
    .map(({ says }) => ({ part: 'Claims', says: `“${says}” has no evidence.` }));
}

/**
 * What a product's file lacks of what Regulation (EC) No 1223/2009, Article 11(2), and its Annex I ask for (from
 * memory). A help for whoever puts it together, no verdict.
 */
export function fileGaps(filed: FiledVersion): FileGap[] {
  const { content, decisions } = filed;
  const { target, statements, market } = content;
  const some = (part: string, missing: boolean, says: string): FileGap[] => (missing ? [{ part, says }] : []);
  const measured = [
    target.appearance,
    target.phLow ?? target.phHigh,
    target.viscosityLow ?? target.viscosityHigh,
  ];
  return [
    ...some(
      'Product',
      market.kind === null,
      'The kind of product is not stated: limits and exposure depend on it.',
    ),
    ...some('Product', standingOf(decisions) === 'recorded', 'Nobody has approved this version.'),
    ...some('Product', standingOf(decisions) === 'withdrawn', 'This version is withdrawn.'),
    ...some('Procedure', content.steps.length === 0, 'The method of manufacture is not described.'),
    ...some(
      'Procedure',
      statements.goodPractice === '',
      'No statement on good manufacturing practice is on file.',
    ),
    ...some(
      'Specification',
      measured.some((value) => value === null || value === ''),
      'The specification of the finished product lacks appearance, pH or viscosity.',
    ),
    ...materialGaps(filed),
    ...reportGaps(filed),
    ...claimGaps(filed),
    ...some('Statements', statements.animalTesting === '', 'Nothing is on file about animal testing.'),
    ...some('Batches', filed.batches === 0, 'No batch of this version is on record.'),
  ];
}
