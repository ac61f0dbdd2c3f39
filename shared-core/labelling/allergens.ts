import type { FormulaContent, Use } from '../formulas/formula';
import { formulaLines, formulaShares } from '../formulas/shares';
import type { Material } from '../materials/material';
import { WHOLE_PPM } from '../quantities/share';

/**
 * Content above which a fragrance allergen is named on an EU label: 0.001 % leave-on, 0.01 % rinse-off,
 * strictly above. Source: UK SI 2008/2566 schedule and OJ L 342/155 (read), as kept by Regulation (EU) 2023/1545.
 */
export const ALLERGEN_THRESHOLD_PPM: Record<Use, number> = { 'leave-on': 10, 'rinse-off': 100 };

export interface AllergenContent {
  inci: string;
  /** ppm of the formula, summed over all materials that declare it. */
  ppm: number;
  materialIds: string[];
}

/** The fragrance allergens of a formula, largest first: those to declare, and those below the threshold. */
export function declarableAllergens(
  content: Pick<FormulaContent, 'phases' | 'use'>,
  materials: Readonly<Record<string, Pick<Material, 'id' | 'allergens'> | undefined>>,
): { thresholdPpm: number; declared: AllergenContent[]; below: AllergenContent[] } {
  const shares = formulaShares(content).byLine;
  const sums = new Map<string, AllergenContent>();
  for (const line of formulaLines(content)) {
    const material = materials[line.materialId];
    const linePpm = Math.max(0, shares.get(line.id) ?? 0);
    for (const { inci, ppm } of material?.allergens ?? []) {
      const sum = sums.get(inci.toLowerCase()) ?? { inci, ppm: 0, materialIds: [] };
      // Multiplied before dividing, so that a content exactly at the threshold stays exact.
      sum.ppm += (ppm * linePpm) / WHOLE_PPM;
      if (!sum.materialIds.includes(line.materialId)) sum.materialIds.push(line.materialId);
      sums.set(inci.toLowerCase(), sum);
    }
  }
  const thresholdPpm = ALLERGEN_THRESHOLD_PPM[content.use];
  const all = [...sums.values()].sort((a, b) => b.ppm - a.ppm || a.inci.localeCompare(b.inci, 'en'));
  return {
    thresholdPpm,
    declared: all.filter((one) => one.ppm > thresholdPpm),
    below: all.filter((one) => one.ppm <= thresholdPpm && one.ppm > 0),
  };
}
