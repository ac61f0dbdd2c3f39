import { badInput, between, finiteResult, nonNegative, positive } from '../working/inputs';
import { oneStep, worked } from '../working/one-step';
import { show } from '../working/show';
import type { Worked, WorkingStep } from '../working/working';
import { GUIDANCE } from './tables';

const PER_KG = 'mg/kg bw/day';

/** Daily exposure to a product: amount × retention. @returns in the amount's unit. Source: notes of guidance, tables 3A and 3B. */
export function productExposure(amount: number, retention: number): Worked {
  return oneStep(
    {
      says: 'daily exposure to the product: amount × retention factor',
      shows: `${show(nonNegative(amount, 'The amount'))} × ${show(between(retention, 0, 1, 'The retention'))}`,
      result: amount * retention,
      unit: '',
    },
    [GUIDANCE],
  );
}

/** Exposures of several products together. @returns in their unit @throws Problem `invalid-input`, also for no product */
export function aggregateExposure(exposures: readonly number[]): Worked {
  if (exposures.length === 0)
    throw badInput('There is no product to sum.', 'Enter the exposure to at least one.', 'exposures');
  return oneStep(
    {
      says: 'aggregate exposure: the exposures of all products summed',
      shows: exposures.map((one) => show(nonNegative(one, 'An exposure'))).join(' + '),
      result: exposures.reduce((sum, one) => sum + one, 0),
      unit: '',
    },
    [GUIDANCE],
  );
}

/** How a product is used: g a day with body weight in kg and the share that stays, or the printed mg/kg a day. */
export type Use = { amountGramsPerDay: number; bodyWeight: number; retention: number } | { perKg: number };

/** A dose through the skin: by the share absorbed, or by what is absorbed per area. */
export type Dose =
  | { use: Use; concentrationPercent: number; absorptionPercent: number }
  | { absorbedPerArea: number; area: number; applicationsPerDay: number; bodyWeight: number };

function exposureStep(use: Use): WorkingStep[] {
  if ('perKg' in use) return [];
  const { amountGramsPerDay, bodyWeight, retention } = use;
  positive(bodyWeight, 'The body weight');
  return [
    {
      says: 'relative daily exposure: amount × retention factor / body weight',
      shows: `${show(nonNegative(amountGramsPerDay, 'The amount'))} × 1000 × ${show(between(retention, 0, 1, 'The retention'))} / ${show(bodyWeight)}`,
      result: (amountGramsPerDay * 1000 * retention) / bodyWeight,
      unit: PER_KG,
    },
  ];
}

/**
 * Systemic exposure dose: exposure × concentration × absorption, or what is absorbed per area × area × applications
 * a day / body weight (µg/cm², cm²).
 *
 * @returns mg per kg body weight a day
 * @throws Problem `invalid-input` for shares outside 0 to 100 % and a weight that is not above zero
 * Source: SCCS Notes of Guidance, 12th revision (2023).
 */
export function systemicExposureDose(dose: Dose): Worked {
  if ('absorbedPerArea' in dose) {
    const { absorbedPerArea, area, applicationsPerDay, bodyWeight } = dose;
    return oneStep(
      {
        says: 'systemic exposure dose: absorbed per area × area × applications per day × 0.001 / body weight',
        shows: `${show(nonNegative(absorbedPerArea, 'The amount absorbed'))} × ${show(positive(area, 'The area'))} × ${show(positive(applicationsPerDay, 'Applications a day'))} × 0.001 / ${show(positive(bodyWeight, 'The body weight'))}`,
        result: (absorbedPerArea * area * applicationsPerDay * 0.001) / bodyWeight,
        unit: PER_KG,
      },
      [GUIDANCE],
    );
  }
  const { use, concentrationPercent, absorptionPercent } = dose;
  const steps = exposureStep(use);
  const exposure = 'perKg' in use ? nonNegative(use.perKg, 'The exposure') : (steps[0]?.result ?? 0);
  between(concentrationPercent, 0, 100, 'The concentration', '%');
  between(absorptionPercent, 0, 100, 'The absorption', '%');
  return worked(
    [
      ...steps,
      {
        says: 'systemic exposure dose: exposure × concentration × absorption',
        shows: `${show(exposure)} × ${show(concentrationPercent)} / 100 × ${show(absorptionPercent)} / 100`,
        result: (exposure * concentrationPercent * absorptionPercent) / 10_000,
        unit: PER_KG,
      },
    ],
    [GUIDANCE],
  );
}

