import type { Calculated, Given, Result } from '../calculators/calculated';
import type { Region } from '../locale/numbers';
import { readableNumber } from '../locale/readable';
import type { Source } from '../working/working';
import { NOT_PROOF } from './cautions';
import { cautionBox } from './kit/caution-box';
import type { SheetDefinition, SheetNode } from './kit/definition';
import { factList } from './kit/facts';
import { contentWidth, sheet } from './kit/page';
import type { SheetFrame, SheetSettings } from './kit/page';
import { heading, paragraph, remark } from './kit/text';
import { titleBlock } from './kit/title-block';
import { SIZE, SOFT_INK } from './kit/type-scale';
import type { DrawnPlot } from './working-sheet';

const BASIS: Record<Source['basis'], string> = {
  read: '',
  memory: ' (from memory: check before relying on it)',
  'common-practice': '',
  library: ' (from the library)',
  user: '',
};

function givenFacts(given: readonly Given[], region: Region) {
  return given.map(({ label, value, unit }) => ({
    label,
    value:
      `${typeof value === 'number' ? readableNumber(value, region, { min: 0, max: 4 }) : value} ${unit}`.trim(),
  }));
}

function figureOf({ worked, digits }: Result, region: Region): string {
  return `${readableNumber(worked.value, region, digits)} ${worked.unit}`.trim();
}

function stepNodes(result: Result, region: Region): SheetNode[] {
  const { worked } = result;
  return worked.steps.map((step, index) => ({
    margin: [0, 0, 0, 4],
    stack: [
      { text: `${index + 1}. ${step.says}`, fontSize: SIZE.table, color: SOFT_INK },
      {
        fontSize: SIZE.body,
        margin: [12, 1, 0, 0],
        text: [
          { text: `${step.shows} = ` },
          {
            text: `${readableNumber(step.result, region, { min: 0, max: 4 })} ${step.unit}`.trim(),
            bold: true,
          },
        ],
      },
    ],
  }));
}

function resultNodes(result: Result, region: Region): SheetNode[] {
  const sources = result.worked.sources.map((source) => source.text + BASIS[source.basis]);
  return [
    heading(result.label),
    {
      margin: [0, 0, 0, 5],
      text: [
        { text: figureOf(result, region), bold: true, fontSize: SIZE.section },
        { text: result.says ? `   ${result.says}` : '' },
      ],
    },
    ...stepNodes(result, region),
    ...(sources.length ? [remark(`Source: ${sources.join('; ')}`)] : []),
  ];
}

/** Cautions that more than one working has stand once. */
function cautionsOf({ results, notes }: Calculated): string[] {
  return [...new Set([...results.flatMap((result) => result.worked.cautions), ...notes, NOT_PROOF])];
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
    paragraph(`${one.label}: ${one.why}`, { fontSize: SIZE.table }),
  );
  return sheet(frame, [
    ...titleBlock(frame, []),
    heading('What goes in'),
    ...(given ? [given] : []),
    ...withPlot(
      calculated.results.map((result) => resultNodes(result, region)),
      plot,
      width,
    ),
    ...(withheld.length ? [heading('Not computed'), ...withheld] : []),
    ...cautionBox(cautionsOf(calculated), width, 'Before relying on it'),
  ]);
}
