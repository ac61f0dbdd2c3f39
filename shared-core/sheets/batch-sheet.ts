import type { Batch } from '../batches/batch';
import { outcomeWords, type BatchOutcome } from '../batches/outcome';
import { recordUnit } from '../batches/record-unit';
import type { VersionDecision } from '../formulas/decision';
import type { FormulaVersion } from '../formulas/formula';
import { formatDate } from '../locale/dates';
import { withdrawalWords, type Withdrawn } from '../materials/withdrawal';
import { formatMass, formatMassIn, formatReadability } from '../locale/mass';
import { formatNumber, formatPercent } from '../locale/numbers';
import type { Region } from '../locale/numbers';
import { smallLinesNodes } from './batch-small-lines';
import { weighingTables } from './batch-weighing';
import { formulaCautions } from './cautions';
import { withdrawnCaution } from './decision-words';
import { blanks, HAND_ROW, signatureBlock, tickBoxes, writingLines } from './kit/by-hand';
import { cautionBox } from './kit/caution-box';
import type { SheetDefinition, SheetNode } from './kit/definition';
import type { Fact } from './kit/facts';
import { contentWidth, sheet } from './kit/page';
import type { SheetFrame, SheetSettings } from './kit/page';
import { blankCell, cell, headed, ruledTable } from './kit/tables';
import { heading, keptTogether, numberText, paragraph, remark } from './kit/text';
import { titleBlock } from './kit/title-block';
import { benchProcedure } from './procedure';
import { targetFacts } from './target-words';

// What a batch record holds follows ISO 22716:2007, 7.2 (from memory).

function totalWords(batch: Batch, region: Region): string {
  const unit = recordUnit(batch.totalMg);
  return `${formatMassIn(batch.totalMg, unit, region, batch.readabilityMg)} ${unit}`;
}

function sizeFacts(batch: Batch, region: Region): Fact[] {
  const { size } = batch;
  const asked =
    size.by === 'mass'
      ? formatMass(size.massMg, region)
      : `${formatNumber(size.units, region)} × ${formatMass(size.fillMg, region)}`;
  return [
    { label: 'Size asked for', value: asked },
    {
      label: 'Overage',
      value: formatPercent(batch.overagePpm, region, batch.overagePpm % 10_000 ? undefined : 0),
    },
    { label: 'To weigh in all', value: totalWords(batch, region) },
    { label: 'Balance readability', value: formatReadability(batch.readabilityMg, region) },
  ];
}

const BEFORE_STARTING = [
  'Area, vessels and equipment clean and sanitised, last product cleared away',
  'Balance checked; equipment no.',
  'All raw materials released, in date and as on this record',
  'Goggles, gloves and dust mask at hand; eyewash clear',
];

/** What is looked at first, two side by side. */
function beforeStarting(width: number): SheetNode {
  const [first, second, third, fourth] = BEFORE_STARTING.map((check) => [cell(check), blankCell()]);
  const pair = [
    { head: 'Check', share: 33 },
    { head: 'Time, initials', share: 17, byHand: true },
  ];
  return keptTogether(
    heading('Before starting'),
    ruledTable({
      width,
      rowHeight: HAND_ROW,
      columns: [...pair, ...pair],
      rows: [
        [...first!, ...second!],
        [...third!, ...fourth!],
      ],
    }),
  );
}

function inProcessChecks(version: FormulaVersion, region: Region, width: number): SheetNode[] {
  const known = targetFacts(version.content.target, region).filter((fact) => fact.value !== '');
  // A blank row for what the specification does not foresee, more when it says nothing at all.
  const spare = Array.from({ length: known.length > 0 ? 1 : 4 }, () => ({ label: '', value: '' }));
  return headed(
    'In-process checks',
    ruledTable({
      width,
      rowHeight: HAND_ROW,
      columns: [
        { head: 'Check', share: 16 },
        { head: 'Specification', share: 34 },
        { head: 'Result', share: 24, byHand: true },
        { head: 'Within limits?', share: 11, byHand: true },
        { head: 'Time', share: 8, byHand: true },
        { head: 'Initials', share: 8, byHand: true },
      ],
      rows: [...known, ...spare].map((fact) => [
        cell(fact.label),
        cell(fact.value),
        ...Array.from({ length: 4 }, blankCell),
      ]),
    }),
  );
}

function yieldSection(batch: Batch, region: Region, width: number): SheetNode {
  const total = totalWords(batch, region);
  return keptTogether(
    heading('Yield, samples and filling', 0),
    blanks(['Bulk obtained', `Yield, % of ${total} weighed`, 'Units filled', 'Left over or lost'], width),
    blanks(
      ['Bulk container and place', 'Samples taken (no., by)', 'Filled on', 'Equipment cleaned by, date'],
      width,
    ),
  );
}

const DEVIATION_LINES = 3;

/** Deviations with the sign-off below them, so that nobody signs on a page that holds nothing. */
function closingSection(width: number): SheetNode {
  return keptTogether(
    heading('Deviations, their assessment and what was done'),
    remark(
      'Write “none” if there were none. Strike through, initial and date corrections; overwrite nothing.',
    ),
    writingLines(DEVIATION_LINES, width),
    heading('Sign-off and release', 0),
    tickBoxes(['Released', 'Released with remarks', 'On hold', 'Rejected']),
    signatureBlock(['Made by', 'Checked by', 'Released by'], width),
  );
}

/**
 * The record that a batch is made with and that stays in the binder: weighing, procedure, checks, yield,
 * deviations and release, with ruled space for all that is written by hand.
 * @param version the recorded version that the batch makes, what was decided on it, and its materials that are withdrawn by now
 * @param printedAt ISO 8601
 * @param outcome what came of it, once that is told
 */
export function batchSheet(
  batch: Batch,
  version: FormulaVersion & { decisions?: readonly VersionDecision[]; withdrawn?: readonly Withdrawn[] },
  settings: SheetSettings,
  printedAt: string,
  outcome: BatchOutcome | null = null,
): SheetDefinition {
  const region = settings.languageRegion;
  const width = contentWidth(settings.paperSize);
  const { content } = version;
  const frame: SheetFrame = {
    kind: 'Batch record',
    title: content.name,
    number: batch.number,
    settings,
    printedAt,
    lineHeight: 1,
  };
  const formulaName = [content.code, `version ${version.number}`].filter(Boolean).join(', ');
  return sheet(frame, [
    ...titleBlock(frame, [
      { label: 'Batch', value: { ...numberText(batch.number, 12), bold: true } },
      { label: 'Formula', value: numberText(formulaName) },
      { label: 'Planned', value: formatDate(batch.createdAt, region) },
      { label: 'Made on', value: '_________________' },
      ...sizeFacts(batch, region),
    ]),
    ...(outcome
      ? [paragraph(`Finished ${outcomeWords(outcome, batch.totalMg, region)}; recorded by ${outcome.by}.`)]
      : []),
    ...(batch.note ? [paragraph(`Note: ${batch.note}`)] : []),
    ...cautionBox(
      [
        ...withdrawnCaution(version, region),
        ...(version.withdrawn ?? []).map((one) => withdrawalWords(one, printedAt.slice(0, 10), region)),
        ...formulaCautions(content, version.materials),
      ],
      width,
    ),
    beforeStarting(width),
    ...headed('Weighing', ...weighingTables(batch, version, region, width)),
    ...smallLinesNodes(batch, version, region),
    ...(content.steps.length > 0 ? headed('Procedure', benchProcedure(content, region, width)) : []),
    ...inProcessChecks(version, region, width),
    yieldSection(batch, region, width),
    closingSection(width),
  ]);
}
