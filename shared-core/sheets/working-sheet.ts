import type { BenchType } from '../emulsions/bench/bench-state';
import { demandType } from '../emulsions/bench/bench-state';
import type { MaterialLine } from '../emulsions/bench/lines';
import type { BenchReading } from '../emulsions/bench/reading';
import { formatNumber, type Region } from '../locale/numbers';
import { regionText } from '../locale/readable';
import { figureValue } from '../materials/figure';
import { DATA_SHEETS, FIRST_AID, HAZARD_CAUTIONS, NOT_PROOF } from './cautions';
import { cautionBox } from './kit/caution-box';
import type { SheetDefinition, SheetNode } from './kit/definition';
import { contentWidth, sheet, type SheetFrame, type SheetSettings } from './kit/page';
import { cell, figureCell, headed, ruledTable } from './kit/tables';
import { heading, keptTogether, paragraph, remark } from './kit/text';
import { titleBlock } from './kit/title-block';
import { SIZE } from './kit/type-scale';
import { inciWords } from '../materials/words';
import { workingNodes } from './working-steps';
import { findingNodes } from './working-findings';

/** A plot drawn for the sheet, with its words for who cannot see it. */
export interface DrawnPlot {
  svg: string;
  height: number;
  alt: string;
}

export interface WorkingParts {
  title: string;
  emulsionType: BenchType;
  oils: readonly MaterialLine[];
  emulsifiers: readonly MaterialLine[];
  reading: BenchReading;
  /** The HLB scale, and the triangle of three emulsifiers; null where there is none. */
  axis: DrawnPlot | null;
  triangle: DrawnPlot | null;
}

const hlb = (value: number, region: Region): string => formatNumber(value, region, 1);
const level = (value: number, region: Region): string => formatNumber(value, region, { min: 2, max: 4 });

function plotNode(plot: DrawnPlot | null, width: number): SheetNode[] {
  return plot ? [{ svg: plot.svg, fit: [width, plot.height], alt: plot.alt, margin: [0, 4, 0, 4] }] : [];
}

function oilTable({ oils, emulsionType }: WorkingParts, region: Region, width: number): SheetNode {
  const wanted = demandType(emulsionType) === 'o/w' ? 'requiredHlbOw' : 'requiredHlbWo';
  const rows = oils.map(({ material, percent }) => {
    const figure = material.figures[wanted];
    const value = figureValue(figure);
    const spread =
      figure && figure.low !== null && figure.high !== null && figure.high > figure.low
        ? `${hlb(figure.low, region)} to ${hlb(figure.high, region)}`
        : '';
    return [
      cell(`${material.tradeName}\n${inciWords(material)}`),
      figureCell(level(percent, region)),
      figureCell(value === null ? 'none known' : hlb(value, region)),
      cell(spread),
      cell(figure ? figure.source || figure.provenance : '', { fontSize: SIZE.small }),
    ];
  });
  return ruledTable({
    columns: [
      { head: 'Oil phase', share: 27 },
      { head: '% w/w', share: 9, alignment: 'right' },
      { head: 'Required HLB', share: 12, alignment: 'right' },
      { head: 'Sources give', share: 13 },
      { head: 'Source', share: 39 },
    ],
    rows,
    width,
  });
}

function systemTable({ emulsifiers, reading }: WorkingParts, region: Region, width: number): SheetNode {
  const rows = emulsifiers.map(({ material, percent }, index) => {
    const value = figureValue(material.figures.hlb);
    return [
      cell(`${material.tradeName}\n${inciWords(material)}`),
      cell(material.charge ?? 'charge not recorded'),
      figureCell(value === null ? '–' : hlb(value, region)),
      figureCell(formatNumber(reading.shares[index] ?? 0, region, 1)),
      figureCell(level(percent, region)),
    ];
  });
  return ruledTable({
    columns: [
      { head: 'Emulsifier', share: 46 },
      { head: 'Charge', share: 18 },
      { head: 'HLB', share: 10, alignment: 'right' },
      { head: 'Share, %', share: 13, alignment: 'right' },
      { head: '% w/w', share: 13, alignment: 'right' },
    ],
    rows,
    width,
  });
}

