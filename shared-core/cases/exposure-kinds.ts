import { z } from 'zod';
import {
  aggregateExposure,
  marginOfSafety,
  maxConcentrationForMargin,
  productExposure,
  systemicExposureDose,
  thresholdDose,
  type Dose,
} from '../exposure/exposure';
import { naturalOriginContent, naturalOriginIndex } from '../natural-origin/natural-origin';
import { number } from './input-shapes';
import { kind, type Kind } from './kind';

const or = (value: number) => number.nullish().transform((given) => given ?? value);
const list = 'must be a list';

const used = {
  amountGramsPerDay: number,
  bodyWeight: number,
  retention: or(1),
  concentrationPercent: number,
  absorptionPercent: number,
};
const byArea = { absorbedPerArea: number, area: number, applicationsPerDay: number, bodyWeight: number };
const point = { pod: number, oralBioavailabilityPercent: or(100) };

type Used = { amountGramsPerDay: number; bodyWeight: number; retention: number };
const useOf = ({ amountGramsPerDay, bodyWeight, retention }: Used): Used => ({
  amountGramsPerDay,
  bodyWeight,
  retention,
});

function doseOf(i: Used & { concentrationPercent: number; absorptionPercent: number }): Dose {
  const { concentrationPercent, absorptionPercent } = i;
  return { use: useOf(i), concentrationPercent, absorptionPercent };
}

/** Exposure and natural origin, each through the function that the screens use. */
export const EXPOSURE_KINDS: Readonly<Record<string, Kind>> = {
  'product-exposure': kind(
    z.object({ amount: number, retention: number }),
    (i) => productExposure(i.amount, i.retention).value,
  ),
  'aggregate-exposure': kind(
    z.object({ exposures: z.array(number, list) }),
    (i) => aggregateExposure(i.exposures).value,
  ),
  sed: kind(z.object(used), (i) => systemicExposureDose(doseOf(i)).value),
  'margin-of-safety': kind(
    z.union(
      [z.object({ ...point, ...byArea }), z.object({ ...point, ...used })],
      'give the inputs of “sed”, or “absorbedPerArea” with “area”, “applicationsPerDay” and “bodyWeight”',
    ),
    (i) => marginOfSafety(i, 'absorbedPerArea' in i ? i : doseOf(i)).value,
  ),
  'max-concentration-for-mos': kind(
    z.object({
      ...point,
      amountGramsPerDay: number,
      bodyWeight: number,
      retention: or(1),
      absorptionPercent: number,
      mos: number,
    }),
    (i) => maxConcentrationForMargin(i, useOf(i), i.absorptionPercent, i.mos).value,
  ),
  'ttc-dose': kind(
    z.object({ ttcPerKg: number, bodyWeight: number }),
    (i) => thresholdDose(i.ttcPerKg, i.bodyWeight).value,
  ),
  'natural-origin-index': kind(
    z.object({ naturalMass: number, totalMass: number }),
    (i) => naturalOriginIndex(i.naturalMass, i.totalMass).value,
  ),
  'natural-origin-content': kind(
    z.object({
      lines: z.array(
        z.object({
          percent: number,
          index: number,
          formulationWater: z
            .boolean('must be true or false')
            .nullish()
            .transform((given) => given ?? false),
        }),
        list,
      ),
      countFormulationWater: z.boolean('must be true or false'),
    }),
    (i) => naturalOriginContent(i.lines, i.countFormulationWater).value,
  ),
};
