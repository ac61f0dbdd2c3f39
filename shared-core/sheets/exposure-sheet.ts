import { basisOf, exposuresOf, type SubstanceExposure } from '../exposure/in-formula';
import { shownMargin } from '../exposure/shown-margin';
import { GUIDANCE } from '../exposure/tables';
import { dosedLines, lawOfFormula } from '../limits/in-formula';
import { NO_LAW } from '../limits/law';
import { formatNumber, type Region } from '../locale/numbers';
import { regionText } from '../locale/readable';
import { capital, joined } from '../locale/words';
import { naturalOriginOf, type NaturalOrigin } from '../natural-origin/in-formula';
import { substanceIndex } from '../substances/substance-index';
import { neverMade } from './cautions';
import { decisionFacts, withdrawnCaution } from './decision-words';
import type { PrintedFormula } from './formula-sheet';
import { cautionBox } from './kit/caution-box';
import type { SheetDefinition, SheetNode } from './kit/definition';
import { onDecimal } from './kit/on-decimal';
import { contentWidth, sheet, type SheetFrame, type SheetSettings } from './kit/page';
import { headed, ruledTable } from './kit/tables';
import { numberText, paragraph, remark } from './kit/text';
import { titleBlock } from './kit/title-block';
import { SIZE } from './kit/type-scale';

const cell = (text: string): SheetNode => ({ text, fontSize: SIZE.table });
const right = (text: string): SheetNode => ({ text, fontSize: SIZE.table, alignment: 'right' });
const figures = (value: number, region: Region): string =>
  formatNumber(Number(value.toPrecision(3)), region, { min: 0, max: 8 });

/** What is remarked of one substance is mostly remarked of many: each remark stands once, below, by its letter. */
function remarksOf(all: readonly SubstanceExposure[]): Map<string, string> {
  const remarks = [...new Set(all.flatMap(({ cautions }) => cautions))];
  return new Map(remarks.map((says, at) => [says, String.fromCodePoint(0x61 + at)]));
}

interface ExposureColumn {
  head: string;
  share: number;
  alignment?: 'right';
  text(one: SubstanceExposure): string;
}

/** What can be told of each substance; a column that stands empty for all of them is left out. */
function exposureColumns(
  all: readonly SubstanceExposure[],
  remarks: ReadonlyMap<string, string>,
  region: Region,
): ExposureColumn[] {
  const number = (head: string, share: number, text: (one: SubstanceExposure) => string): ExposureColumn => ({
    head,
    share,
    alignment: 'right',
    text,
  });
  const margin = (value: number | undefined): string =>
    value === undefined ? '' : formatNumber(shownMargin(value), region, { min: 0, max: 1 });
  const columns: ExposureColumn[] = [
    { head: 'Substance', share: 24, text: ({ substance }) => substance.name },
    number('%', 9, ({ percent }) => formatNumber(percent, region, { min: 0, max: 4 })),
    number('Dose, mg/kg per day', 12, ({ dose }) => figures(dose.value, region)),
    number('Point of departure', 11, ({ substance: { pod } }) => (pod === null ? '' : figures(pod, region))),
    number('Margin', 9, (one) => margin(one.margin?.value)),
    number('In all products', 10, ({ aggregate }) => margin(aggregate?.margin?.value)),
    { head: 'Source', share: 17, text: ({ substance }) => substance.safetySource },
    {
      head: 'Notes',
      share: 8,
      text: ({ cautions }) => cautions.map((says) => remarks.get(says) ?? says).join(', '),
    },
  ];
  return columns.filter(({ text }) => all.some((one) => text(one) !== ''));
}

function exposureTable(all: readonly SubstanceExposure[], region: Region, width: number): SheetNode[] {
  const remarks = remarksOf(all);
  const columns = exposureColumns(all, remarks, region);
  const cells = columns.map(({ text, alignment }) =>
    alignment ? onDecimal(all.map(text), region) : all.map((one) => cell(text(one))),
  );
  const table = ruledTable({
    width,
    columns: columns.map(({ head, share, alignment }) => ({ head, share, alignment })),
    rows: all.map((_, row) => cells.map((column) => column[row] ?? cell(''))),
  });
  const notes = [...remarks].map(([says, letter]) => remark(`${letter}: ${regionText(says, region)}`));
  const none = all.every(({ substance: { pod } }) => pod === null)
    ? [remark('No point of departure is recorded for any of them, so no margin of safety is given.')]
    : [];
  return [table, ...none, ...notes];
}

