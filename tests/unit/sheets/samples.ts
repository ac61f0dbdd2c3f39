import { blankProductFile } from '@core/formulas/product-file';
import { blankMarket } from '@core/products/market';
import { batchLines } from '@core/batches/plan-batch';
import type { Batch } from '@core/batches/batch';
import { blankTarget } from '@core/formulas/formula';
import type { FormulaContent, FormulaLine, FormulaVersion, ProcedureStep } from '@core/formulas/formula';
import type { Material } from '@core/materials/material';
import { settings } from '@core/settings/settings';
import type { Settings } from '@core/settings/settings';
import {
  AT,
  idOf,
  WATER,
  GLYCERIN,
  GUM,
  WAX,
  SOAP,
  OIL,
  ESTER,
  FATTY,
  VITAMIN,
  PRESERVATIVE,
  SCENT,
  ACID,
  MATERIALS,
} from './sample-materials';

/** An invented maker with invented trade names over real INCI names. */
export const MAKER: Settings = settings.parse({
  makerName: 'Marrow & Thyme Stillroom',
  makerAddress: '4 Weir Lane\nLower Hatherby HB3 9QT',
  recordedBy: 'E. Marlowe',
});

let lines = 0;
export function sampleLine(material: Material, percent: number | 'q.s.', note = ''): FormulaLine {
  lines += 1;
  const ppm = percent === 'q.s.' ? 0 : Math.round(percent * 10_000);
  return { id: idOf(5000 + lines), materialId: material.id, ppm, toHundred: percent === 'q.s.', note };
}

let steps = 0;
export function sampleStep(
  phaseIds: string[],
  instruction: string,
  more: Partial<ProcedureStep> = {},
): ProcedureStep {
  steps += 1;
  const blank = { temperatureC: null, speedRpm: null, minutes: null, lookFor: '', caution: '' };
  return { ...blank, id: idOf(8000 + steps), phaseIds, instruction, ...more };
}

const [A, B, C] = [idOf(7001), idOf(7002), idOf(7003)];

/** A twelve-line o/w cream in three phases. */
export const CREAM: FormulaContent = {
  code: 'F-0012',
  name: 'Almond day cream',
  productType: 'o/w emulsion',
  use: 'leave-on',
  market: blankMarket(),
  purpose: 'A light cream for normal skin; the first emulsion of the spring course.',
  phases: [
    {
      id: A,
      title: 'Water phase',
      temperatureC: 75,
      lines: [
        sampleLine(WATER, 'q.s.'),
        sampleLine(GLYCERIN, 4),
        sampleLine(GUM, 0.25, 'wet out in the glycerol'),
      ],
    },
    {
      id: B,
      title: 'Oil phase',
      temperatureC: 75,
      lines: [
        sampleLine(WAX, 5),
        sampleLine(SOAP, 1.5),
        sampleLine(OIL, 12),
        sampleLine(ESTER, 4),
        sampleLine(FATTY, 2),
        sampleLine(VITAMIN, 0.5),
      ],
    },
    {
      id: C,
      title: 'Cool-down phase',
      temperatureC: 40,
      lines: [sampleLine(PRESERVATIVE, 1), sampleLine(SCENT, 0.3), sampleLine(ACID, 0.125, 'to pH 5.5')],
    },
  ],
  steps: [
    sampleStep([A], 'Wet the gum with the glycerol, add the water with stirring and heat.', {
      temperatureC: 75,
      speedRpm: 400,
      minutes: 20,
      lookFor: 'no lumps',
      caution: 'Gum dust: weigh without draughts.',
    }),
    sampleStep([B], 'Melt the oil phase together.', {
      temperatureC: 75,
      speedRpm: 150,
      lookFor: 'clear melt',
    }),
    sampleStep([A, B], 'Pour B into A and homogenise.', {
      temperatureC: 72,
      speedRpm: 3500,
      minutes: 4,
      caution: 'Both phases scald: goggles and gloves.',
    }),
    sampleStep([], 'Cool with slow stirring.', { temperatureC: 40, speedRpm: 120, minutes: 30 }),
    sampleStep([C], 'Add phase C one line after another.', { temperatureC: 40, speedRpm: 200, minutes: 10 }),
    sampleStep([], 'Check pH, make up the water lost, fill.', { lookFor: 'smooth, glossy' }),
  ],
  target: {
    ...blankTarget(),
    appearance: 'Glossy cream',
    odour: 'Of hedgerow',
    colour: 'White',
    phLow: 5.2,
    phHigh: 5.8,
    viscosityLow: 18_000,
    viscosityHigh: 30_000,
    viscosityMethod: 'rotational, spindle 6, 20 rpm, 25 °C',
    densityLow: 0.95,
    densityHigh: 0.99,
    microbiology: 'Under 100 CFU/g',
  },
  accepted: [],
  ...blankProductFile(),
  notes: 'Viscosity still grows for a day. Fill at 30 °C.',
};

export const CREAM_VERSION: FormulaVersion = {
  id: idOf(9001),
  formulaId: idOf(9000),
  number: 3,
  recordedAt: '2026-02-20T09:00:00.000Z',
  recordedBy: 'E. Marlowe',
  reason: 'Less fragrance',
  content: CREAM,
  materials: MATERIALS,
};

export function sampleBatch(version: FormulaVersion = CREAM_VERSION, massMg = 2_500_000): Batch {
  const plan = { size: { by: 'mass' as const, massMg }, overagePpm: 20_000, readabilityMg: 100 };
  const { totalMg, lines: planned } = batchLines(version.content, plan);
  return {
    ...plan,
    versionId: version.id,
    note: 'For the Thursday class; keep 200 g back for the stability study.',
    id: idOf(9100),
    number: 'B-0041',
    createdAt: AT,
    totalMg,
    lines: planned,
  };
}

/** A formula of many lines, for the bench and for page breaks. */
export function longVersion(count: number): FormulaVersion {
  const all = Object.values(MATERIALS).filter((one) => one !== WATER);
  const each = Array.from({ length: count - 1 }, (_, index) => all[index % all.length] ?? GLYCERIN);
  const phases = CREAM.phases.map((phase, at) => ({
    ...phase,
    lines: [
      ...(at === 0 ? [sampleLine(WATER, 'q.s.')] : []),
      ...each.filter((_, index) => index % 3 === at).map((one) => sampleLine(one, 1.5)),
    ],
  }));
  return { ...CREAM_VERSION, content: { ...CREAM, phases } };
}
