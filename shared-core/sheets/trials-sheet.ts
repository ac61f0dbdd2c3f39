import type { Trial, TrialSeries } from '../trials/trial-series';
import { trialRows } from '../trials/trial-rows';
import { formatDate } from '../locale/dates';
import { formatMass, formatMassIn, formatReadability } from '../locale/mass';
import { formatNumber, type Region } from '../locale/numbers';
import type { Material } from '../materials/material';
import { DATA_SHEETS, FIRST_AID, HAZARD_CAUTIONS, NOT_PROOF } from './cautions';
import { writingLines } from './kit/by-hand';
import { cautionBox } from './kit/caution-box';
import type { Cell, SheetDefinition } from './kit/definition';
import { contentWidth, sheet, type SheetFrame, type SheetSettings } from './kit/page';
import { cell, figureCell, headed, ruledTable } from './kit/tables';
import { heading, keptTogether, paragraph } from './kit/text';
import { titleBlock } from './kit/title-block';
import { hazardWords } from '../materials/hazards';
import { inciWords } from '../materials/words';

/** What is looked at, and when; common practice, no source. */
const OBSERVED = ['After making', 'After 1 day', 'After 1 week', 'Centrifuge'];

type Materials = Readonly<Record<string, Material | undefined>>;

/** A mass to weigh; what is too little for the balance is told as such, not as nothing. */
function grams(mg: number, readabilityMg: number, region: Region): string {
  if (mg === 0) return `< ${formatMassIn(readabilityMg, 'g', region, readabilityMg)}`;
  return formatMassIn(mg, 'g', region, readabilityMg);
}

/** A material to weigh: its names, and its hazards or that none is recorded. */
function materialText(material: Material): string {
  const hazards = material.hazards.length > 0 ? `▲ ${hazardWords(material)}` : 'no hazards recorded';
  return [material.tradeName, inciWords(material), hazards].join('\n');
}

function headOf(trial: Trial, chosen: boolean): string {
  return chosen ? `${trial.label} (chosen)` : trial.label;
}

function cautionsOf(materials: Materials): string[] {
  const hazards = new Set(Object.values(materials).flatMap((material) => material?.hazards ?? []));
  return [
    ...[...hazards].map((hazard) => HAZARD_CAUTIONS[hazard]),
    ...(hazards.size > 0 ? [FIRST_AID] : []),
    DATA_SHEETS,
    'Hot oil and water phases scald: goggles, gloves, closed shoes; pour slowly, away from you.',
    NOT_PROOF,
  ];
}

/**
 * A trial series on paper: one column a trial with masses to weigh, and room to write what was seen.
 * @param printedAt ISO 8601
 */
export function trialsSheet(
  series: TrialSeries,
  materials: Materials,
  settings: SheetSettings,
  printedAt: string,
): SheetDefinition {
  const region = settings.languageRegion;
  const orientation = series.trials.length > 4 ? 'landscape' : 'portrait';
  const width = contentWidth(settings.paperSize, orientation);
  const frame: SheetFrame = {
    kind: 'Trial series',
    title: series.title,
    number: '',
    settings,
    printedAt,
    orientation,
  };
  const share = 64 / series.trials.length;
  const columns = (first: string, byHand: boolean) => [
    { head: first, share: 36 },
    ...series.trials.map((trial, index) => ({
      head: headOf(trial, index === series.chosen),
      share,
      alignment: byHand ? ('left' as const) : ('right' as const),
      byHand,
    })),
  ];
  const weighing = trialRows(series).map(({ materialId, masses }): Cell[] => {
    const material = materials[materialId];
    return [
      cell(material ? materialText(material) : 'No longer in the library'),
      ...masses.map((mg) => figureCell(mg === null ? '–' : grams(mg, series.readabilityMg, region))),
    ];
  });
  const seen = OBSERVED.map((what): Cell[] => [cell(what), ...series.trials.map(() => cell(''))]);
  const results = series.trials.filter((trial) => trial.result);
  return sheet(frame, [
    ...titleBlock(frame, [
      { label: 'Planned', value: formatDate(series.createdAt, region) },
      { label: 'Each batch', value: formatMass(series.batchMg, region) },
      { label: 'Balance readability', value: formatReadability(series.readabilityMg, region) },
      {
        label: 'Round HLB',
        value: series.targetHlb === null ? '' : formatNumber(series.targetHlb, region, 1),
      },
    ]),
    ...headed('To weigh, g', ruledTable({ columns: columns('Material', false), rows: weighing, width })),
    ...headed(
      'Observations',
      ruledTable({ columns: columns('When', true), rows: seen, width, rowHeight: 40 }),
    ),
    ...results.flatMap((trial) => [paragraph(trial.label, { bold: true }), paragraph(trial.result)]),
    ...(series.notes ? [heading('Notes'), paragraph(series.notes)] : []),
    keptTogether(heading('Verdict'), writingLines(3, width)),
    ...cautionBox(cautionsOf(materials), width),
  ]);
}
