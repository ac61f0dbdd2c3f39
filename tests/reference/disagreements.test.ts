import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { sampleCorrectionFactor } from '@core/net-contents/us-packages';
import { tolerableError } from '@core/net-contents/tolerable-error';
import { refutasIndex } from '@core/rheology/mixing';
import { arrheniusEnergy } from '@core/stability/arrhenius';
import { shelfLife } from '@core/stability/trend';
import { blendForTarget } from '@core/emulsions/blend-two';
import { daviesHlb } from '@core/emulsions/davies';
import { griffinEster, griffinMass } from '@core/emulsions/griffin';
import { hldNonionic } from '@core/emulsions/hld';
import { undissociatedAmount, undissociatedPercent } from '@core/preservation/undissociated';
import { publishedValues } from './published';

const hlb = z.object({ hlb: z.number() });
const figures = z.record(z.string(), z.number());
const list = z.array(z.number());

/** Published answers that do not follow from their own inputs: ours must equal the recomputed value, not the print. */
const entries = publishedValues(
  'disagreements',
  z.array(
    z.object({
      id: z.string(),
      topic: z.string(),
      inputs: z.record(z.string(), z.unknown()),
      // One figure, several by name, or none where nothing follows.
      exact: z.union([figures, z.number(), z.null()]),
      note: z.string(),
      source: z.string(),
    }),
  ),
);

type Compute = (inputs: Record<string, unknown>) => number;

const pick = (inputs: Record<string, unknown>, name: string): number => z.number().parse(inputs[name]);

/** The reference's short names for groups in this file. */
const GROUP_NAMES: Record<string, string> = {
  estRing: 'ester-sorbitan-ring',
  OHring: 'hydroxyl-sorbitan-ring',
  OH: 'hydroxyl',
  O: 'ether',
  EO: 'oxyethylene',
};

const COMPUTE: Record<string, Compute> = {
  'emulsifier blend': (i) =>
    blendForTarget({
      targetHlb: pick(i, 'targetHLB'),
      lowHlb: hlb.parse(i.low).hlb,
      highHlb: hlb.parse(i.high).hlb,
    }).highPercent,
  'HLB by Davies groups': (i) => {
    const named = Object.entries(figures.parse(i.hydrophilic)).map(([id, count]) => [
      GROUP_NAMES[id] ?? id,
      count,
    ]);
    return daviesHlb({ ...Object.fromEntries(named), carbon: pick(i, 'carbonGroups') }).value;
  },
  'HLB by saponification': (i) => griffinEster(pick(i, 'S'), pick(i, 'A')).value,
  'HLB by mass fraction (20*Mh/M)': (i) => {
    const hydrophile = pick(i, 'eoUnits') * pick(i, 'eoMolarMass');
    return griffinMass(hydrophile, hydrophile + pick(i, 'hydrophobeMolarMass')).value;
  },
  'undissociated fraction': (i) => undissociatedPercent(pick(i, 'pKa'), pick(i, 'pH')).value,
  'undissociated concentration': (i) =>
    undissociatedAmount(pick(i, 'totalPct'), pick(i, 'pKa'), pick(i, 'pH')).value,
  // PACN is the EACN at which HLD is 0 in water at 25 °C: HLD without oil, over K.
  'HLD nonionic PACN': (i) => {
    const system = {
      salinityPercent: 0,
      eacn: 0,
      cc: pick(i, 'Cc'),
      alcoholTerm: 0,
      b: 0.13,
      k: pick(i, 'K'),
      cT: 0.06,
    };
    return hldNonionic(system, pick(i, 'T')).value / system.k;
  },
  'stability shelf life': (i) =>
    shelfLife(list.parse(i.months), list.parse(i.values), pick(i, 'limit'), 0.95, 'decreasing').value,
  'sample correction factor': (i) => sampleCorrectionFactor(pick(i, 'sampleSize')).value,
  'tolerable negative error': (i) => tolerableError(pick(i, 'nominal'), 'g').value,
  'viscosity blending index': (i) => refutasIndex(pick(i, 'viscosity')).value,
  'activation energy': (i) => {
    const rates = list.parse(i.k);
    const points = list
      .parse(i.K)
      .map((kelvin, at) => ({ temperature: kelvin - 273.15, rate: rates[at] ?? 0 }));
    return arrheniusEnergy(points).value;
  },
  'salt as acid': (i) => {
    const [salt = 1, acid = 0] = list.parse(i['molar masses']);
    return acid / salt;
  },
};

/** Of the law, of stock and of solubility: held where those are computed. */
const ELSEWHERE = [
  'daily exposure',
  'margin of safety',
  'moving average',
  'buffer pH',
  'solubility parameter from HLB',
  'allergens',
  'natural origin index',
];

describe('answers that do not follow from their own inputs', () => {
  const here = entries.filter(({ topic }) => !ELSEWHERE.includes(topic));

  it.each(here)('$id: $source', ({ topic, inputs, exact }) => {
    const compute = COMPUTE[topic];
    expect(compute, topic).toBeDefined();
    const wanted = typeof exact === 'number' ? exact : (Object.values(exact ?? {})[0] ?? Number.NaN);
    // As far as the table gives it.
    const decimals = typeof exact === 'number' ? (String(exact).split('.')[1]?.length ?? 0) : 5;
    expect(Math.abs((compute?.(inputs) ?? Number.NaN) - wanted)).toBeLessThanOrEqual(0.51 * 10 ** -decimals);
  });
});
