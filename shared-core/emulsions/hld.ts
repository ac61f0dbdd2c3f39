import { finite, positive } from '../working/inputs';
import { worked } from '../working/one-step';
import { show, showTerm } from '../working/show';
import type { Worked, WorkingStep } from '../working/working';
import { HLD_REFERENCE_CELSIUS as T_REF } from './hld-coefficients';
import { checkIonic, checkNonionic, validityCautions } from './hld-validity';
import { BOURREL_1980, SALAGER_1979 } from './sources';

interface HldCommon {
  /** EACN of the oil or oil mix. */
  eacn: number;
  /** Cc of the surfactant or mix. */
  cc: number;
  /** f(A) or φ(A): what alcohol or co-solvent adds; 0 without any. */
  alcoholTerm: number;
  /** K, per EACN unit. */
  k: number;
}

/** Ionic surfactants. Salinity in g NaCl per 100 mL of water phase, above zero; alphaT per K. */
export interface IonicSystem extends HldCommon {
  salinityPercent: number;
  alphaT: number;
}

/** Ethoxylated non-ionics. Salinity in g per 100 mL, zero or more; b per g/100 mL; cT per K. */
export interface NonionicSystem extends HldCommon {
  salinityPercent: number;
  b: number;
  cT: number;
}

/**
 * HLD of an ionic system: ln S − K·EACN − αT·(T − 25) + Cc + f(A). Below zero o/w, above zero w/o.
 *
 * @param temperature °C
 * @throws Problem `invalid-input`, also for salinity 0, where ln S has no value
 * Source: Salager et al. 1979.
 */
export function hldIonic(system: IonicSystem, temperature: number): Worked {
  checkIonic(system, temperature);
  positive(system.salinityPercent, 'Salinity');
  const { salinityPercent, eacn, cc, alcoholTerm, k, alphaT } = system;
  const step = {
    says: 'HLD, ionic: ln S − K × EACN − αT × (T − 25) + Cc + f(A)',
    shows:
      `ln ${show(salinityPercent)} − ${show(k)} × ${showTerm(eacn)} − ${showTerm(alphaT)} × ` +
      `(${show(temperature)} − ${T_REF}) + ${showTerm(cc)} + ${showTerm(alcoholTerm)}`,
    result: Math.log(salinityPercent) - k * eacn - alphaT * (temperature - T_REF) + cc + alcoholTerm,
    unit: '',
  };
  return hldOf(step, [SALAGER_1979], validityCautions(salinityPercent, temperature, eacn));
}

/**
 * HLD of an ethoxylated non-ionic system: b·S − K·EACN + cT·(T − 25) + Cc + φ(A).
 *
 * @param temperature °C
 * @throws Problem `invalid-input`
 * Source: Bourrel et al. 1980.
 */
export function hldNonionic(system: NonionicSystem, temperature: number): Worked {
  checkNonionic(system, temperature);
  const { salinityPercent, eacn, cT } = system;
  const step = {
    says: 'HLD, non-ionic: b × S − K × EACN + cT × (T − 25) + Cc + φ(A)',
    shows: `${athermalShown(system)} + ${showTerm(cT)} × (${show(temperature)} − ${T_REF})`,
    result: athermal(system) + cT * (temperature - T_REF),
    unit: '',
  };
  return hldOf(step, [BOURREL_1980], validityCautions(salinityPercent, temperature, eacn));
}

/** Closer to zero than this a system counts as at its inversion (common practice, no source). */
const NEAR_ZERO = 0.1;

/** Whether an HLD is too close to zero for its sign to be relied on. */
export function nearInversion(hld: number): boolean {
  return Math.abs(hld) < NEAR_ZERO;
}

/** What a sign of HLD says of the emulsion that forms on stirring. */
export function hldMeaning(hld: number): string {
  finite(hld, 'HLD');
  if (nearInversion(hld)) return 'near the inversion point: lowest tension, least stable emulsions';
  return hld < 0 ? 'favours o/w' : 'favours w/o';
}

/** b·S − K·EACN + Cc + φ(A): all of a non-ionic system's HLD but its temperature term. */
export function athermal({ b, salinityPercent, k, eacn, cc, alcoholTerm }: NonionicSystem): number {
  return b * salinityPercent - k * eacn + cc + alcoholTerm;
}

export function athermalShown({ b, salinityPercent, k, eacn, cc, alcoholTerm }: NonionicSystem): string {
  return (
    `${showTerm(b)} × ${show(salinityPercent)} − ${show(k)} × ${showTerm(eacn)} + ` +
    `${showTerm(cc)} + ${showTerm(alcoholTerm)}`
  );
}

function hldOf(step: WorkingStep, sources: Worked['sources'], cautions: string[]): Worked {
  const near = nearInversion(step.result)
    ? [`Within ${NEAR_ZERO} of zero the sign of HLD says nothing: expect neither o/w nor w/o to last.`]
    : [];
  return worked([step], sources, [...near, ...cautions]);
}
