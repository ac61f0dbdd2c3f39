import { feasibleRegion, type Corner } from '../emulsions/bench/feasible-region';
import type { MaterialLine } from '../emulsions/bench/lines';
import type { BenchReading } from '../emulsions/bench/reading';
import { hlbOf, meanHlbApplies } from '../emulsions/systems/character';
import { usageRange } from '../emulsions/usage-range';
import type { AxisMark, HlbAxisData } from './hlb-axis';
import type { TriangleData } from './triangle';

/**
 * The scale's data: the system on the bench among the emulsifiers of the shelf that have an HLB.
 * @param partly whether more of the shelf lie beyond those given
 */
export function axisData(
  emulsifiers: readonly MaterialLine[],
  reading: BenchReading,
  shelf: readonly Omit<AxisMark, 'chosen'>[],
  partly = false,
): HlbAxisData {
  const own = new Set(emulsifiers.map((line) => line.material.id));
  const chosen = emulsifiers.flatMap(({ material }): AxisMark[] => {
    const hlb = hlbOf(material);
    if (hlb === null) return [];
    return [{ id: material.id, name: material.tradeName, hlb, charge: material.charge, chosen: true }];
  });
  const others = shelf.filter((mark) => !own.has(mark.id)).map((mark) => ({ ...mark, chosen: false }));
  const { offered, target } = reading;
  const blend = offered.ok ? (offered.value.described?.value ?? null) : null;
  return { marks: [...chosen, ...others], band: target, blend, partly };
}

function triple<T>(list: readonly T[]): [T, T, T] | null {
  const [a, b, c] = list;
  return list.length === 3 && a !== undefined && b !== undefined && c !== undefined ? [a, b, c] : null;
}

/** The triangle's data; null for any other number of emulsifiers than three, or when they come to nothing. */
export function triangleData(
  emulsifiers: readonly MaterialLine[],
  { target, shares, totalPercent }: BenchReading,
): TriangleData | null {
  if (emulsifiers.length !== 3 || totalPercent <= 0) return null;
  const corners = triple(
    emulsifiers.map(({ material }): Corner => ({
      hlb: meanHlbApplies(material) ? hlbOf(material) : null,
      ...usageRange(material),
    })),
  );
  const here = triple(shares.map((share) => share / 100));
  const names = triple(emulsifiers.map((line) => line.material.tradeName));
  const hlbs = triple((corners ?? []).map((corner) => corner.hlb));
  if (!corners || !here || !names || !hlbs) return null;
  return { names, hlbs, here, region: feasibleRegion(corners, { window: target, totalPercent }) };
}
