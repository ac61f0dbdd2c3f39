/** An HLB with the ends that the figures behind it leave open; all three equal where they agree. */
export interface HlbBand {
  value: number;
  low: number;
  high: number;
}

/** Published HLB and required-HLB figures disagree by 1 to 2 units: up to one there is nothing to say. */
export const NOTE_BEYOND = 1;
/** From here on the emulsifiers do not fit the oils: the checks warn, and nothing of the kind is proposed. */
export const WARN_BEYOND = 2;

/** Binary noise of a mean is no distance. */
const NOISE = 1e-9;

/**
 * How far what is offered lies from what is required, in HLB units: above zero when it is too high, below when too low,
 * zero where the two bands meet. The sources' own spread is no fault of a system: only what lies outside it counts.
 */
export function hlbGap(offered: HlbBand, required: HlbBand): number {
  if (offered.low > required.high + NOISE) return offered.low - required.high;
  return offered.high < required.low - NOISE ? offered.high - required.low : 0;
}

/** An emulsifier that the mean describes, at its mass in any one unit. */
export interface DescribedPart extends HlbBand {
  mass: number;
}

/** The mass-weighted mean HLB, with the mean of the lower and of the upper ends; null over no mass. Griffin 1949. */
export function meanBand(parts: readonly DescribedPart[]): HlbBand | null {
  let [mass, value, low, high] = [0, 0, 0, 0];
  for (const part of parts) {
    mass += part.mass;
    value += part.mass * part.value;
    low += part.mass * part.low;
    high += part.mass * part.high;
  }
  return mass > 0 ? { value: value / mass, low: low / mass, high: high / mass } : null;
}