function requiredSection(parts: WorkingParts, region: Region, width: number): SheetNode[] {
  const { required } = parts.reading;
  return [
    ...headed(
      'Oil phase and its required HLB',
      ...(parts.oils.length > 0 ? [oilTable(parts, region, width)] : []),
    ),
    ...(required.ok
      ? [
          paragraph(
            `Required HLB for ${demandType(parts.emulsionType)}: ${hlb(required.value.worked.value, region)}`,
            { bold: true },
          ),
          ...workingNodes(required.value.worked, region),
        ]
      : [remark(`${required.refusal.title} ${required.refusal.advice}`)]),
  ];
}

function offeredSection(parts: WorkingParts, region: Region): SheetNode[] {
  const { offered, verdict, pair } = parts.reading;
  if (!offered.ok) return [remark(`${offered.refusal.title} ${offered.refusal.advice}`)];
  const { described, notDescribed } = offered.value;
  return [
    ...(described
      ? [
          paragraph(`Offered HLB: ${hlb(described.value, region)}`, { bold: true }),
          ...workingNodes(described, region),
        ]
      : []),
    ...parts.reading.cautions.map((caution) => remark(regionText(caution, region))),
    ...(parts.reading.usualLevel
      ? [
          paragraph(`Usual level for this oil phase: ${level(parts.reading.usualLevel.value, region)} %`, {
            bold: true,
          }),
          ...workingNodes(parts.reading.usualLevel, region),
        ]
      : []),
    ...notDescribed.map((one) =>
      remark(regionText(`Not described by the mean: ${one.name}, ${one.why}.`, region)),
    ),
    ...(verdict ? [paragraph(regionText(verdict.says, region))] : []),
    ...(pair?.ok
      ? [
          keptTogether(
            paragraph(
              `Ratio for the target: ${level(pair.value.high.percent, region)} % ${pair.value.high.name} with ${level(pair.value.low.percent, region)} % ${pair.value.low.name}`,
              { bold: true },
            ),
            ...workingNodes(pair.value.worked, region),
          ),
        ]
      : []),
    ...(pair && !pair.ok ? [remark(`${pair.refusal.title} ${pair.refusal.advice}`)] : []),
  ];
}

function cautionsOf({ oils, emulsifiers }: WorkingParts): string[] {
  const hazards = new Set([...oils, ...emulsifiers].flatMap((line) => line.material.hazards));
  return [
    ...[...hazards].map((hazard) => HAZARD_CAUTIONS[hazard]),
    ...(hazards.size > 0 ? [FIRST_AID] : []),
    DATA_SHEETS,
    'HLB gives a start, not a formula: make a trial series around it, and test storage of the real product.',
    NOT_PROOF,
  ];
}

/**
 * The hand-out of the bench: the oil phase, the system, each number with its working, the plots, charges, climate and
 * cautions.
 * @param printedAt ISO 8601
 */
export function workingSheet(
  parts: WorkingParts,
  settings: SheetSettings,
  printedAt: string,
): SheetDefinition {
  const region = settings.languageRegion;
  const width = contentWidth(settings.paperSize);
  const { reading } = parts;
  const frame: SheetFrame = {
    kind: 'Emulsion working',
    title: parts.title || 'Emulsifier system',
    number: '',
    settings,
    printedAt,
  };
  const facts = [
    { label: 'Emulsion', value: parts.emulsionType },
    { label: 'Target HLB', value: reading.target ? hlb(reading.target.value, region) : '' },
    { label: 'All emulsifiers', value: `${level(reading.totalPercent, region)} % w/w` },
  ];
  return sheet(frame, [
    ...titleBlock(frame, facts),
    ...requiredSection(parts, region, width),
    ...headed(
      'Emulsifier system',
      ...(parts.emulsifiers.length > 0 ? [systemTable(parts, region, width)] : []),
    ),
    ...plotNode(parts.axis, width),
    ...offeredSection(parts, region),
    ...(parts.triangle
      ? [keptTogether(heading('Where the three meet every demand'), ...plotNode(parts.triangle, width))]
      : []),
    ...findingNodes(reading, region),
    ...cautionBox(cautionsOf(parts), width),
  ]);
}
