import type { MadeBatch } from '../../batches/outcome';
import { fileGaps, type FileGap } from '../../formulas/file-gaps';
import { formulaLines } from '../../formulas/shares';
import { allergenRuleOn } from '../../labelling/allergens';
import { labelFormsOf } from '../../labelling/forms';
import { LABEL_FORM_NAMES } from '../../labelling/substance-names';
import { formatDate } from '../../locale/dates';
import { capital } from '../../locale/words';
import type { Material } from '../../materials/material';
import { decisionFacts, withdrawnCaution } from '../decision-words';
import { neverMade } from '../cautions';
import { exposureSheet } from '../exposure-sheet';
import { formulaSheet, type PrintedFormula } from '../formula-sheet';
import { cautionBox } from '../kit/caution-box';
import type { SheetDefinition, SheetNode } from '../kit/definition';
import { contentWidth, sheet, type SheetFrame, type SheetSettings } from '../kit/page';
import { cell, figureCell, headed, ruledTable } from '../kit/tables';
import { numberText, paragraph, remark } from '../kit/text';
import { titleBlock } from '../kit/title-block';
import { SIZE } from '../kit/type-scale';
import { labelSheet } from '../label-sheet';
import { materialSheet } from '../material-sheet';
import type { SheetPhoto } from '../photo';
import { FILE_PART_TITLES, type FilePart } from './file-parts';
import { batchesPart, claimsPart, documentsPart, reportsPart } from './lists';
import { specificationPart } from './specification-part';

/** One version with all that its file is made of. */
export interface ProductFile {
  /** A recorded version; claims, reports and statements as the formula keeps them now. */
  formula: PrintedFormula & { version: NonNullable<PrintedFormula['version']> };
  batches: readonly MadeBatch[];
  /** By the material's id. */
  photos: Readonly<Record<string, SheetPhoto | null>>;
}

/** A part of the file: its content begins on a page of its own, and stands in the outline. */
interface Part {
  id: string;
  title: string;
  content: SheetNode[];
  /** The part that it stands under in the outline. */
  under?: string;
}

/** The materials of a version, each once, in the order of its lines. */
export function filedMaterials({ content, materials }: PrintedFormula): Material[] {
  const ids = new Set(formulaLines(content).map(({ materialId }) => materialId));
  return [...ids].flatMap((id) => materials[id] ?? []);
}

export function gapsOf({ formula, batches }: ProductFile): FileGap[] {
  const { content, materials, version } = formula;
  return fileGaps({
    ...{ content, materials, number: version.number, batches: batches.length },
    decisions: version.decisions ?? [],
  });
}

function materialParts(file: ProductFile, settings: SheetSettings, printedAt: string): Part[] {
  return filedMaterials(file.formula).map((material, at) => ({
    id: `material-${at}`,
    under: 'materials',
    title: material.tradeName,
    content: materialSheet(material, settings, printedAt, { photo: file.photos[material.id] }).content,
  }));
}

/** The lists of the file that are no sheet elsewhere. */
export function partContent(part: FilePart, file: ProductFile, settings: SheetSettings): SheetNode[] {
  const { formula, batches } = file;
  const region = settings.languageRegion;
  const width = contentWidth(settings.paperSize);
  switch (part) {
    case 'specification':
      return specificationPart(formula.content, region, width);
    case 'claims':
      return claimsPart(formula.content, width);
    case 'reports':
      return reportsPart(formula.content, formula.version.number, region, width);
    case 'batches':
      return batchesPart(batches, region, width);
  }
}

/** The label, once for each form that the regions ask for in which it is sold. */
function labelParts({ formula }: ProductFile, settings: SheetSettings, printedAt: string): Part[] {
  const allergens = allergenRuleOn(printedAt.slice(0, 10));
  const forms = labelFormsOf(formula.content.market);
  return forms.map((form, at) => ({
    id: at === 0 ? 'label' : `label-${form}`,
    title: forms.length === 1 ? 'Label and law' : `Label and law, ${LABEL_FORM_NAMES[form]}`,
    content: labelSheet(formula, { form, allergens }, settings, printedAt).content,
  }));
}