function ends(range: NaturalOrigin['withWater'], region: Region): string {
  if (!range) return 'nothing is left';
  const [low, high] = [range.low.value, range.high.value].map((value) =>
    formatNumber(value, region, { min: 0, max: 1 }),
  );
  return low === high ? `${low}\u00a0%` : `${low} to ${high}\u00a0%`;
}

function originTable({ lines }: NaturalOrigin, region: Region, width: number): SheetNode {
  const shares = onDecimal(
    lines.map(({ percent }) => formatNumber(percent, region, { min: 0, max: 4 })),
    region,
  );
  return ruledTable({
    width,
    columns: [
      { head: 'Material', share: 46 },
      { head: '%', share: 14, alignment: 'right' },
      { head: 'Index', share: 16, alignment: 'right' },
      { head: 'How known', share: 24 },
    ],
    rows: lines.map(({ material, low, high, how }, row) => [
      cell(material.tradeName),
      shares[row] ?? cell(''),
      right(
        [...new Set([low, high])]
          .map((value) => formatNumber(value, region, { min: 0, max: 3 }))
          .join(' to '),
      ),
      cell(how),
    ]),
  });
}

/** Exposure and natural origin of a formula on paper, for the safety assessor. @param printedAt ISO 8601 */
export function exposureSheet(
  formula: PrintedFormula,
  settings: SheetSettings,
  printedAt: string,
): SheetDefinition {
  const region = settings.languageRegion;
  const width = contentWidth(settings.paperSize);
  const { content, materials, version, law = NO_LAW } = formula;
  const find = (id: string) => materials[id];
  const frame: SheetFrame = {
    kind: 'Exposure and natural origin',
    title: content.name,
    number: [content.code, version ? `version ${version.number}` : 'draft'].filter(Boolean).join(', '),
    settings,
    printedAt,
  };
  const basis = basisOf(content.market);
  const { contents } = lawOfFormula(content, find, law, printedAt.slice(0, 10));
  const origin = naturalOriginOf(dosedLines(content, find), substanceIndex(law.substances));
  const all = basis ? exposuresOf(contents, basis) : [];
  return sheet(frame, [
    ...titleBlock(
      frame,
      [
        { label: 'Code', value: content.code ? numberText(content.code) : '' },
        { label: 'Version', value: version ? String(version.number) : 'Draft, not recorded' },
        ...decisionFacts(version, region),
        { label: 'Kind', value: capital(content.market.kind ?? 'not stated') },
        { label: 'Use', value: capital(content.use) },
        { label: 'For', value: capital(joined(content.market.users)) },
        { label: 'Where', value: capital(joined(content.market.sites)) },
      ],
      content.purpose,
    ),
    ...cautionBox([...withdrawnCaution(version, region), ...neverMade(content)], width),
    ...headed(
      'Systemic exposure and margin of safety',
      paragraph(
        basis
          ? regionText(`${basis.says}; adult of ${basis.bodyWeight} kg. ${GUIDANCE.text}.`, region)
          : 'The tables of daily amounts do not know this kind of product, or none is stated.',
      ),
      ...(all.length > 0 ? exposureTable(all, region, width) : []),
      remark('This is not a safety assessment: a qualified safety assessor decides.'),
    ),
    ...headed(
      'Natural origin by ISO 16128',
      paragraph(
        `With formulation water ${ends(origin.withWater, region)}; without it ${ends(origin.withoutWater, region)}.`,
        { bold: true },
      ),
      ...(origin.lines.length > 0 ? [originTable(origin, region, width)] : []),
      remark(
        'The standard gives figures, no claims. Where no index is recorded, the recorded origin gives a range.',
      ),
    ),
  ]);
}
