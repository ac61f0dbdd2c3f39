import type { Material } from '../../materials/material';
import { chargeBearers } from '../conflicts/charge-bearers';
import { isBase } from '../conflicts/recognise';
import { saltPpm } from '../conflicts/salt-load';
import type { RuleWeights } from './judge-system';
import { oilPhaseDemand, type OilLine, type OilPhaseDemand } from './oil-phase';
import { isFattyAlcohol } from './system';
import type { RestFacts, SystemWish, SystemWishInput, Wish } from './wish';

export interface RankInput {
  wish: SystemWishInput;
  /** With their shares in % of the formula. */
  oils: readonly OilLine[];
  /** The other lines of the formula, as far as they are known. */
  rest?: readonly OilLine[];
  /** The library; what is no emulsifier or fatty alcohol, or is archived, is passed over. */
  materials: readonly Material[];
  /** Weights by rule id, each ≥ 0; the others keep their own. */
  weights?: RuleWeights;
  /** Set by hand in place of the oils' required HLB. */
  targetHlb?: number | null;
  /** How many systems to give. */
  limit?: number;
}

/** A target by hand counts as known to half a unit either way, the step of a trial series (common practice). */
function byHand(target: number): OilPhaseDemand {
  return { value: target, low: Math.max(0, target - 0.5), high: target + 0.5, covered: 1, unknown: [] };
}

const massOf = (lines: readonly OilLine[]): number => lines.reduce((sum, { mass }) => sum + mass, 0);

function restFacts(lines: readonly OilLine[]): RestFacts {
  const doses = lines.map(({ material, mass }) => ({ lineId: material.id, material, ppm: mass }));
  return {
    bearers: chargeBearers(doses).filter((bearer) => bearer.charge !== 'non-ionic'),
    hasBase: lines.some(({ material, mass }) => mass > 0 && isBase(material)),
    saltPpm: lines.reduce(
      (sum, { material, mass }) => sum + saltPpm({ material, ppm: 10_000 * mass }, 'most'),
      0,
    ),
  };
}

/** The wish with what follows from the lines of the formula. */
export function wishOver(
  asked: SystemWish,
  { oils, rest, targetHlb }: RankInput,
  usualCostPerKg: number | null,
): Wish {
  const type = asked.emulsionType === 'w/o' ? 'w/o' : 'o/w';
  return {
    ...asked,
    oils,
    oilPercent: massOf(oils),
    alcoholInOils: massOf(oils.filter(({ material }) => isFattyAlcohol(material))),
    required: typeof targetHlb === 'number' ? byHand(targetHlb) : oilPhaseDemand(oils, type),
    targetByHand: typeof targetHlb === 'number',
    rest: restFacts([...oils, ...(rest ?? [])]),
    usualCostPerKg,
  };
}
