import { figureValue } from '../../materials/figure';
import { badInput } from '../../working/inputs';
import type { Worked } from '../../working/working';
import { emulsifierMasses } from '../emulsifier-masses';
import { meanHlbApplies } from '../systems/character';
import type { MaterialLine } from './lines';
import { outcome, type Outcome } from './outcome';
import { totalPercent } from './shares';
import type { Target } from './target';

/** The ratio of two emulsifiers that meets the target at their present total. */
export interface PairRatio {
  low: { materialId: string; name: string; percent: number };
  high: { materialId: string; name: string; percent: number };
  worked: Worked;
}

function ratio(lines: readonly [MaterialLine, MaterialLine], target: Target): PairRatio {
  const known = lines.map(({ material }) => ({ material, hlb: figureValue(material.figures.hlb) }));
  const [first, second] = known as [(typeof known)[0], (typeof known)[0]];
  if (first.hlb === null || second.hlb === null) {
    const missing = first.hlb === null ? first : second;
    throw badInput(
      `${missing.material.tradeName} has no HLB in the library.`,
      'Enter its HLB at the material, or choose another partner.',
    );
  }
  const [low, high] = first.hlb <= second.hlb ? [first, second] : [second, first];
  const total = totalPercent(lines.map((line) => line.percent));
  const masses = emulsifierMasses(target.value, low.hlb ?? 0, high.hlb ?? 0, total);
  return {
    low: { materialId: low.material.id, name: low.material.tradeName, percent: masses.lowMass },
    high: { materialId: high.material.id, name: high.material.tradeName, percent: masses.highMass },
    worked: masses.worked,
  };
}

/**
 * For two classic non-ionics and a target: the ratio, or why there is none (out of reach says by how much, with the
 * HLB that a partner would need in `facts.partnerHlb`). Null for any other number, or where HLB does not describe both.
 */
export function pairRatio(lines: readonly MaterialLine[], target: Target | null): Outcome<PairRatio> | null {
  const [first, second] = lines;
  if (!target || !first || !second || lines.length !== 2) return null;
  if (!lines.every(({ material }) => meanHlbApplies(material))) return null;
  return outcome(() => ratio([first, second], target));
}
