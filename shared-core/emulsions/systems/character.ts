import { figureValue, type Figure } from '../../materials/figure';
import type { Material } from '../../materials/material';
import type { Architecture, Charge, EmulsionType } from '../../materials/vocabulary';
import {
  isAcrylicPolymer,
  isAnionicSurfactant,
  isBase,
  isCationicSurfactant,
  isFattyAcid,
  isSoap,
} from '../conflicts/recognise';

/** What an emulsifier is judged by: a material, or those columns of it that a database gives of a whole shelf. */
export type EmulsifierRecord = Pick<
  Material,
  | 'id'
  | 'tradeName'
  | 'composition'
  | 'functions'
  | 'charge'
  | 'architecture'
  | 'emulsionType'
  | 'form'
  | 'consistency'
  | 'origin'
> & { figures: { hlb?: Pick<Figure, 'low' | 'value' | 'high'> & Partial<Figure> } };

/** Whether an emulsifier is waxy (gives body) or liquid (gives little); null when neither is recorded. */
export function bodyCharacter(material: Pick<Material, 'consistency' | 'form'>): 'waxy' | 'liquid' | null {
  if (material.consistency === 'waxy') return 'waxy';
  if (material.consistency === 'oily' || material.consistency === 'watery') return 'liquid';
  switch (material.form) {
    case 'pellets':
    case 'flakes':
    case 'beads':
    case 'block':
      return 'waxy';
    case 'liquid':
    case 'viscous liquid':
      return 'liquid';
    default:
      return null;
  }
}

/** The HLB of a material as recorded; null when unknown. */
export function hlbOf({ figures }: Pick<EmulsifierRecord, 'figures'>): number | null {
  return figureValue(figures.hlb);
}

/** The ends between which the recorded figure lets the HLB lie; equal where it gives one value. */
export function hlbSpread({
  figures,
}: Pick<EmulsifierRecord, 'figures'>): { low: number; high: number } | null {
  const value = figureValue(figures.hlb);
  if (value === null) return null;
  return { low: figures.hlb?.low ?? value, high: figures.hlb?.high ?? value };
}

/** A soap, or a fatty acid that a base makes one. */
export function worksAsSoap(material: Pick<Material, 'composition' | 'functions'>): boolean {
  return isSoap(material) || (isFattyAcid(material) && !isBase(material));
}

/**
 * The charge that an emulsifier works by: soap is anionic whatever was recorded; else the recorded charge, else the one
 * that its INCI name tells; null when neither does.
 */
export function workingCharge(
  material: Pick<Material, 'composition' | 'functions' | 'charge'>,
): Charge | null {
  if (worksAsSoap(material)) return 'anionic';
  if (material.charge !== null) return material.charge;
  if (isCationicSurfactant(material)) return 'cationic';
  return isAcrylicPolymer(material) || isAnionicSurfactant(material) ? 'anionic' : null;
}

/** The architecture an emulsifier works by: carbomer and its relatives are polymers whatever was recorded. */
export function workingArchitecture(
  material: Pick<Material, 'composition' | 'architecture'>,
): Architecture | null {
  const recorded = material.architecture;
  if (recorded !== null && recorded !== 'classic') return recorded;
  return isAcrylicPolymer(material) ? 'polymeric' : recorded;
}

/** What a mass-weighted mean HLB describes. */
export function isClassicNonIonic({
  charge,
  architecture,
}: Pick<PairingFacts, 'charge' | 'architecture'>): boolean {
  return charge === 'non-ionic' && (architecture ?? 'classic') === 'classic';
}

/** True where a mass-weighted mean HLB describes the material: a non-ionic, classic emulsifier, no soap. */
export function meanHlbApplies(
  material: Pick<Material, 'composition' | 'functions' | 'charge' | 'architecture'>,
): boolean {
  return isClassicNonIonic({
    charge: workingCharge(material),
    architecture: workingArchitecture(material),
  });
}

/** Whether an emulsifier serves a type of emulsion; one with no recorded type may. */
export function servesType(recorded: EmulsionType | null, wanted: 'o/w' | 'w/o'): boolean {
  return recorded === null || recorded === 'both' || recorded === wanted;
}

/** Below this HLB a non-ionic is no partner that keeps a cationic o/w emulsion together. Griffin: o/w from about 8. */
export const LOWEST_PARTNER_HLB = 8;
/** Above this HLB an emulsifier is no low-HLB partner of a w/o emulsion (Griffin: w/o 3 to 6). */
export const HIGHEST_WATER_IN_OIL_HLB = 8;
/** From this HLB on a non-ionic disperses in water to a stable milk or clearer (Griffin 1949, by appearance). */
export const DISPERSES_FROM_HLB = 10;

/** What the pairing rules ask of an emulsifier: of a material, or of a candidate of the optimiser. */
export interface PairingFacts {
  charge: Charge | null;
  architecture: Architecture | null;
  hlb: number | null;
  character: 'waxy' | 'liquid' | null;
  emulsionType: EmulsionType | null;
}

/** What the pairing rules ask of a material. */
export function pairingFacts(material: EmulsifierRecord): PairingFacts {
  return {
    charge: workingCharge(material),
    architecture: workingArchitecture(material),
    hlb: hlbOf(material),
    character: bodyCharacter(material),
    emulsionType: material.emulsionType,
  };
}

/** The non-ionic that a cationic o/w emulsion wants beside it. */
export function isCationicPartner({ charge, hlb }: PairingFacts): boolean {
  return charge === 'non-ionic' && hlb !== null && hlb >= LOWEST_PARTNER_HLB;
}

/** Low enough for the film of a w/o emulsion; one without an HLB may be. */
export function isLow({ hlb }: PairingFacts): boolean {
  return hlb === null || hlb <= HIGHEST_WATER_IN_OIL_HLB;
}

/** A polymeric or particulate emulsifier that serves w/o: it holds the film by itself. */
export function holdsFilmAlone({ architecture, emulsionType }: PairingFacts): boolean {
  return (architecture ?? 'classic') !== 'classic' && servesType(emulsionType, 'w/o');
}

/**
 * What a w/o emulsion lacks: a waxy and a liquid emulsifier of low HLB, or one that holds the film by itself. Empty when
 * nothing is missing. Common practice, no source.
 */
export function missingInWaterInOil(members: readonly PairingFacts[]): ('waxy' | 'liquid')[] {
  if (members.some(holdsFilmAlone)) return [];
  return (['waxy', 'liquid'] as const).filter(
    (wanted) => !members.some((member) => member.character === wanted && isLow(member)),
  );
}

/**
 * Whether an emulsifier disperses in water, as an o/w emulsion needs of one at least: it carries a charge, or has an
 * HLB of 10 or more; null where its record does not tell.
 */
export function dispersesInWater({ charge, hlb, emulsionType }: PairingFacts): boolean | null {
  if (charge !== null && charge !== 'non-ionic') return true;
  if (hlb !== null) return hlb >= DISPERSES_FROM_HLB;
  return emulsionType === 'w/o' ? false : null;
}
