import { isEmulsifier } from '../emulsions/conflicts/recognise';
import { hlbOf, meanHlbApplies } from '../emulsions/systems/character';
import { withShares } from '../formulas/change/adjust-shares';
import type { FormulaContent } from '../formulas/formula';
import { formulaLines } from '../formulas/shares';
import { shareDigits } from '../locale/numbers';
import type { Material } from '../materials/material';
import { largestRemainder } from '../quantities/largest-remainder';

/** An HLB that differs by less is held: published values are not known closer. */
export const HELD_WITHIN = 0.1;

/** Less than this below zero is a slip of the reckoning. */
const SLIP_PPM = 1e-6;

interface Part {
  lineId: string;
  hlb: number;
  ppm: number;
}

/** The lines whose mean an HLB describes: classic non-ionics with a value and a share of their own. */
function describedLines(
  content: FormulaContent,
  materials: Readonly<Record<string, Material | undefined>>,
): Part[] {
  return formulaLines(content).flatMap((line) => {
    const material = materials[line.materialId];
    if (!material || line.toHundred || line.ppm === 0) return [];
    const hlb = hlbOf(material);
    if (hlb === null || !isEmulsifier(material) || !meanHlbApplies(material)) return [];
    return [{ lineId: line.id, hlb, ppm: line.ppm }];
  });
}

const sum = (parts: readonly Part[], of: (part: Part) => number): number =>
  parts.reduce((total, part) => total + of(part), 0);
const meanOf = (parts: readonly Part[], shares: readonly number[]): number =>
  parts.reduce((total, { hlb }, at) => total + hlb * (shares[at] ?? 0), 0) /
  shares.reduce((total, one) => total + one, 0);

/**
 * The shares nearest to what they were (least squares) of a total and a mean: x = x₀ + a + b·hlb over those that are
 * not at zero, which are taken out one by one until none is below it.
 */
function nearestShares(parts: readonly Part[], target: number): number[] | null {
  const total = sum(parts, ({ ppm }) => ppm);
  let free = [...parts];
  while (free.length > 0) {
    const [n, h, hh] = [free.length, sum(free, ({ hlb }) => hlb), sum(free, ({ hlb }) => hlb * hlb)];
    const [short, moment] = [
      total - sum(free, ({ ppm }) => ppm),
      target * total - sum(free, ({ hlb, ppm }) => hlb * ppm),
    ];
    const det = n * hh - h * h;
    // Those that are left all have one HLB: the target, at an end of what was offered, or none.
    const one = Math.abs(det) < 1e-9;
    if (one && Math.abs(h / n - target) > 1e-9) return null;
    const [a, b] = one ? [short / n, 0] : [(short * hh - moment * h) / det, (n * moment - h * short) / det];
    const shares = new Map(free.map((part) => [part, part.ppm + a + b * part.hlb]));
    const [worst, least] = [...shares].reduce((low, one) => (one[1] < low[1] ? one : low));
    if (least >= -SLIP_PPM) return parts.map((part) => Math.max(0, shares.get(part) ?? 0));
    free = free.filter((part) => part !== worst);
  }
  return null;
}

/** What came of holding an HLB. */
export interface HeldHlb {
  content: FormulaContent;
  /** Null where it held already or was held; else why it could not be. */
  failed: string | null;
  /** Whether shares were moved for it. */
  moved: boolean;
}

/**
 * Moves the shares of the classic non-ionic emulsifiers, as little as it takes and at their old total, so that their
 * mean HLB is the target. Rounded to the decimals of the formula where that holds it.
 */
export function holdHlb(
  content: FormulaContent,
  materials: Readonly<Record<string, Material | undefined>>,
  target: number,
): HeldHlb {
  const parts = describedLines(content, materials);
  const kept = { content, failed: null, moved: false };
  if (parts.length === 0) return { ...kept, failed: 'no emulsifier is left whose HLB can be averaged' };
  const shares = parts.map(({ ppm }) => ppm);
  const now = meanOf(parts, shares);
  if (Math.abs(now - target) <= HELD_WITHIN) return kept;
  const exact = nearestShares(parts, target);
  if (!exact)
    return {
      ...kept,
      failed: `with ${parts.length === 1 ? 'this emulsifier alone' : 'these emulsifiers'} HLB ${target.toFixed(1)} cannot be reached: they offer ${now.toFixed(1)}`,
    };
  const total = shares.reduce((one, other) => one + other, 0);
  for (let digits = shareDigits(shares); digits <= 4; digits += 1) {
    const step = 10 ** (4 - digits);
    if (total % step !== 0) continue;
    const rounded = largestRemainder(exact, total, step);
    if (Math.abs(meanOf(parts, rounded) - target) > HELD_WITHIN && digits < 4) continue;
    const ppmOf = new Map(parts.map(({ lineId }, at) => [lineId, rounded[at] ?? 0]));
    return { content: withShares(content, ppmOf), failed: null, moved: true };
  }
  return kept;
}
