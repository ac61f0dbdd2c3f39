import { badInput, celsius, finiteResult } from '../working/inputs';
import { worked } from '../working/one-step';
import { show, showTerm } from '../working/show';
import type { Worked } from '../working/working';
import { athermal, athermalShown, hldIonic, hldNonionic } from './hld';
import type { IonicSystem, NonionicSystem } from './hld';
import { HLD_REFERENCE_CELSIUS as T_REF } from './hld-coefficients';
import { checkIonic, checkNonionic, validityCautions } from './hld-validity';
import { BOURREL_1980, SALAGER_1979 } from './sources';

/**
 * Temperature at which a non-ionic system's HLD is 0, its phase-inversion temperature:
 * T = 25 − (b·S − K·EACN + Cc + φ(A)) / cT.
 *
 * @returns °C; a caution says when it lies outside 0 to 100 °C
 * @throws Problem `invalid-input`, also when cT is 0 or the answer lies below absolute zero
 * Source: Bourrel et al. 1980, solved for T.
 */
export function hldZeroTemperature(system: NonionicSystem): Worked {
  checkNonionic(system, T_REF);
  if (system.cT === 0)
    throw badInput(
      'With cT = 0 the HLD does not change with temperature.',
      'Enter the temperature coefficient of the surfactant.',
      'cT',
    );
  const rest = athermal(system);
  const zero = finiteResult(T_REF - rest / system.cT, 'The inversion temperature');
  if (zero < -273.15)
    throw badInput(
      `HLD would be 0 at ${show(zero)} °C, below absolute zero: this system does not invert.`,
      'Check the coefficients, Cc and EACN.',
    );
  return worked(
    [
      {
        says: 'HLD at 25 °C: b × S − K × EACN + Cc + φ(A)',
        shows: athermalShown(system),
        result: rest,
        unit: '',
      },
      {
        says: 'temperature at which HLD is 0: 25 − HLD(25 °C) / cT',
        shows: `${T_REF} − ${showTerm(rest)} / ${showTerm(system.cT)}`,
        result: zero,
        unit: '°C',
      },
    ],
    [BOURREL_1980],
    validityCautions(system.salinityPercent, zero, system.eacn),
  );
}

/**
 * Salinity at which an ionic system's HLD is 0: S = exp(K·EACN + αT·(T − 25) − Cc − f(A)).
 *
 * @param temperature °C
 * @returns g per 100 mL of water phase; a caution says when water cannot dissolve it
 * @throws Problem `invalid-input`
 * Source: Salager et al. 1979, solved for S.
 */
export function hldZeroSalinity(system: Omit<IonicSystem, 'salinityPercent'>, temperature: number): Worked {
  checkIonic({ ...system, salinityPercent: 1 }, temperature);
  const { k, eacn, alphaT, cc, alcoholTerm } = system;
  const exponent = k * eacn + alphaT * (temperature - T_REF) - cc - alcoholTerm;
  const zero = finiteResult(Math.exp(exponent), 'The optimum salinity');
  return worked(
    [
      {
        says: 'ln S at HLD = 0: K × EACN + αT × (T − 25) − Cc − f(A)',
        shows:
          `${show(k)} × ${showTerm(eacn)} + ${showTerm(alphaT)} × (${show(temperature)} − ${T_REF}) − ` +
          `${showTerm(cc)} − ${showTerm(alcoholTerm)}`,
        result: exponent,
        unit: '',
      },
      {
        says: 'salinity at which HLD is 0',
        shows: `exp(${show(exponent)})`,
        result: zero,
        unit: 'g per 100 mL',
      },
    ],
    [SALAGER_1979],
    validityCautions(zero, temperature, eacn),
  );
}

export interface StorageWindow {
  atCold: Worked;
  atHot: Worked;
  /** True when HLD changes sign, or touches 0, between the two temperatures. */
  inverts: boolean;
  /** Where it does, °C; null when it does not. */
  inversionTemperature: number | null;
  says: string;
}

/**
 * Whether a system's HLD keeps its sign over a range of storage temperatures.
 *
 * @param fromC the coldest, °C
 * @param toC the hottest, °C, at least `fromC`
 * @throws Problem `invalid-input`
 */
export function storageWindow(
  system: ({ kind: 'ionic' } & IonicSystem) | ({ kind: 'non-ionic' } & NonionicSystem),
  fromC: number,
  toC: number,
): StorageWindow {
  celsius(fromC, 'Coldest storage temperature');
  celsius(toC, 'Hottest storage temperature');
  if (fromC > toC)
    throw badInput('The coldest temperature is above the hottest.', 'Swap the two temperatures.', 'fromC');
  const at = (temperature: number): Worked =>
    system.kind === 'ionic' ? hldIonic(system, temperature) : hldNonionic(system, temperature);
  const atCold = at(fromC);
  const atHot = at(toC);
  const inverts = atCold.value * atHot.value <= 0;
  const inversionTemperature = inverts ? crossing(fromC, atCold.value, toC, atHot.value) : null;
  return { atCold, atHot, inverts, inversionTemperature, says: sentence(fromC, toC, inversionTemperature) };
}

/** HLD is linear in temperature, so the crossing of two points is exact. */
function crossing(fromC: number, cold: number, toC: number, hot: number): number {
  return cold === hot ? fromC : fromC + ((toC - fromC) * cold) / (cold - hot);
}

function sentence(fromC: number, toC: number, inversion: number | null): string {
  const range = `between ${show(fromC)} and ${show(toC)} °C`;
  return inversion === null
    ? `HLD keeps its sign ${range}: no inversion is expected in storage.`
    : `HLD passes zero at ${show(Number(inversion.toFixed(1)))} °C, ${range}: the emulsion may invert or break there.`;
}
