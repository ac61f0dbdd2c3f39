import type { FormulaContent } from '../formulas/formula';
import { formulaShares } from '../formulas/shares';
import type { Material } from '../materials/material';
import { substanceIndex } from '../substances/substance-index';
import { contentsOf, type Contents, type Dosed } from './contents';
import type { Judged } from './judged';
import { judgeLimits } from './judge';
import type { Law } from './law';
import { regionsOf, type Situation } from './situation';

/** What of a formula limits, label and exposure ask for. */
export type LawfulContent = Pick<FormulaContent, 'phases' | 'use' | 'market' | 'target'>;
/** How a material is found by its id, wherever the caller keeps it. */
export type FindMaterial = (id: string) => Material | undefined;

/** The lines of a formula with their materials and shares; those without a material are left out. */
export function dosedLines(content: Pick<FormulaContent, 'phases'>, find: FindMaterial): Dosed[] {
  const { byLine } = formulaShares(content);
  return content.phases.flatMap(({ lines }) =>
    lines.flatMap((line): Dosed[] => {
      const material = find(line.materialId);
      return material ? [{ lineId: line.id, material, ppm: Math.max(0, byLine.get(line.id) ?? 0) }] : [];
    }),
  );
}

/** The situations that a formula is held against: one for each region it is sold in. */
export function situationsOf(
  { use, market, target }: Omit<LawfulContent, 'phases'>,
  onDay: string,
): Situation[] {
  const low = target.phLow ?? target.phHigh;
  const high = target.phHigh ?? target.phLow;
  const ph = low === null || high === null ? null : { low, high };
  return regionsOf(market).map((region) => ({ region, use, market, ph, onDay }));
}

/** What the law says of a formula: what it holds by substance, and every limit that is about something in it. */
export interface LawOfFormula {
  contents: Contents;
  judged: Judged[];
}

/** @param onDay the day that is asked about, ISO 8601 */
export function lawOfFormula(
  content: LawfulContent,
  find: FindMaterial,
  law: Law,
  onDay: string,
): LawOfFormula {
  const contents = contentsOf(dosedLines(content, find), substanceIndex(law.substances));
  return {
    contents,
    judged: situationsOf(content, onDay).flatMap((situation) => judgeLimits(law, contents, situation)),
  };
}
