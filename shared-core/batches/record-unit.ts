import { massUnit, type MassUnit } from '../locale/mass';

/** One unit for all targets of a batch, so that nobody reads kg for g: g up to 100 kg, then kg. */
export function recordUnit(totalMg: number): MassUnit {
  return totalMg >= 100_000_000 ? 'kg' : massUnit(totalMg) === 'mg' ? 'mg' : 'g';
}
