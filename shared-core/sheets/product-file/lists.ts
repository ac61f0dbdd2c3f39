import { outcomeWords, type BatchOutcome, type MadeBatch } from '../../batches/outcome';
import { reportsOf } from '../../formulas/file-gaps';
import type { FormulaContent } from '../../formulas/formula';
import { formatDate } from '../../locale/dates';
import { formatMass } from '../../locale/mass';
import type { Region } from '../../locale/numbers';
import { capital } from '../../locale/words';
import type { Material } from '../../materials/material';
import { dayWords, documentWords } from '../../materials/words';
import type { SheetNode } from '../kit/definition';
import { cell, figureCell, headed, ruledTable } from '../kit/tables';
import { numberText, paragraph, remark } from '../kit/text';

/** Claims with what bears each out, and what the maker states. */
export function claimsPart({ claims, reports, statements }: FormulaContent, width: number): SheetNode[] {
  const borneOutBy = (reportId: string | null): string =>
    reports.find(({ id }) => id === reportId)?.title ?? '';
  const table = ruledTable({
    width,
    columns: [
      { head: 'Claim', share: 30 },
      { head: 'Evidence', share: 44 },
      { head: 'Report', share: 26 },
    ],
    rows: claims.map(({ says, evidence, reportId }) => [
      cell(says),
      cell(evidence || (borneOutBy(reportId) ? '' : 'none on file')),
      cell(borneOutBy(reportId)),
    ]),
  });
  return [
    ...headed('Claims and their evidence', claims.length > 0 ? table : paragraph('No claim is on record.')),
    ...headed('Good manufacturing practice', paragraph(statements.goodPractice || 'Nothing is stated.')),
    ...headed('Animal testing', paragraph(statements.animalTesting || 'Nothing is stated.')),
  ];
}

/** The reports on file, which stand beside this document as files of their own. */
export function reportsPart(
  { reports }: FormulaContent,
  number: number,
  region: Region,
  width: number,
): SheetNode[] {
  const own = new Set(reportsOf(reports, number));
  if (reports.length === 0) return [paragraph('No report is on file.')];
  return [
    ruledTable({
      width,
      columns: [
        { head: 'Kind', share: 26 },
        { head: 'Title', share: 44 },
        { head: 'Of', share: 30 },
      ],
      rows: reports.map((report) => [
        cell(capital(report.kind)),
        cell([report.title, ...dayWords(report, region)].join(', ')),
        cell(
          report.versionNumber === null
            ? 'the product'
            : `version ${report.versionNumber}${own.has(report) ? '' : ', another than this'}`,
        ),
      ]),
    }),
    remark(
      'The reports are files of their own in the library; saved as a folder, the product’s file holds them.',
    ),
  ];
}

/** The materials with the documents of their suppliers that are on file. */
export function documentsPart(materials: readonly Material[], region: Region, width: number): SheetNode[] {
  return [
    ruledTable({
      width,
      columns: [
        { head: 'Material', share: 36 },
        { head: 'Documents on file', share: 64 },
      ],
      rows: materials.map(({ tradeName, documents }) => [
        cell(tradeName),
        cell(documentWords(documents, region) || 'none'),
      ]),
    }),
  ];
}

function outcomeText(outcome: BatchOutcome, totalMg: number, region: Region): string {
  const told = `${outcomeWords(outcome, totalMg, region)}; recorded by ${outcome.by}.`;
  return outcome.remarks === '' ? told : `${told} ${outcome.remarks}`;
}

function onFile({ note, documents }: MadeBatch, region: Region): string {
  return [note, documents.length > 0 ? `On file: ${documentWords(documents, region)}.` : '']
    .filter(Boolean)
    .join(' ');
}

/** The batches made of the version, each with what came of it and what is on file. */
export function batchesPart(batches: readonly MadeBatch[], region: Region, width: number): SheetNode[] {
  if (batches.length === 0) return [paragraph('No batch of this version is on record.')];
  return [
    ruledTable({
      width,
      columns: [
        { head: 'Batch', share: 12 },
        { head: 'Planned', share: 15 },
        { head: 'Mass', share: 14, alignment: 'right' },
        { head: 'Outcome', share: 33 },
        { head: 'Note and documents', share: 26 },
      ],
      rows: batches.map((made) => [
        numberText(made.number),
        cell(formatDate(made.createdAt, region)),
        figureCell(formatMass(made.totalMg, region, made.readabilityMg)),
        cell(made.outcome ? outcomeText(made.outcome, made.totalMg, region) : 'not recorded yet'),
        cell(onFile(made, region)),
      ]),
    }),
  ];
}
