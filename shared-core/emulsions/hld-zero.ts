import { badInput, celsius, finiteResult } from '../working/inputs';
import { worked } from '../working/one-step';
import { show, showTerm } from '../working/show';
import type { Worked } from '../working/working';
import { athermal, athermalShown, hldIonic, hldNonionic, nearInversion } from './hld';
import type { IonicSystem, NonionicSystem } from './hld';
import { HLD_REFERENCE_CELSIUS as T_REF } from './hld-coefficients';
import { checkIonic, checkNonionic, outsideValidity, validityCautions } from './hld-validity';
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

/** How HLD stands over storage; 'not known' where a system lies outside what HLD describes. */
export type StorageStanding = 'keeps its sign' | 'near zero' | 'passes zero' | 'not known';

export interface StorageWindow {
  atCold: Worked;
  atHot: Worked;
  standing: StorageStanding;
  /** Where HLD passes zero, °C; null when it does not, or is the same throughout. */
  inversionTemperature: number | null;
  says: string;
}

/**
 * Whether a system's HLD keeps its sign over a range of storage temperatures, well away from zero.
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
  const ends = { atCold: at(fromC), atHot: at(toC) };
  const { salinityPercent, eacn } = system;
  const outside = [fromC, toC].flatMap((celsius) => outsideValidity(salinityPercent, celsius, eacn));
  const found = standingOf(fromC, ends.atCold.value, toC, ends.atHot.value);
  if (outside.length === 0) return { ...ends, ...found };
  const warning = found.standing === 'keeps its sign' ? '' : `${found.says} `;
  const says =
    `${warning}HLD does not describe this system ${rangeWords(fromC, toC)}, so it cannot say whether it keeps: ` +
    [...new Set(outside)].join(' ');
  return { ...ends, ...found, standing: 'not known', says };
}

type Standing = Pick<StorageWindow, 'standing' | 'inversionTemperature' | 'says'>;

/** HLD is linear in temperature, so its two ends tell the whole range. */
function standingOf(fromC: number, cold: number, toC: number, hot: number): Standing {
  const range = rangeWords(fromC, toC);
  const near = [cold, hot].map(nearInversion);
  const inversionTemperature = cold * hot <= 0 && cold !== hot ? crossing(fromC, cold, toC, hot) : null;
  if (near.every(Boolean))
    return {
      standing: 'near zero',
      inversionTemperature,
      says: `HLD stays near zero ${range}, at the inversion point: the emulsion may invert or break.`,
    };
  if (inversionTemperature !== null)
    return {
      standing: 'passes zero',
      inversionTemperature,
      says: `HLD passes zero at ${show(Number(inversionTemperature.toFixed(1)))} °C, ${range}: the emulsion may invert or break there.`,
    };
  if (near.some(Boolean))
    return {
      standing: 'near zero',
      inversionTemperature,
      says: `HLD keeps its sign ${range} but comes near zero at ${show(near[0] ? fromC : toC)} °C: the emulsion may invert or break there.`,
    };
  return {
    standing: 'keeps its sign',
    inversionTemperature,
    says: `HLD keeps its sign ${range}: no inversion is expected in storage.`,
  };
}

function rangeWords(fromC: number, toC: number): string {
  return `between ${show(fromC)} and ${show(toC)} °C`;
}

/** Where a line through two points of unlike sign crosses zero. */
function crossing(fromC: number, cold: number, toC: number, hot: number): number {
  return fromC + ((toC - fromC) * cold) / (cold - hot);
}