/** A point of departure in mg/kg body weight a day, and how much of it is taken up when swallowed. */
export interface PointOfDeparture {
  pod: number;
  oralBioavailabilityPercent: number;
}

/** The systemic point of departure, as a step. */
function systemicPod({ pod, oralBioavailabilityPercent }: PointOfDeparture): WorkingStep {
  positive(pod, 'The point of departure');
  between(oralBioavailabilityPercent, 0, 100, 'The oral bioavailability', '%');
  return {
    says: 'systemic point of departure: point of departure × oral bioavailability',
    shows: `${show(pod)} × ${show(oralBioavailabilityPercent)} / 100`,
    result: (pod * oralBioavailabilityPercent) / 100,
    unit: PER_KG,
  };
}

/**
 * Margin of safety: systemic point of departure over systemic exposure dose.
 * @throws Problem `invalid-input`, also where nothing is absorbed
 * Source: SCCS Notes of Guidance, 12th revision (2023).
 */
export function marginOfSafety(from: PointOfDeparture, dose: Dose): Worked {
  const sed = systemicExposureDose(dose);
  positive(sed.value, 'The systemic exposure dose');
  const pod = systemicPod(from);
  return worked(
    [
      ...sed.steps,
      pod,
      {
        says: 'margin of safety: systemic point of departure / systemic exposure dose',
        shows: `${show(pod.result)} / ${show(sed.value)}`,
        result: finiteResult(pod.result / sed.value, 'The margin of safety'),
        unit: '',
      },
    ],
    [GUIDANCE],
  );
}

const ANY_STRENGTH =
  'Any strength leaves this margin, up to the whole product. It says nothing about irritation, or about what else is in it.';

/**
 * The largest concentration that leaves a margin of safety.
 * @returns %, 100 at most
 * @throws Problem `invalid-input`, also where nothing is absorbed
 */
export function maxConcentrationForMargin(
  from: PointOfDeparture,
  use: Use,
  absorptionPercent: number,
  margin: number,
): Worked {
  const atOne = systemicExposureDose({ use, concentrationPercent: 1, absorptionPercent });
  positive(atOne.value, 'The systemic exposure dose at 1 %');
  const pod = systemicPod(from);
  const reached = pod.result / positive(margin, 'The margin') / atOne.value;
  const shows = `${show(pod.result)} / ${show(margin)} / ${show(atOne.value)}`;
  return worked(
    [
      ...atOne.steps,
      pod,
      {
        says: 'largest concentration: systemic point of departure / margin / dose at 1 %',
        shows: reached > 100 ? `min(100, ${shows})` : shows,
        result: Math.min(100, reached),
        unit: '%',
      },
    ],
    [GUIDANCE],
    reached > 100 ? [ANY_STRENGTH] : [],
  );
}

/** The threshold of toxicological concern as a dose. @param perKg µg/kg body weight a day @returns µg a day */
export function thresholdDose(perKg: number, bodyWeight: number): Worked {
  return oneStep(
    {
      says: 'threshold of toxicological concern × body weight',
      shows: `${show(positive(perKg, 'The threshold'))} × ${show(positive(bodyWeight, 'The body weight'))}`,
      result: perKg * bodyWeight,
      unit: 'µg/day',
    },
    [GUIDANCE],
  );
}
