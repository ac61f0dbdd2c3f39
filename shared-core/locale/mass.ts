import { MG_PER_G, MG_PER_KG } from '../quantities/mass';
import { formatNumber } from './numbers';
import type { Region } from './numbers';

export const MASS_UNITS = { mg: 1, g: MG_PER_G, kg: MG_PER_KG } as const;
export type MassUnit = keyof typeof MASS_UNITS;

/** The unit a maker would say a mass in: mg below 1 g, g below 1 kg, else kg. */
export function massUnit(mg: number): MassUnit {
  const size = Math.abs(mg);
  if (size >= MG_PER_KG) return 'kg';
  return size >= MG_PER_G || size === 0 ? 'g' : 'mg';
}

/** Decimals that show a balance's readability in a unit: 100 mg is one decimal in g, four in kg. */
export function readabilityDigits(readabilityMg: number, unit: MassUnit): number {
  const step = readabilityMg / MASS_UNITS[unit];
  for (let digits = 0; digits < 7; digits += 1) {
    const scaled = step * 10 ** digits;
    // The tolerance swallows binary noise; masses are whole mg, so six decimals always suffice.
    if (Math.abs(scaled - Math.round(scaled)) < 1e-9 && Math.round(scaled) > 0) return digits;
  }
  return 6;
}

/**
 * A mass as a number in one unit, without the unit's sign: for a column headed by it.
 * @param mg milligrams
 * @param readabilityMg the balance's step; fixes the decimals so that the column lines up
 */
export function formatMassIn(mg: number, unit: MassUnit, region: Region, readabilityMg?: number): string {
  const value = mg / MASS_UNITS[unit];
  if (readabilityMg === undefined) return formatNumber(value, region, { min: 0, max: 3 });
  return formatNumber(value, region, readabilityDigits(readabilityMg, unit));
}

/** What a balance can read, in the unit that balances show: "0.1 g". @param mg its step */
export function formatReadability(mg: number, region: Region): string {
  return `${formatMassIn(mg, 'g', region, mg)}\u00a0g`;
}

/**
 * A mass with the unit that suits its size: "850 mg", "12.5 g", "2.5 kg".
 * @param mg milligrams
 * @param readabilityMg the balance's step; decimals then show what it can read, no more and no fewer
 */
export function formatMass(mg: number, region: Region, readabilityMg?: number): string {
  const unit = massUnit(mg);
  return `${formatMassIn(mg, unit, region, readabilityMg)}\u00a0${unit}`;
}
