/** Shares of three emulsifiers in their total, 0 to 1, adding up to 1. */
export type Mix = readonly [number, number, number];

/** One corner of the triangle. Levels in % of the formula. */
export interface Corner {
  /** Null where a mean HLB does not describe it: it then takes part in the levels only. */
  hlb: number | null;
  minPercent: number;
  maxPercent: number;
}

export interface RegionDemand {
  /** The HLB window, ends included; null leaves HLB out. */
  window: { low: number; high: number } | null;
  /** All three together, % of the formula, > 0. */
  totalPercent: number;
}

/** Weights of a half-plane through the triangle: kept where the weighted sum of the shares is not negative. */
type HalfPlane = readonly [number, number, number];

const EDGE = 1e-9;

function valueAt(plane: HalfPlane, mix: Mix): number {
  return plane[0] * mix[0] + plane[1] * mix[1] + plane[2] * mix[2];
}

function between(a: Mix, b: Mix, t: number): Mix {
  const at = (index: 0 | 1 | 2): number => a[index] + t * (b[index] - a[index]);
  return [at(0), at(1), at(2)];
}

/** One step of Sutherland and Hodgman's clipping: what of a convex polygon lies on the kept side. */
function clip(polygon: readonly Mix[], plane: HalfPlane): Mix[] {
  return polygon.flatMap((here, index) => {
    const next = polygon[(index + 1) % polygon.length] ?? here;
    const [now, then] = [valueAt(plane, here), valueAt(plane, next)];
    const kept: Mix[] = now >= -EDGE ? [here] : [];
    if ((now > EDGE && then < -EDGE) || (now < -EDGE && then > EDGE))
      kept.push(between(here, next, now / (now - then)));
    return kept;
  });
}

function windowPlanes(corners: readonly Corner[], window: RegionDemand['window']): HalfPlane[] {
  if (!window || corners.every((corner) => corner.hlb === null)) return [];
  // The mean lies above an end where Σ (HLB − end) · share ≥ 0 over what the mean describes.
  const away = (end: number, sign: 1 | -1): HalfPlane => {
    const weight = (corner: Corner | undefined): number =>
      corner && corner.hlb !== null ? sign * (corner.hlb - end) : 0;
    return [weight(corners[0]), weight(corners[1]), weight(corners[2])];
  };
  return [away(window.low, 1), away(window.high, -1)];
}

function usagePlanes(corners: readonly Corner[], totalPercent: number): HalfPlane[] {
  return corners.flatMap(({ minPercent, maxPercent }, index) => {
    const [least, most] = [minPercent / totalPercent, maxPercent / totalPercent];
    const own = (one: number, rest: number): HalfPlane => [
      index === 0 ? one : rest,
      index === 1 ? one : rest,
      index === 2 ? one : rest,
    ];
    return [own(1 - least, -least), own(most - 1, most)];
  });
}

/**
 * Where in the triangle of three emulsifiers every demand holds: the mean HLB in its window, each one within its
 * usage range at the given total. A convex polygon in order round its edge; empty where nothing holds, two corners or
 * one where only a line or a point does.
 */
export function feasibleRegion(
  corners: readonly [Corner, Corner, Corner],
  { window, totalPercent }: RegionDemand,
): Mix[] {
  const whole: Mix[] = [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ];
  const planes = [...windowPlanes(corners, window), ...usagePlanes(corners, totalPercent)];
  return planes.reduce<Mix[]>((left, plane) => clip(left, plane), whole);
}
