import type { Calculated, Given, Result } from '../calculators/calculated';
import type { Region } from '../locale/numbers';
import { readableNumber, regionText } from '../locale/readable';
import { unitWords } from '../locale/words';
import { NOT_PROOF } from './cautions';
import { cautionBox } from './kit/caution-box';
import type { SheetDefinition, SheetNode } from './kit/definition';
import { factList } from './kit/facts';
import { contentWidth, sheet } from './kit/page';
import type { SheetFrame, SheetSettings } from './kit/page';
import { ruledTable } from './kit/tables';
import { heading, paragraph } from './kit/text';
import { titleBlock } from './kit/title-block';
import { SIZE } from './kit/type-scale';
import type { DrawnPlot } from './working-sheet';
import { sourceNodes, stepNodes } from './working-steps';

function givenFacts(given: readonly Given[], region: Region) {
  return given.map(({ label, value, unit }) => ({
    label,
    value:
      `${typeof value === 'number' ? readableNumber(value, region, { min: 0, max: 4 }) : value} ${unit}`.trim(),
  }));
}

function figureOf({ worked, digits }: Result, region: Region): string {
  const shown = readableNumber(worked.value, region, digits);
  return `${shown} ${unitWords(shown, worked.unit)}`.trim();
}

function resultNodes(result: Result, region: Region): SheetNode[] {
  return [
    heading(result.label),
    {
      margin: [0, 0, 0, 5],
      text: [
        { text: figureOf(result, region), bold: true, fontSize: SIZE.section },
        { text: result.says ? `   ${result.says}` : '' },
      ],
    },
    ...stepNodes(result.worked, region),
    ...sourceNodes(result.worked),
  ];
}

function verdictNodes({ verdicts }: Calculated, region: Region): SheetNode[] {
  return (verdicts ?? []).flatMap(({ label, verdict, why }): SheetNode[] => [
    heading(label),
    { text: verdict, bold: true, fontSize: SIZE.section, margin: [0, 0, 0, 4] },
    ...why.map((reason) => paragraph(regionText(reason, region), { fontSize: SIZE.table })),
  ]);
}

function tableNodes({ tables }: Calculated, region: Region, width: number): SheetNode[] {
  const shown = (cell: string | number): string =>
    typeof cell === 'number' ? readableNumber(cell, region, { min: 0, max: 4 }) : cell;
  return (tables ?? []).flatMap(({ label, head, rows }): SheetNode[] => [
    heading(label),
    ruledTable({
      columns: head.map((title) => ({ head: title, share: 1 })),
      rows: rows.map((row) => row.map((cell) => ({ text: shown(cell), fontSize: SIZE.table }))),
      width,
    }),
  ]);
}

/** Cautions that more than one working has stand once. */
function cautionsOf({ results, notes }: Calculated, region: Region): string[] {
  const said = [...results.flatMap((result) => result.worked.cautions), ...notes, NOT_PROOF];
  return [...new Set(said.map((caution) => regionText(caution, region)))];
}

/** The plot stands right after the figure that it shows, the first. */
function withPlot(results: SheetNode[][], plot: DrawnPlot | null, width: number): SheetNode[] {
  const [first = [], ...rest] = results;
  const drawn: SheetNode[] = plot
    ? [{ svg: plot.svg, fit: [width, plot.height], alt: plot.alt, margin: [0, 4, 0, 4] }]
    : [];
  return [...first, ...drawn, ...rest.flat()];
}

/**
 * A hand-out of one calculation: what went in, each figure with its steps and sources, its plot, and the cautions.
 *
 * @param printedAt ISO 8601
 * @param plot null for a calculation that has none
 */
export function calculationSheet(
  calculated: Calculated,
  settings: SheetSettings,
  printedAt: string,
  plot: DrawnPlot | null = null,
): SheetDefinition {
  const region = settings.languageRegion;
  const width = contentWidth(settings.paperSize);
  const frame: SheetFrame = { kind: 'Working', title: calculated.title, number: '', settings, printedAt };
  const given = factList(givenFacts(calculated.given, region), width, 170);
  const withheld = calculated.withheld.map((one) =>
    paragraph(regionText(`${one.label}: ${one.why}`, region), { fontSize: SIZE.table }),
  );
  return sheet(frame, [
    ...titleBlock(frame, []),
    heading('What goes in'),
    ...(given ? [given] : []),
    ...verdictNodes(calculated, region),
    ...tableNodes(calculated, region, width),
    ...withPlot(
      calculated.results.map((result) => resultNodes(result, region)),
      plot,
      width,
    ),
    ...(withheld.length ? [heading('Not computed'), ...withheld] : []),
    ...cautionBox(cautionsOf(calculated, region), width, 'Before relying on it'),
  ]);
}
