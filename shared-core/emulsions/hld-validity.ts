import { celsius, finite, nonNegative, positive } from '../working/inputs';
import { show } from '../working/show';

/** The least a system must give to be computed at all. */
interface Checked {
  salinityPercent: number;
  eacn: number;
  cc: number;
  alcoholTerm: number;
  k: number;
}

/** Water takes up about 36 g NaCl per 100 mL at 25 °C (from memory, handbook solubility). */
const SATURATED_NACL = 36;
const MEASURED_EACN = { low: -5, high: 25 };

function checkCommon(system: Checked, temperature: number): void {
  nonNegative(system.salinityPercent, 'Salinity');
  finite(system.eacn, 'EACN');
  finite(system.cc, 'Cc');
  finite(system.alcoholTerm, 'Alcohol term');
  positive(system.k, 'K');
  celsius(temperature, 'Temperature');
}

export function checkIonic(system: Checked & { alphaT: number }, temperature: number): void {
  checkCommon(system, temperature);
  finite(system.alphaT, 'αT');
}

export function checkNonionic(system: Checked & { b: number; cT: number }, temperature: number): void {
  checkCommon(system, temperature);
  finite(system.b, 'b');
  finite(system.cT, 'cT');
}

/** What to know before relying on an HLD: what lies outside its validity, and how far its constants carry. */
export function validityCautions(salinityPercent: number, temperature: number, eacn: number): string[] {
  return [
    ...outsideValidity(salinityPercent, temperature, eacn),
    'HLD’s constants differ between sources, and most Cc and EACN of cosmetic materials are not verified: confirm by trial.',
  ];
}

/** What lies outside the range in which HLD's constants were found; empty when nothing does. */
export function outsideValidity(salinityPercent: number, temperature: number, eacn: number): string[] {
  const outside: string[] = [];
  if (salinityPercent > SATURATED_NACL)
    outside.push(
      `Salinity ${show(salinityPercent)} g/100 mL is more salt than water dissolves (about ${SATURATED_NACL} g).`,
    );
  if (temperature < 0 || temperature > 100)
    outside.push(
      'Outside 0 to 100 °C the water phase freezes or boils: the figure is arithmetic, not a system.',
    );
  else if (temperature > 80)
    outside.push('Above about 80 °C the linear temperature term is an extrapolation.');
  if (eacn < MEASURED_EACN.low || eacn > MEASURED_EACN.high)
    outside.push(
      `EACN ${show(eacn)} lies outside what has been measured (${show(MEASURED_EACN.low)} to ${show(MEASURED_EACN.high)}).`,
    );
  return outside;
}
