import type { Use } from '../formulas/formula';
import { amountOf, type Contents } from '../limits/contents';
import type { Substance } from '../substances/substance';

/**
 * Content above which a fragrance allergen is named on an EU label: 0.001 % leave-on, 0.01 % rinse-off,
 * strictly above. Source: UK SI 2008/2566 schedule and OJ L 342/155 (read), as kept by Regulation (EU) 2023/1545.
 */
export const ALLERGEN_THRESHOLD_PPM: Record<Use, number> = { 'leave-on': 10, 'rinse-off': 100 };

/** From when the longer list holds: for products new on the market, and for those on the shelf. */
export const ALLERGENS_2023 = {
  text: 'Regulation (EU) 2023/1545',
  from: '2026-07-31',
  fromOnShelf: '2028-07-31',
} as const;

/** Which list of allergens a label follows: the longer one of 2023, or the earlier 26. */
export const ALLERGEN_RULES = ['2023', 'older 26'] as const;
export type AllergenRule = (typeof ALLERGEN_RULES)[number];

/** The list that a product new on the market on a day follows. @param onDay ISO 8601 */
export function allergenRuleOn(onDay: string): AllergenRule {
  return onDay >= ALLERGENS_2023.from ? '2023' : 'older 26';
}

/** What an allergen of a fragrance comes to in a product: both shares in %. @returns % of the product */
export function allergenAmount(fragrancePercent: number, sharePercent: number): number {
  return (fragrancePercent * sharePercent) / 100;
}

/** An allergen with what it comes to, ppm of the product. */
export interface AllergenContent {
  /** As the label names it; those that share an entry go under one name. */
  label: string;
  ppm: number;
  materialIds: string[];
  substances: Substance[];
}

/** The name an allergen is declared by, under a rule; null for one that the rule does not know. */
export function allergenLabelOf(
  one: Pick<Substance, 'name' | 'allergenList' | 'allergenLabel'>,
  rule: AllergenRule,
): string | null {
  if (one.allergenList === null || (rule === 'older 26' && one.allergenList !== 'older 26')) return null;
  return one.allergenLabel || one.name;
}

export interface Declarable {
  thresholdPpm: number;
  declared: AllergenContent[];
  below: AllergenContent[];
}

/** Parts those that pass the threshold from the others, largest first. Contents of one label are summed. */
export function declarable(contents: readonly AllergenContent[], use: Use): Declarable {
  const sums = new Map<string, AllergenContent>();
  for (const one of contents) {
    const known = sums.get(one.label.toLowerCase());
    sums.set(
      one.label.toLowerCase(),
      known
        ? {
            ...known,
            ppm: known.ppm + one.ppm,
            materialIds: [...new Set([...known.materialIds, ...one.materialIds])],
            substances: [...known.substances, ...one.substances],
          }
        : one,
    );
  }
  const thresholdPpm = ALLERGEN_THRESHOLD_PPM[use];
  const all = [...sums.values()].sort((a, b) => b.ppm - a.ppm || a.label.localeCompare(b.label, 'en'));
  // Room for the binary noise of summed products, far below what is weighed.
  const above = (ppm: number): boolean => ppm > thresholdPpm * (1 + 1e-9);
  return {
    thresholdPpm,
    declared: all.filter(({ ppm }) => above(ppm)),
    below: all.filter(({ ppm }) => !above(ppm) && ppm > 0),
  };
}

/** The fragrance allergens of a formula, counted over all that brings them, at the worst case of suppliers' ranges. */
export function declarableAllergens(contents: Contents, use: Use, rule: AllergenRule): Declarable {
  const found = [...contents.present.values()].flatMap(({ substance, parts }): AllergenContent[] => {
    const label = allergenLabelOf(substance, rule);
    if (label === null) return [];
    const materialIds = [...new Set(parts.map(({ material }) => material.id))];
    return [{ label, ppm: amountOf(parts).high, materialIds, substances: [substance] }];
  });
  return declarable(found, use);
}
