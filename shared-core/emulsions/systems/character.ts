import { figureValue } from '../../materials/figure';
import type { Material } from '../../materials/material';

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
export function hlbOf(material: Material): number | null {
  return figureValue(material.figures.hlb);
}

/** True where a mass-weighted mean HLB describes the material: a non-ionic, classic emulsifier. */
export function meanHlbApplies(material: Pick<Material, 'charge' | 'architecture'>): boolean {
  return material.charge === 'non-ionic' && (material.architecture ?? 'classic') === 'classic';
}
