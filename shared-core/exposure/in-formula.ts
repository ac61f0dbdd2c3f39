import { amountOf, type Contents, type Present } from '../limits/contents';
import type { Market } from '../products/market';
import { percentFromPpm } from '../quantities/share';
import type { Substance } from '../substances/substance';
import { marginOfSafety, systemicExposureDose, type Dose, type PointOfDeparture, type Use } from './exposure';
import { ADULT_KG, AGGREGATE_PER_KG, DAILY_USE, DEFAULT_ABSORPTION, type DailyUse } from './tables';
import type { Worked } from '../working/working';

/** Who uses how much of it: as the tables say for the kind of product, or as an assessor sets it. */
export interface ExposureBasis {
  use: Use;
  bodyWeight: number;
  area: number | null;
  timesADay: number | null;
  /** Where it comes from, in words. */
  says: string;
}

/** What a substance of a formula comes to. */
export interface SubstanceExposure {
  substance: Substance;
  /** At worst, % of the product. */
  percent: number;
  dose: Worked;
  /** Null where no point of departure is recorded. */
  margin: Worked | null;
  /** Of a preservative over all products that an adult uses; null for anything else. */
  aggregate: { dose: Worked; margin: Worked | null } | null;
  cautions: string[];
}

/** The adult basis of a kind of product; null where the tables do not know it. */
export function basisOf({ kind }: Pick<Market, 'kind'>): ExposureBasis | null {
  const row: DailyUse | undefined = kind ? DAILY_USE[kind] : undefined;
  if (!row) return null;
  const { product, amount, retention, perKg, area, timesADay } = row;
  return {
    use: perKg === null ? { amountGramsPerDay: amount, bodyWeight: ADULT_KG, retention } : { perKg },
    bodyWeight: ADULT_KG,
    area,
    timesADay,
    says: `${product}: ${amount} g per day, retention factor ${retention}${perKg === null ? '' : `, ${perKg} mg/kg body weight per day as published`}`,
  };
}

function pointOf({ pod, oralBioavailability }: Substance): PointOfDeparture | null {
  return pod === null ? null : { pod, oralBioavailabilityPercent: oralBioavailability ?? 100 };
}

function doseOf(
  substance: Substance,
  percent: number,
  basis: ExposureBasis,
): { dose: Dose; caution: string } {
  const { absorbedPerArea, dermalAbsorption } = substance;
  const { area, timesADay, bodyWeight, use } = basis;
  if (dermalAbsorption === null && absorbedPerArea !== null && area !== null && timesADay !== null)
    return {
      dose: { absorbedPerArea, area, applicationsPerDay: timesADay, bodyWeight },
      caution:
        'By the amount absorbed per area at the strength that was tested: check that it is this formula’s.',
    };
  return {
    dose: { use, concentrationPercent: percent, absorptionPercent: dermalAbsorption ?? DEFAULT_ABSORPTION },
    caution:
      dermalAbsorption === null
        ? `No dermal absorption is recorded: ${DEFAULT_ABSORPTION} %, the guidance’s default, is used.`
        : '',
  };
}

function aggregateOf(substance: Substance, percent: number): NonNullable<SubstanceExposure['aggregate']> {
  const dose: Dose = {
    use: { perKg: AGGREGATE_PER_KG },
    concentrationPercent: percent,
    absorptionPercent: substance.dermalAbsorption ?? DEFAULT_ABSORPTION,
  };
  const point = pointOf(substance);
  return {
    dose: systemicExposureDose(dose),
    margin: point && percent > 0 && dose.absorptionPercent > 0 ? marginOfSafety(point, dose) : null,
  };
}

function exposureOf({ substance, parts }: Present, basis: ExposureBasis): SubstanceExposure {
  const amount = amountOf(parts);
  const percent = percentFromPpm(amount.high);
  const { dose, caution } = doseOf(substance, percent, basis);
  const point = pointOf(substance);
  const sed = systemicExposureDose(dose);
  const preserves = parts.some(({ material }) => material.functions.includes('preservative'));
  return {
    substance,
    percent,
    dose: sed,
    margin: point && sed.value > 0 ? marginOfSafety(point, dose) : null,
    aggregate: preserves ? aggregateOf(substance, percent) : null,
    cautions: [
      ...(caution === '' ? [] : [caution]),
      ...(amount.low === amount.high ? [] : ['At the upper end of the supplier’s range.']),
      ...(point && substance.oralBioavailability === null
        ? ['The point of departure counts as systemic: no oral bioavailability is recorded.']
        : []),
    ],
  };
}

/**
 * Systemic exposure and margin of safety of every substance of a formula, those with a point of departure first,
 * smallest margin first.
 */
export function exposuresOf(contents: Contents, basis: ExposureBasis): SubstanceExposure[] {
  const all = [...contents.present.values()].map((present) => exposureOf(present, basis));
  const rank = ({ margin }: SubstanceExposure): number => margin?.value ?? Number.POSITIVE_INFINITY;
  return all.sort(
    (a, b) =>
      rank(a) - rank(b) ||
      b.dose.value - a.dose.value ||
      a.substance.name.localeCompare(b.substance.name, 'en'),
  );
}
