import { STARTER_LIMITS } from '@core/limits/starter/starter-limits';
import type { Law } from '@core/limits/law';
import type { Limit, LimitContent } from '@core/limits/limit';
import { contentsOf } from '@core/limits/contents';
import { judgeLimits } from '@core/limits/judge';
import type { Judged } from '@core/limits/judged';
import type { Situation } from '@core/limits/situation';
import type { Material } from '@core/materials/material';
import { blankMarket, type Market } from '@core/products/market';
import { starterSubstances } from '@core/substances/starter/starter-substances';
import { substanceIndex } from '@core/substances/substance-index';
import type { SubstanceContent, Substance } from '@core/substances/substance';
import { nextId } from '../checks/build';

const KEPT = { revision: 1, createdAt: '2026-01-01T00:00:00.000Z', updatedAt: '2026-01-01T00:00:00.000Z' };

export const kept = <C extends object>(content: C): C & typeof KEPT & { id: string } => ({
  ...content,
  ...KEPT,
  id: nextId(),
});

/** The examples as a library holds them. */
export const EXAMPLES: Law = {
  substances: starterSubstances().map((one): Substance => kept<SubstanceContent>(one)),
  limits: STARTER_LIMITS.map((one): Limit => kept<LimitContent>(one)),
};

export type Line = [material: Material, percent: number];

/** A product that a limit is held against; a face cream of the European Union on a day of 2026 unless said. */
export function situation(parts: Partial<Situation> = {}, market: Partial<Market> = {}): Situation {
  return {
    region: 'EU',
    use: 'leave-on',
    ph: null,
    onDay: '2026-11-28',
    market: { ...blankMarket(), ...market },
    ...parts,
  };
}

/** What the limits say of a formula of these lines. */
export function judged(lines: Line[], at: Situation, law: Law = EXAMPLES): Judged[] {
  const dosed = lines.map(([material, percent]) => ({
    lineId: nextId(),
    material,
    ppm: Math.round(percent * 10_000),
  }));
  return judgeLimits(law, contentsOf(dosed, substanceIndex(law.substances)), at);
}

/** The verdict of the limit on one subject, and what it comes to at worst. */
export function verdictOn(subject: string, lines: Line[], at: Situation): [string, number] | null {
  const found = judged(lines, at).find((one) => one.limit.subject === subject);
  return found ? [found.verdict, Number(found.total.high.toFixed(4))] : null;
}