function partsOf(file: ProductFile, settings: SheetSettings, printedAt: string): Part[] {
  const { formula } = file;
  const region = settings.languageRegion;
  const width = contentWidth(settings.paperSize);
  const listed = (part: FilePart): Part => ({
    id: part,
    title: FILE_PART_TITLES[part],
    content: partContent(part, file, settings),
  });
  const options = { forSharing: false, tradeNames: true };
  return [
    {
      id: 'formula',
      title: 'Formula and procedure',
      content: formulaSheet(formula, options, settings, printedAt).content,
    },
    listed('specification'),
    ...labelParts(file, settings, printedAt),
    {
      id: 'exposure',
      title: 'Exposure and natural origin',
      content: exposureSheet(formula, settings, printedAt).content,
    },
    listed('claims'),
    listed('reports'),
    listed('batches'),
    {
      id: 'materials',
      title: 'Raw materials',
      content: documentsPart(filedMaterials(formula), region, width),
    },
    ...materialParts(file, settings, printedAt),
  ];
}

/** The head of a part, on a page of its own, with its place in the outline. */
function partHead({ id, title, under }: Part): SheetNode {
  return {
    ...{ text: title, headlineLevel: under ? 2 : 1, fontSize: under ? SIZE.section : SIZE.title, bold: true },
    ...{ id, outline: true, outlineText: title, outlineExpanded: false, margin: [0, 0, 0, 8] },
    ...(under ? { outlineParentId: under } : {}),
    pageBreak: 'before',
  };
}

function contentsTable(parts: readonly Part[], width: number): SheetNode {
  return ruledTable({
    width,
    columns: [
      { head: 'Part', share: 84 },
      { head: 'Page', share: 16, alignment: 'right' },
    ],
    rows: parts.map(({ id, title, under }) => [
      cell(under ? `– ${title}` : title),
      // The printer puts the number of the page in its place.
      { ...figureCell('0'), pageReference: id },
    ]),
  });
}

function gapsSection(gaps: readonly FileGap[], width: number): SheetNode[] {
  if (gaps.length === 0)
    return headed(
      'What is missing',
      paragraph(
        'Nothing that this file looks for. Whether that is enough is for a qualified assessor to decide.',
      ),
    );
  return headed(
    'What is missing',
    ruledTable({
      width,
      columns: [
        { head: 'Part', share: 20 },
        { head: 'What', share: 80 },
      ],
      rows: gaps.map(({ part, says }) => [cell(part), cell(says)]),
    }),
  );
}

/**
 * The whole file of one version as one document: contents with the gaps named, formula, procedure, specification, label,
 * exposure, claims, reports, batches, and the specifications of its materials.
 * @param printedAt ISO 8601
 */
export function productFileSheet(
  file: ProductFile,
  settings: SheetSettings,
  printedAt: string,
): SheetDefinition {
  const { content, version } = file.formula;
  const region = settings.languageRegion;
  const width = contentWidth(settings.paperSize);
  const frame: SheetFrame = {
    kind: 'Product file',
    title: content.name,
    number: [content.code, `version ${version.number}`].filter(Boolean).join(', '),
    settings,
    printedAt,
  };
  const parts = partsOf(file, settings, printedAt);
  return sheet(frame, [
    ...titleBlock(
      frame,
      [
        { label: 'Code', value: content.code ? numberText(content.code) : '' },
        { label: 'Version', value: String(version.number) },
        { label: 'Recorded', value: formatDate(version.recordedAt, region) },
        ...decisionFacts(version, region),
        { label: 'Kind', value: capital(content.market.kind ?? 'not said') },
        { label: 'Claims and reports', value: `as kept on ${formatDate(printedAt, region)}` },
      ],
      content.purpose,
    ),
    ...cautionBox([...withdrawnCaution(version, region), ...neverMade(content)], width),
    ...gapsSection(gapsOf(file), width),
    ...headed('Contents', contentsTable(parts, width)),
    remark(
      'The parts that Regulation (EC) No 1223/2009, Article 11, asks for, as far as the library holds them (not verified). The product safety report is a qualified assessor’s; keep this file ten years after the last batch.',
    ),
    ...parts.flatMap((part) => [partHead(part), ...part.content]),
  ]);
}
