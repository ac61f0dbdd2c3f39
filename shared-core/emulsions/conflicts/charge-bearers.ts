import type { Material } from '../../materials/material';
import type { Charge } from '../../materials/vocabulary';
import * as is from './recognise';

/** A material at its share, as a line of a formula gives it. `lineId` names the line in findings. */
export interface Dose {
  lineId: string;
  material: Material;
  /** Share of the formula in ppm. */
  ppm: number;
}

export type BearerKind =
  | 'surfactant'
  | 'soap'
  | 'fatty acid'
  | 'acrylic polymer'
  | 'gum'
  | 'polymer'
  | 'particle'
  | 'dye'
  | 'multivalent salt';

/** What carries a charge in a formula, what it is, and how that is known. */
export interface ChargeBearer {
  lineId: string;
  materialId: string;
  name: string;
  charge: Charge;
  kind: BearerKind;
  isEmulsifier: boolean;
  /** Why it counts as such, in a phrase. */
  why: string;
}

type Known = Pick<ChargeBearer, 'charge' | 'kind' | 'why'>;

const RECORDED = 'as recorded on the material';
const NAMED = 'known by its INCI name';

function kindByArchitecture(material: Material): BearerKind {
  if (is.isCationicPolymer(material) || material.architecture === 'polymeric') return 'polymer';
  if (material.architecture === 'particulate' || is.isClay(material)) return 'particle';
  return 'surfactant';
}

function anionic(material: Material, hasBase: boolean): Known | null {
  const why = material.charge === 'anionic' ? RECORDED : NAMED;
  if (is.isSoap(material)) return { charge: 'anionic', kind: 'soap', why };
  if (is.isFattyAcid(material) && material.charge !== 'cationic') {
    return hasBase
      ? { charge: 'anionic', kind: 'soap', why: 'soap formed by this acid with the base in the formula' }
      : { charge: 'anionic', kind: 'fatty acid', why: 'becomes soap as soon as a base is present' };
  }
  if (is.isAcrylicPolymer(material)) return { charge: 'anionic', kind: 'acrylic polymer', why };
  if (is.isAnionicGum(material)) return { charge: 'anionic', kind: 'gum', why };
  if (material.charge === null && is.isAnionicSurfactant(material)) {
    return { charge: 'anionic', kind: 'surfactant', why: NAMED };
  }
  if (material.charge === null && is.isClay(material)) {
    return { charge: 'anionic', kind: 'particle', why: NAMED };
  }
  return null;
}

/** A cationic preservative or active known by name: its counter-ion, such as an isethionate, must not hide it. */
function cationicActive(material: Material): Known | null {
  if (material.charge !== null || !is.isCationicSurfactant(material)) return null;
  return { charge: 'cationic', kind: 'surfactant', why: NAMED };
}

function cationic(material: Material): Known | null {
  if (material.charge !== null) return null;
  return is.isCationicPolymer(material) ? { charge: 'cationic', kind: 'polymer', why: NAMED } : null;
}

function recorded(material: Material): Known | null {
  if (material.charge !== null) {
    const dye = material.functions.includes('colorant');
    const kind: BearerKind = dye ? 'dye' : kindByArchitecture(material);
    return { charge: material.charge, kind, why: RECORDED };
  }
  if (is.isMultivalentSalt(material)) return { charge: 'cationic', kind: 'multivalent salt', why: NAMED };
  // Most water-soluble cosmetic dyes are sulfonated, so anionic; a guess is marked as one.
  if (material.functions.includes('colorant') && material.solubleIn.includes('water')) {
    return {
      charge: 'anionic',
      kind: 'dye',
      why: 'most water-soluble dyes are anionic; this one has no recorded charge',
    };
  }
  return null;
}

/** What a line carries; null where it carries no charge to speak of. @param hasBase whether the formula holds a base */
export function bearerOf({ lineId, material }: Dose, hasBase: boolean): ChargeBearer | null {
  const known =
    material.charge === 'cationic' || material.charge === 'amphoteric'
      ? recorded(material)
      : (cationicActive(material) ?? anionic(material, hasBase) ?? cationic(material) ?? recorded(material));
  if (!known) return null;
  const isEmulsifier = is.isEmulsifier(material);
  return { lineId, materialId: material.id, name: material.tradeName, isEmulsifier, ...known };
}

/**
 * What carries a charge among the lines of a formula, emulsifiers or not. A recorded charge wins over the name, save
 * that a fatty acid beside a base counts as soap. Non-ionics are listed too, as their presence matters to climate.
 *
 * @param doses lines at their shares; a line at 0 is left out
 */
export function chargeBearers(doses: readonly Dose[]): ChargeBearer[] {
  const present = doses.filter((dose) => dose.ppm > 0);
  const hasBase = present.some((dose) => is.isBase(dose.material));
  return present.map((dose) => bearerOf(dose, hasBase)).filter((bearer) => bearer !== null);
}
