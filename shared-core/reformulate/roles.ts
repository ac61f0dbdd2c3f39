import { isOil } from '../emulsions/systems/oil-phase';
import type { Material } from '../materials/material';
import type { MaterialFunction } from '../materials/vocabulary';
import { isWater } from '../natural-origin/in-formula';

/** What a material is in a formula for: the first of these that it does. Common practice, no source. */
const BY_FUNCTION: readonly (readonly [role: string, functions: readonly MaterialFunction[]])[] = [
  ['emulsifiers', ['emulsifier']],
  ['UV filters', ['uv filter']],
  ['preservatives', ['preservative']],
  ['surfactants', ['surfactant']],
  ['colorants', ['colorant']],
  ['fragrance', ['fragrance']],
  ['pH aids', ['acid', 'base']],
  ['chelators', ['chelator']],
  ['boosters', ['preservative booster']],
  ['antioxidants', ['antioxidant']],
  ['actives', ['active']],
  ['humectants', ['humectant']],
  ['electrolytes', ['electrolyte']],
  ['thickeners', ['thickener']],
  ['conditioners', ['conditioning agent']],
  ['film formers', ['film former']],
  ['co-emulsifiers and body', ['co-emulsifier']],
];

/** Water as such, no juice or flower water: it fills what the others leave. */
export const WATER = 'water';

/** What a material does in a formula; every one of them stays present in about its amount. */
export function roleOf(material: Material): string {
  if (isWater(material, null)) return WATER;
  const known = BY_FUNCTION.find(([, functions]) =>
    functions.some((one) => material.functions.includes(one)),
  );
  if (known && known[0] === 'emulsifiers') return known[0];
  if (isOil(material) && !known?.[0].match(/UV|active|preserv|fragrance/)) return 'oils';
  return known?.[0] ?? 'others';
}

/**
 * What the product is made for, looks and smells of, and what its pH is set with: each stays, and another comes in only
 * where the old one is barred.
 */
export const KEPT_ROLES: ReadonlySet<string> = new Set([
  'actives',
  'pH aids',
  'fragrance',
  'colorants',
  'UV filters',
  'others',
]);
